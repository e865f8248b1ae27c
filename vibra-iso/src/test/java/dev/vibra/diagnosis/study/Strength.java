package dev.vibra.diagnosis.study;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;

/**
 * How strong faults are.
 *
 * @param decibels rms velocity of their strongest line over the noise in 1 Hz about it
 * @param level their strongest line from 10 Hz to 1 kHz as a part of the boundary B/C
 */
record Strength(double decibels, double level) {
    private static final double LOWEST_HERTZ = 2.5;

    static Strength of(double[][] faults, double[][] floor, double[] limits, double rate) {
        double level = 0;
        double strongest = 0;
        double decibels = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < faults.length; i++) {
            Spectrum lines = spectrum(faults[i], rate);
            Spectrum noise = spectrum(floor[i], rate);
            for (int k = 1; k < lines.lines(); k++) {
                double size = Math.sqrt(1.5 * lines.resolutionHertz() * lines.density(k));
                if (lines.frequencyHertz(k) > LOWEST_HERTZ && size / limits[i] > strongest) {
                    strongest = size / limits[i];
                    decibels = 20 * Math.log10(size / Math.sqrt(around(noise, k)));
                }
                boolean judged = lines.frequencyHertz(k) >= 10 && lines.frequencyHertz(k) <= 1000;
                level = Math.max(level, judged ? size / limits[i] : 0);
            }
        }
        return new Strength(decibels, level);
    }

    /** Mean density of the noise within some lines. */
    private static double around(Spectrum noise, int line) {
        int from = Math.max(1, line - 5);
        int to = Math.min(noise.lines() - 1, line + 5);
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += noise.density(k) / (to - from + 1);
        }
        return sum;
    }

    private static Spectrum spectrum(double[] acceleration, double rate) {
        return Spectrum.of(Waveform.ofSi(Quantity.ACCELERATION, rate, acceleration),
                SpectrumSettings.withDefaults().withResolution(1)).velocity();
    }
}
