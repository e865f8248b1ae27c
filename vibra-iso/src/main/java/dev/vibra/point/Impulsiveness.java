package dev.vibra.point;

import dev.vibra.descriptor.Signals;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.level.Moments;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How far an acceleration recording consists of knocks.
 *
 * <p>A recording counts as impulsive where its kurtosis is at least {@value #IMPULSIVE_KURTOSIS} and more than one
 * knock carries it. Sines have 1.5, normal noise 3, and a bearing said to be healthy about 3; limits between 3.5 and 6
 * are in use: common practice, no source.
 *
 * @param kurtosis kurtosis of the acceleration, at least 1
 * @param crestFactor peak over rms, at least 1
 * @param peak largest distance from the mean in m/s²
 * @param knocks stretches in which the acceleration passes four times its rms, at least 0
 * @param perSecond knocks per second of the recording
 */
public record Impulsiveness(double kurtosis, double crestFactor, double peak, int knocks, double perSecond)
        implements Serializable {
    /** Kurtosis from which a recording counts as impulsive. */
    public static final double IMPULSIVE_KURTOSIS = 5;

    private static final double KNOCK_OVER_RMS = 4;
    /** Ringing within this time belongs to one knock. */
    private static final double APART_SECONDS = 0.005;
    private static final int FEWEST_KNOCKS = 2;
    private static final double LEAST_SECONDS = 0.5;

    /**
     * Checks the figures.
     *
     * @param kurtosis see the record
     * @param crestFactor see the record
     * @param peak see the record
     * @param knocks see the record
     * @param perSecond see the record
     */
    public Impulsiveness {
        Require.within("kurtosis", kurtosis, 0, Double.MAX_VALUE, "");
        Require.within("crestFactor", crestFactor, 0, Double.MAX_VALUE, "");
        Require.notNegative("peak", peak, "m/s²");
        Require.atLeast("knocks", knocks, 0);
        Require.notNegative("perSecond", perSecond, "1/s");
    }

    /**
     * Counts the knocks of an acceleration recording; empty if it is constant. Of one that is steady in a part only the
     * part that knocks most: two levels in one recording are no knocks, but what isn't steady may be.
     */
    static Optional<Impulsiveness> of(Signals steady, Waveform whole) {
        List<Impulsiveness> parts = new ArrayList<>();
        of(steady.wave(), steady.moments()).ifPresent(parts::add);
        int least = (int) (LEAST_SECONDS * whole.sampleRateHertz());
        int from = (int) Math.rint((steady.wave().startSeconds() - whole.startSeconds()) * whole.sampleRateHertz());
        int to = from + steady.wave().length();
        if (from >= least) {
            of(whole.part(0, from)).ifPresent(parts::add);
        }
        if (whole.length() - to >= least) {
            of(whole.part(to, whole.length() - to)).ifPresent(parts::add);
        }
        return parts.stream().max(Comparator.comparingDouble(Impulsiveness::kurtosis));
    }

    private static Optional<Impulsiveness> of(Waveform wave) {
        return of(wave, wave.moments());
    }

    private static Optional<Impulsiveness> of(Waveform wave, Moments moments) {
        if (moments.rms() == 0) {
            return Optional.empty();
        }
        double limit = KNOCK_OVER_RMS * moments.rms();
        int apart = (int) Math.ceil(APART_SECONDS * wave.sampleRateHertz());
        int knocks = 0;
        int quietFrom = 0;
        for (int i = 0; i < wave.length(); i++) {
            if (Math.abs(wave.at(i) - moments.mean()) > limit) {
                knocks += i >= quietFrom ? 1 : 0;
                quietFrom = i + apart;
            }
        }
        return Optional.of(new Impulsiveness(moments.kurtosis(), moments.crestFactor(), moments.peak(), knocks,
                knocks / wave.durationSeconds()));
    }

    /** {@return true if knocks make up the recording: more than one, and a kurtosis that noise doesn't reach} */
    public boolean isImpulsive() {
        return kurtosis >= IMPULSIVE_KURTOSIS && knocks >= FEWEST_KNOCKS;
    }

    /** {@return true if one single knock lifts the kurtosis: something fell, or the sensor was touched} */
    public boolean isSingleKnock() {
        return kurtosis >= IMPULSIVE_KURTOSIS && knocks < FEWEST_KNOCKS;
    }

    /** Returns the figures, as in {@code kurtosis 11.2, crest factor 5.5, 96 knocks (24 per second), peak 60 m/s²}. */
    @Override
    public String toString() {
        return "kurtosis " + Digits.significant(kurtosis, 3) + ", crest factor " + Digits.significant(crestFactor, 3)
                + ", " + knocks + (knocks == 1 ? " knock" : " knocks") + " (" + Digits.significant(perSecond, 2)
                + " per second), peak " + Digits.significant(peak, 3) + " m/s\u00b2";
    }
}
