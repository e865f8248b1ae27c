package dev.vibra.bearing;

import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;

/**
 * Lines of one envelope spectrum made ready for the search: power, floor, and how improbable each line is in noise.
 *
 * <p>A line may lie a bin beside where it is looked for, so each place stands for itself and its neighbours: its
 * probability is that of the highest of three, times three. If that one is the skirt of a still higher neighbour, it
 * proves nothing.
 */
final class BandLines {
    /** The first lines are those of the block's own mean and window, not of the machine. */
    private static final int FIRST_LINE = 3;
    /** The floor under a line is the median over so many revolutions' worth of frequency on either side. */
    private static final double FLOOR_REACH_ORDERS = 2.5;
    /** Near the width of the band the squared envelope of noise runs out, and the floor with it. */
    private static final double USABLE_SHARE_OF_WIDTH = 0.9;
    /** Hann window, line midway between two bins: 1.42 dB are lost. */
    private static final double SCALLOP_LOSS = 1.178;
    private static final double HANN_NOISE_BANDWIDTH = 1.5;

    private final EnvelopeSpectrum spectrum;
    private final double[] power;
    private final NoiseFloor floor;
    private final double[] logProbability;
    private final int usable;

    BandLines(EnvelopeSpectrum spectrum, double shaftHertz) {
        this.spectrum = spectrum;
        power = spectrum.depths();
        for (int i = 0; i < power.length; i++) {
            power[i] *= power[i];
        }
        int reach = Math.max(1, (int) (FLOOR_REACH_ORDERS * shaftHertz / spectrum.resolutionHertz()));
        floor = NoiseFloor.of(power, spectrum.resolutionHertz(), LineNoise.of(spectrum.equivalentAverages()),
                FIRST_LINE, reach);
        logProbability = logProbabilities();
        double last = USABLE_SHARE_OF_WIDTH * spectrum.band().widthHertz() / spectrum.resolutionHertz();
        usable = (int) Math.min(power.length - 3.0, last);
    }

    private double[] logProbabilities() {
        double[] logs = new double[power.length];
        for (int i = FIRST_LINE; i < power.length - 2; i++) {
            int peak = peakNear(i);
            double ratio = ratio(peak);
            boolean skirt = power[peak - 1] > power[peak] || power[peak + 1] > power[peak];
            logs[i] = ratio > 1 && !skirt ? Math.min(0, Math.log(3) + floor.noise().logExceedance(ratio)) : 0;
        }
        return logs;
    }

    /** Line over floor in power; zero where there is no floor, so that such a line proves nothing. */
    double ratio(int line) {
        double noise = floor.meanSquare(line);
        return line >= FIRST_LINE && noise > 0 ? power[line] / noise : 0;
    }

    EnvelopeSpectrum spectrum() {
        return spectrum;
    }

    double resolution() {
        return spectrum.resolutionHertz();
    }

    int lineAt(double hertz) {
        return (int) Math.rint(hertz / resolution());
    }

    boolean holds(double hertz) {
        int line = lineAt(hertz);
        return line > FIRST_LINE && line < usable;
    }

    double highestUsableHertz() {
        return usable * resolution();
    }

    double logProbability(int line) {
        return logProbability[line];
    }

    /** Depth of the pulsation at a line, gathered from the bins that the window and slip spread it over. */
    double depthAround(int line) {
        double sum = 0;
        for (int i = line - 2; i <= line + 2; i++) {
            sum += power[i];
        }
        return Math.sqrt(sum / HANN_NOISE_BANDWIDTH);
    }

    int peakNear(int line) {
        int peak = line;
        for (int i = line - 1; i <= line + 1; i++) {
            peak = power[i] > power[peak] ? i : peak;
        }
        return peak;
    }

    /**
     * Frequency of the line that peaks at or beside a bin, from the ratio of the two highest amplitudes of the Hann
     * window.
     */
    double interpolated(int line) {
        int peak = peakNear(line);
        int side = power[peak + 1] > power[peak - 1] ? 1 : -1;
        double ratio = Math.sqrt(power[peak + side] / power[peak]);
        double offset = Math.max(0, Math.min(0.5, (2 * ratio - 1) / (1 + ratio)));
        return (peak + side * offset) * resolution();
    }

    /** Depth that a steady line must have to reach an exceedance probability, wherever between two bins it lies. */
    double depthFoundWith(double logLineProbability, double fromHertz, double toHertz) {
        double highest = 0;
        for (int i = lineAt(fromHertz); i <= Math.min(lineAt(toHertz), usable); i++) {
            highest = Math.max(highest, floor.meanSquare(i));
        }
        return SCALLOP_LOSS * Math.sqrt(highest * floor.noise().ratioAt(logLineProbability - Math.log(3)));
    }
}
