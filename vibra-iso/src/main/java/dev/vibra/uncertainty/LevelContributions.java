package dev.vibra.uncertainty;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;

/**
 * The usual contributions to the uncertainty of a vibration level, each from what is known of the measurement.
 *
 * <p>A sensor's own is on its certificate: {@link UncertaintyBudget#withExpanded}. Add these with {@link
 * UncertaintyBudget#with}.
 *
 * @see "J. S. Bendat, A. G. Piersol, Random Data, errors of estimates; JCGM 100:2008, 4.2 and 4.3; ISO 2954:2012"
 */
public final class LevelContributions {
    private LevelContributions() {}

    /**
     * Returns the random error of the r.m.s. value of a random signal in a finite time: {@code ε = 1/(2·√(B·T))}.
     *
     * <p>It tells how far a repeated recording would differ. For a signal of steady tones it is too large: those
     * repeat.
     *
     * @param bandwidthHertz B, bandwidth of the part of the signal that carries its power, finite, above zero
     * @param durationSeconds T, length of the recording, finite, above zero; B·T at least 5, where the formula holds
     * @return the contribution {@code estimation}
     * @throws IllegalArgumentException if a number is out of range or B·T below 5
     * @see "J. S. Bendat, A. G. Piersol, Random Data: normalized random error of root mean square estimates"
     */
    public static Contribution estimation(double bandwidthHertz, double durationSeconds) {
        double product = Require.positive("bandwidthHertz", bandwidthHertz, "Hz")
                * Require.positive("durationSeconds", durationSeconds, "s");
        if (!(product >= 5)) {
            throw Require.failure("bandwidth times duration", "at least 5", product);
        }
        return new Contribution("estimation", 1 / (2 * Math.sqrt(product)));
    }

    /**
     * Returns the uncertainty of the mean of repeated readings: {@code s/(x̄·√n)} with n − 1 degrees of freedom.
     *
     * @param readings repeated readings in one unit, at least two, finite, zero or more, mean above zero
     * @return the contribution {@code repetition}
     * @throws IllegalArgumentException if there are fewer than two or a reading is out of range
     * @see "JCGM 100:2008, 4.2.3"
     */
    public static Contribution repetition(double... readings) {
        double[] copy = readings.clone();
        Require.atLeast("number of readings", copy.length, 2);
        double mean = 0;
        for (double reading : copy) {
            mean += Require.notNegative("reading", reading, "") / copy.length;
        }
        double squares = 0;
        for (double reading : copy) {
            squares += (reading - mean) * (reading - mean);
        }
        double ofMean = Math.sqrt(squares / (copy.length - 1.0) / copy.length);
        return new Contribution("repetition", ofMean / Require.positive("mean of the readings", mean, ""),
                copy.length - 1.0);
    }

    /**
     * Returns the uncertainty from the resonance of the mounted sensor: its rise at the highest frequency that matters,
     * {@code 1/(1 − (f/f_r)²) − 1}, is taken as a bound, {@code u = a/√3}.
     *
     * @param highestHertz highest frequency with a noticeable part of the level, finite, above zero
     * @param mountedResonanceHertz resonance of the mounted sensor, above the highest frequency
     * @return the contribution {@code mounting}
     * @throws IllegalArgumentException if a number is out of range
     * @see "Undamped system of one degree of freedom, closed form; ISO 5348:2021 on the mounted resonance"
     */
    public static Contribution mounting(double highestHertz, double mountedResonanceHertz) {
        double ratio = Require.positive("highestHertz", highestHertz, "Hz")
                / Require.positive("mountedResonanceHertz", mountedResonanceHertz, "Hz");
        if (!(ratio < 1)) {
            throw Require.failure("mountedResonanceHertz", "above the highest frequency, " + highestHertz + " Hz",
                    mountedResonanceHertz);
        }
        return bounds("mounting", 1 / (1 - ratio * ratio) - 1);
    }

    /**
     * Returns the uncertainty from the slopes of the band-limiting chain for a component near an end of the band: what
     * the third-order Butterworth filters of ISO 2954 take off it is taken as a bound, {@code u = a/√3}.
     *
     * @param hertz frequency of the component that carries most of the level, finite, above zero
     * @param band corner frequencies of the chain; the lower one above zero
     * @return the contribution {@code band limiting}
     * @throws IllegalArgumentException if a number is out of range
     * @see "ISO 2954:2012, 5.3 and 5.4"
     */
    public static Contribution bandLimiting(double hertz, Band band) {
        Require.positive("hertz", hertz, "Hz");
        Require.positive("lower end of the band", band.lowestHertz(), "Hz");
        double response = 1 / Math.sqrt((1 + Math.pow(band.lowestHertz() / hertz, 6))
                * (1 + Math.pow(hertz / band.highestHertz(), 6)));
        return bounds("band limiting", 1 - response);
    }

    private static Contribution bounds(String name, double half) {
        return new Contribution(name, half / Math.sqrt(3));
    }
}
