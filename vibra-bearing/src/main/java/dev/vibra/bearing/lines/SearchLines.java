package dev.vibra.bearing.lines;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Means;
import dev.vibra.internal.Require;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.DoubleStream;

/**
 * Lines of one spectrum made ready for a search: depth, floor, and how improbable each line is in noise.
 *
 * <p>A line may lie a bin beside where it is looked for, so each place stands for itself and its neighbours: its
 * probability is that of the highest of three, times three. If that one is the skirt of a still higher neighbour, it
 * proves nothing.
 *
 * <p>Slip spreads a line over bins that are finer than it. Its depth is therefore gathered over 0.02 orders to either
 * side, whatever the resolution, and what noise puts there is taken off.
 */
public class SearchLines {
    /** Half width of a line of a window of Hann: its main lobe, two bins, and the one that a line may lie aside. */
    public static final double LINE_BINS = 3;
    /** Slip spreads a line so far to either side; common practice, no source. */
    private static final double SPREAD_ORDERS = 0.02;
    /** The first lines are those of the block's own mean and window, not of the machine. */
    private static final int FIRST_LINE = 3;
    /** The floor under a line is the median over so many revolutions' worth of frequency on either side. */
    private static final double FLOOR_REACH_ORDERS = 2.5;
    /** A median of so many lines to either side scatters by 4 % in power; more would cost time only. */
    private static final int MEDIAN_OF = 250;
    /** Hann window, line midway between two bins: 1.42 dB are lost. */
    private static final double SCALLOP_LOSS = 1.178;
    private static final double HANN_NOISE_BANDWIDTH = 1.5;
    private static final double SAMPLES_PER_PERIOD = 8;

    private final double resolutionHertz;
    private final double[] power;
    private final NoiseFloor floor;
    private final int thinning;
    private final double[] logProbability;
    private final int gather;
    private final int usable;

    /** Takes squares of lines from 0 Hz on and keeps them; those above a frequency can't be seen. */
    SearchLines(double[] owned, double resolutionHertz, double equivalentAverages, double shaftHertz,
            double highestHertz) {
        power = owned;
        this.resolutionHertz = resolutionHertz;
        gather = Math.max(2, (int) Math.rint(SPREAD_ORDERS * shaftHertz / resolutionHertz));
        int reach = Math.max(1, (int) (FLOOR_REACH_ORDERS * shaftHertz / resolutionHertz));
        thinning = Math.max(1, reach / MEDIAN_OF);
        floor = NoiseFloor.of(thinned(power, thinning), thinning * resolutionHertz, LineNoise.of(equivalentAverages),
                (FIRST_LINE + thinning - 1) / thinning, Math.max(1, reach / thinning));
        logProbability = logProbabilities();
        usable = (int) Math.min(power.length - 1.0 - gather, highestHertz / resolutionHertz);
    }

    /**
     * Makes the lines of the vibration itself, from one block, to see what turns.
     *
     * @param wave recording
     * @param shaftHertz speed of rotation in Hz, finite, above zero
     * @param highestHertz highest frequency that matters in Hz, finite, above zero
     * @return the lines
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SearchLines ofVibration(Waveform wave, double shaftHertz, double highestHertz) {
        Objects.requireNonNull(wave, "wave");
        Require.positive("shaftHertz", shaftHertz, "Hz");
        int together = (int) Math.max(1, wave.sampleRateHertz() / (SAMPLES_PER_PERIOD
                * Require.positive("highestHertz", highestHertz, "Hz")));
        double[] samples = Means.of(wave.samples(), together);
        SpectrumPlan plan = SpectrumPlan.of(RealTransform.fastLength(samples.length), Window.hann());
        double[] squares = plan.newWorker().addMeanSquares(samples, 0, new double[plan.lines()]);
        double resolution = wave.sampleRateHertz() / together / plan.length();
        int kept = (int) Math.min(squares.length, Math.ceil(highestHertz / resolution) + 8);
        return new SearchLines(Arrays.copyOf(squares, kept), resolution, 1, shaftHertz, highestHertz);
    }

    /** Of so many lines that a median needs none more is taken. */
    private static double[] thinned(double[] squares, int every) {
        double[] thinned = new double[(squares.length + every - 1) / every];
        for (int i = 0; i < thinned.length; i++) {
            thinned[i] = squares[i * every];
        }
        return thinned;
    }

    private double noiseAt(int line) {
        return floor.meanSquare(line / thinning);
    }

    private double[] logProbabilities() {
        double[] logs = new double[power.length];
        for (int i = FIRST_LINE; i < power.length - 2; i++) {
            boolean peak = power[i] >= power[i - 1] && power[i] >= power[i + 1];
            double ratio = peak ? ratio(i) : 0;
            if (ratio > 1) {
                double log = Math.min(0, Math.log(3) + floor.noise().logExceedance(ratio));
                for (int k = i - 1; k <= i + 1; k++) {
                    logs[k] = peakNear(k) == i ? log : logs[k];
                }
            }
        }
        return logs;
    }

    /** Line over floor in power; zero where there is no floor, so that such a line proves nothing. */
    private double ratio(int line) {
        double noise = noiseAt(line);
        return line >= FIRST_LINE && noise > 0 ? Math.min(Double.MAX_VALUE, power[line] / noise) : 0;
    }

    /** {@return distance of the lines in Hz} */
    public final double resolutionHertz() {
        return resolutionHertz;
    }

