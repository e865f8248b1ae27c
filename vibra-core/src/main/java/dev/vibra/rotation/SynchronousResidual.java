package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What of a recording repeats with no shaft: the recording less its mean revolution, for one shaft or several that are
 * geared together. Tones of gears with their sidebands go, however strong; noise, and a bearing, whose elements slip,
 * stay. Immutable.
 *
 * <p>White noise keeps the share {@code 1 - 1/M} of its power, M being the number of turns averaged; a tone in step
 * with the shaft goes altogether where speed and load keep its amplitude and the angle is right: an error of the angle
 * of ε revolutions rms leaves the share {@code (2π·order·ε)²} of the power of a tone of an order.
 *
 * <p>What is kept lies inside recording and pulses. Noise that a gear makes, stronger at some teeth than at others, is
 * no tone: it stays, and pulsates with the shaft.
 *
 * <p>Of several shafts each one's mean revolution is taken from what the others left, twice over.
 *
 * @see "P. D. McFadden, A revised model for the extraction of periodic waveforms by time domain averaging, Mech. Syst.
 *     Signal Process. 1 (1987) 83-95"
 * @see "R. B. Randall, N. Sawalhi, M. Coats, A comparison of methods for separation of deterministic and random
 *     signals, Int. J. Condition Monitoring 1 (2011) 11-19 (from memory, unverified)"
 */
public final class SynchronousResidual implements Serializable {
    /** With fewer turns, what is left carries a twentieth of its own noise again each turn. */
    static final int FEWEST_TURNS = 20;
    private static final long serialVersionUID = 1;
    private static final int PASSES = 2;

    private final Waveform wave; // null if it isn't known
    private final double repeatingShare;
    private final int turns;
    private final String reason;

    private SynchronousResidual(Waveform wave, double repeatingShare, int turns, String reason) {
        this.wave = wave;
        this.repeatingShare = Require.within("repeatingShare", repeatingShare, 0, 1, "");
        this.turns = Require.atLeast("turns", turns, 0);
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    private Object readResolve() {
        return new SynchronousResidual(wave, repeatingShare, turns, reason);
    }

    /**
     * Takes away what repeats with a shaft, and with others that are geared to it.
     *
     * @param wave recording on the time scale of the angle
     * @param angle angle of the shaft
     * @param ratios turns of each other shaft over those of this one, each 1e-6 to 1e6
     * @return the residual, or why there is none
     * @throws IllegalArgumentException if a ratio is out of range
     */
    public static SynchronousResidual of(Waveform wave, ShaftAngle angle, double... ratios) {
        Objects.requireNonNull(wave, "wave");
        Objects.requireNonNull(angle, "angle");
        double[] all = new double[Objects.requireNonNull(ratios, "ratios").length + 1];
        all[0] = 1;
        for (int i = 0; i < ratios.length; i++) {
            all[i + 1] = Require.within("ratios[" + i + "]", ratios[i], 1e-6, 1e6, "");
        }
        return angle.revolutionsWithin(wave) > 0 ? separated(wave, angle, all) : tooFew(0);
    }

    private static SynchronousResidual tooFew(int turns) {
        return new SynchronousResidual(null, 0, turns, "the recording and the angle share " + turns
                + " whole turns of the slowest shaft, " + FEWEST_TURNS + " are needed");
    }

    private static SynchronousResidual separated(Waveform wave, ShaftAngle angle, double[] ratios) {
        double rate = wave.sampleRateHertz();
        double start = wave.startSeconds();
        int first = (int) Math.max(0, Math.ceil((angle.firstSeconds() - start) * rate - 1e-6));
        int last = (int) Math.min(wave.length() - 1, Math.floor((angle.lastSeconds() - start) * rate + 1e-6));
        double[] samples = Arrays.copyOfRange(wave.samples(), first, last + 1);
        double[] angles = angle.revolutionsAt(start, rate, first, samples.length);
        if (MeanTurn.passesSamples(angles, Arrays.stream(ratios).max().orElseThrow())) {
            return new SynchronousResidual(null, 0, 0, "a shaft turns more than once between two samples");
        }
        int turns = MeanTurn.turns(angles, Arrays.stream(ratios).min().orElseThrow());
        if (turns < FEWEST_TURNS) {
            return tooFew(turns);
        }
        double[] rest = separated(samples, angles, ratios);
        double before = Math.pow(Moments.of(samples).rms(), 2);
        return new SynchronousResidual(
                Waveform.ofSi(wave.quantity(), rate, rest).startingAt(start + first / rate),
                before > 0 ? Math.max(0, 1 - Math.pow(Moments.of(rest).rms(), 2) / before) : 0, turns,
                turns + " turns averaged");
    }

    private static double[] separated(double[] samples, double[] angles, double[] ratios) {
        MeanTurn[] means = Arrays.stream(ratios).mapToObj(ratio -> new MeanTurn(angles, ratio))
                .toArray(MeanTurn[]::new);
        double[] rest = samples.clone();
        for (int pass = 0; pass < (means.length == 1 ? 1 : PASSES); pass++) {
            for (MeanTurn mean : means) {
                mean.addTo(rest, pass == 0 ? 0 : 1);
                mean.average(rest);
                mean.addTo(rest, -1);
            }
        }
        return rest;
    }

    /** {@return what repeats with no shaft; empty if there are too few turns} */
    public Optional<Waveform> waveform() {
        return Optional.ofNullable(wave);
    }

    /**
     * Returns the share of the power that was taken away. Of white noise alone it is one over the number of turns.
     *
     * @return share of the variance, 0 to 1; empty if there are too few turns
     */
    public OptionalDouble repeatingShare() {
        return wave == null ? OptionalDouble.empty() : OptionalDouble.of(repeatingShare);
    }

    /** {@return whole turns of the slowest shaft that were averaged, or would have been} */
    public int turns() {
        return turns;
    }

    /** {@return how many turns were averaged, or why there is no residual, without full stop} */
    public String reason() {
        return reason;
    }

    /** Returns turns and share, or the reason why there is no residual. */
    @Override
    public String toString() {
        return wave == null ? "no residual: " + reason
                : reason + ", " + Digits.significant(100 * repeatingShare, 3) + " % of the power taken away";
    }
}
