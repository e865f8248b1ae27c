package dev.vibra.filter;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/**
 * Coefficients of a recursive filter as second-order sections in series, immutable.
 *
 * <p>Each section is {@code H(z) = (b0 + b1·z⁻¹ + b2·z⁻²) / (1 + a1·z⁻¹ + a2·z⁻²)}; the rows are
 * {@code b0, b1, b2, 1, a1, a2}.
 */
public final class SectionCascade implements Serializable {
    private static final long serialVersionUID = 1;

    /** Five numbers a section: b0, b1, b2, a1, a2. */
    private final double[] coefficients;

    private SectionCascade(double[] coefficients) {
        this.coefficients = coefficients;
    }

    private Object readResolve() {
        double[] copy = Require.finiteCopy("coefficients", coefficients);
        if (copy.length == 0 || copy.length % 5 != 0) {
            throw new IllegalArgumentException("coefficients must be five a section: " + copy.length);
        }
        for (int s = 0; s < copy.length / 5; s++) {
            requireStable(s, copy[5 * s + 3], copy[5 * s + 4]);
        }
        return new SectionCascade(copy);
    }

    /**
     * Makes a cascade of given sections.
     *
     * @param sections rows of six: b0, b1, b2, a0, a1, a2; copied; a0 must not be zero, all finite
     * @return the cascade, scaled to a0 = 1
     * @throws IllegalArgumentException if there is no section, a row has another length, a value is not finite, a0 is
     *     zero or a section is unstable
     */
    public static SectionCascade of(double[]... sections) {
        Require.atLeast("number of sections", Objects.requireNonNull(sections, "sections").length, 1);
        double[] flat = new double[5 * sections.length];
        for (int s = 0; s < sections.length; s++) {
            double[] row = Objects.requireNonNull(sections[s], "section").clone();
            if (row.length != 6) {
                throw new IllegalArgumentException("section[" + s + "] must have 6 coefficients: " + row.length);
            }
            Require.allFinite("section[" + s + "]", row);
            if (row[3] == 0) {
                throw new IllegalArgumentException("section[" + s + "][3] (a0) must not be zero");
            }
            for (int i = 0; i < 3; i++) {
                flat[5 * s + i] = row[i] / row[3];
            }
            flat[5 * s + 3] = row[4] / row[3];
            flat[5 * s + 4] = row[5] / row[3];
            requireStable(s, flat[5 * s + 3], flat[5 * s + 4]);
        }
        return new SectionCascade(flat);
    }

    /** Both poles lie inside the unit circle exactly if (a1, a2) lies inside this triangle (Jury's criterion). */
    private static void requireStable(int section, double a1, double a2) {
        if (!(Math.abs(a2) < 1 && Math.abs(a1) < 1 + a2)) {
            throw new IllegalArgumentException("section[" + section + "] must be stable: a1 " + a1 + ", a2 " + a2);
        }
    }

    /**
     * Returns this cascade followed by another one.
     *
     * @param next cascade that filters the output of this one
     * @return the cascade of both
     */
    public SectionCascade then(SectionCascade next) {
        double[] both = new double[coefficients.length + Objects.requireNonNull(next, "next").coefficients.length];
        System.arraycopy(coefficients, 0, both, 0, coefficients.length);
        System.arraycopy(next.coefficients, 0, both, coefficients.length, next.coefficients.length);
        return new SectionCascade(both);
    }

    /**
     * Returns the number of sections.
     *
     * @return number of sections, at least 1
     */
    public int size() {
        return coefficients.length / 5;
    }

    /**
     * Returns the coefficients of one section.
     *
     * @param index number of the section from 0
     * @return a new array b0, b1, b2, 1, a1, a2
     * @throws IllegalArgumentException if there is no such section
     */
    public double[] section(int index) {
        if (index < 0 || index >= size()) {
            throw new IllegalArgumentException("index must be from 0 to " + (size() - 1) + ": " + index);
        }
        int i = 5 * index;
        return new double[] {coefficients[i], coefficients[i + 1], coefficients[i + 2], 1, coefficients[i + 3],
            coefficients[i + 4]};
    }

    /**
     * Computes the magnitude of the frequency response.
     *
     * @param hertz frequency in Hz, from 0 to half the sample rate
     * @param sampleRateHertz sample rate in Hz, above zero
     * @return gain, zero or more
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double gain(double hertz, double sampleRateHertz) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.within("hertz", hertz, 0, sampleRateHertz / 2, "Hz");
        double omega = 2 * Math.PI * hertz / sampleRateHertz;
        double product = 1;
        for (int i = 0; i < coefficients.length; i += 5) {
            product *= magnitude(coefficients[i], coefficients[i + 1], coefficients[i + 2], omega)
                    / magnitude(1, coefficients[i + 3], coefficients[i + 4], omega);
        }
        return product;
    }

    private static double magnitude(double c0, double c1, double c2, double omega) {
        // Written about z = 1, where the zeros of a high-pass would else be lost in rounding.
        double s1 = Math.sin(0.5 * omega);
        double s2 = Math.sin(omega);
        double re = c0 + c1 + c2 - 2 * (c1 * s1 * s1 + c2 * s2 * s2);
        double im = c1 * s2 + c2 * Math.sin(2 * omega);
        return Math.hypot(re, im);
    }

    /**
     * Filters forwards and backwards: no phase shift, the magnitude of the response squared.
     *
     * <p>Edge rule: at both ends the signal is continued by its reflection about the end point, over three times the
     * number of coefficients of the filter, and the filter starts as if the first value had stood there for ever. The
     * first and last periods of the slowest pole are still shaped by that guess.
     *
     * @param samples samples, more than the length of the continuation; left alone
     * @return a new array of the same length
     * @throws IllegalArgumentException if there are too few samples
     * @see "F. Gustafsson, Determining the initial states in forward-backward filtering, IEEE Trans. Signal Process. 44
     *     (1996) 988-992"
     */
    public double[] zeroPhase(double[] samples) {
        return new ZeroPhase(this).filter(Objects.requireNonNull(samples, "samples"));
    }

    /**
     * Makes a filter that runs this cascade, at rest.
     *
     * @return a filter with its own state, for one thread
     */
    public CascadeFilter newFilter() {
        return new CascadeFilter(this, coefficients);
    }

    /** Returns the number of sections. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d second-order section%s", size(), size() == 1 ? "" : "s");
    }
}