    /** {@return number of lines} */
    public final int count() {
        return power.length;
    }

    /**
     * Returns how far a line of a machine reaches to either side: its window and the spread by slip.
     *
     * @return half width in Hz
     */
    public final double spreadHertz() {
        return Math.max(LINE_BINS, gather) * resolutionHertz();
    }

    /**
     * Returns the line nearest to a frequency.
     *
     * @param hertz frequency in Hz
     * @return number of the line
     */
    public final int lineAt(double hertz) {
        return (int) Math.rint(hertz / resolutionHertz());
    }

    /**
     * Tells whether a line at a frequency could be seen.
     *
     * @param hertz frequency in Hz
     * @return false too near to 0 Hz or too high
     */
    public final boolean holds(double hertz) {
        int line = lineAt(hertz);
        return line > FIRST_LINE && line < usable;
    }

    /** {@return frequency up to which a line could be seen, Hz} */
    public final double highestUsableHertz() {
        return usable * resolutionHertz();
    }

    /**
     * Returns how improbable it is that noise makes what stands at a place.
     *
     * @param line number of the line
     * @return natural logarithm of the probability, 0 or less
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public final double logProbability(int line) {
        return logProbability[Objects.checkIndex(line, logProbability.length)];
    }

    /**
     * Returns how improbable it is that noise makes together what stands at several places.
     *
     * @param places frequencies in Hz; those where no line could be seen are left out
     * @return natural logarithm of the probability, 0 or less; 0 for fewer than two places
     */
    public final double logTogether(DoubleStream places) {
        Objects.requireNonNull(places, "places");
        double[] logs = places.filter(this::holds).map(f -> logProbability(lineAt(f))).sorted().toArray();
        return logs.length < 2 ? 0 : RankProbability.log(logs, logs.length);
    }

    /**
     * Returns how improbable it is that noise makes the first two sidebands on either side of a line and of its second
     * harmonic.
     *
     * @param hertz frequency of the line in Hz
     * @param spacing spacing of the sidebands in Hz; zero if there are none
     * @return natural logarithm of the probability, 0 or less
     */
    public final double logOfSidebands(double hertz, double spacing) {
        return spacing == 0 ? 0 : logTogether(DoubleStream.of(1, 2)
                .flatMap(h -> DoubleStream.of(-2, -1, 1, 2).map(n -> h * hertz + n * spacing)));
    }

    /**
     * Returns the depth of the pulsation at a line, gathered from the bins that window and slip spread it over, less
     * what noise puts there.
     *
     * @param line number of the line, where {@link #holds(double)}
     * @return depth, zero or more
     * @throws IndexOutOfBoundsException if there is no such line, or none beside it
     */
    public final double depthAround(int line) {
        Objects.checkIndex(line, power.length - gather);
        double sum = 0;
        for (int i = line - gather; i <= line + gather; i++) {
            sum += i >= 0 ? power[i] - noiseAt(i) : 0;
        }
        return Math.sqrt(Math.max(0, sum) / HANN_NOISE_BANDWIDTH);
    }

    /**
     * Returns how far the highest of three lines stands above the floor.
     *
     * @param line number of the middle one
     * @return depth over that of the floor; zero where there is no floor
     * @throws IndexOutOfBoundsException if there is no such line, or none beside it
     */
    public final double timesFloor(int line) {
        Objects.checkIndex(line - 1, power.length - 2);
        return Math.sqrt(ratio(peakNear(line)));
    }

    private int peakNear(int line) {
        int peak = line;
        for (int i = line - 1; i <= line + 1; i++) {
            peak = power[i] > power[peak] ? i : peak;
        }
        return peak;
    }

    /**
     * Interpolates the frequency of the line that peaks at or beside a bin, from the ratio of the two highest
     * amplitudes of the Hann window.
     *
     * @param line number of the bin, where {@link #holds(double)}
     * @return frequency in Hz, that of the bin where nothing stands
     * @throws IndexOutOfBoundsException if there is no such line, or no two beside it
     */
    public final double interpolated(int line) {
        Objects.checkIndex(line - 2, power.length - 4);
        int peak = peakNear(line);
        int side = power[peak + 1] > power[peak - 1] ? 1 : -1;
        if (!(power[peak] > 0)) {
            return line * resolutionHertz();
        }
        double ratio = Math.sqrt(power[peak + side] / power[peak]);
        double offset = Math.max(0, Math.min(0.5, (2 * ratio - 1) / (1 + ratio)));
        return (peak + side * offset) * resolutionHertz();
    }

    /**
     * Returns the depth that a steady line must have to reach a probability, wherever between two bins it lies.
     *
     * @param logLineProbability natural logarithm of the probability, below 0
     * @param fromHertz lowest frequency of the line in Hz
     * @param toHertz highest frequency of the line in Hz
     * @return depth
     */
    public final double depthFoundWith(double logLineProbability, double fromHertz, double toHertz) {
        double highest = 0;
        for (int i = Math.max(0, lineAt(fromHertz)); i <= Math.min(lineAt(toHertz), usable); i++) {
            highest = Math.max(highest, noiseAt(i));
        }
        return SCALLOP_LOSS * Math.sqrt(highest * floor.noise().ratioAt(logLineProbability - Math.log(3)));
    }

    /** Returns number and distance of the lines. */
    @Override
    public String toString() {
        return power.length + " lines, " + Digits.significant(resolutionHertz, 3) + " Hz apart";
    }
}
