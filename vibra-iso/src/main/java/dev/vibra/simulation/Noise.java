package dev.vibra.simulation;

import java.util.SplittableRandom;

/**
 * Noise of a point: white noise of the measuring chain, a low band of flow, a high band of friction that the structure
 * colours. Three filters in parallel answer to one stream of normal numbers, so the density is known in closed form:
 * {@code S(f) = |c0 + c1·B1 + c2·B2|²·2/fs}, B the band-pass {@code (1 - z^-2)·b/(1 + a1·z^-1 + a2·z^-2)} of peak 1.
 */
final class Noise {
    private final double sampleRate;
    private final double white;
    private final double[] gain = new double[2];
    private final double[][] filters = new double[2][];

    /**
     * Tells how loud it is.
     *
     * @param sampleRate sample rate in Hz
     * @param density density of the white noise in m/s² in 1 Hz
     * @param flowDensity density of the acceleration at the middle of the low band
     * @param flowHertz middle of the low band
     * @param frictionDensity density at the middle of the high band
     * @param frictionHertz middle of the high band
     */
    Noise(double sampleRate, double density, double flowDensity, double flowHertz, double frictionDensity,
            double frictionHertz) {
        this.sampleRate = sampleRate;
        double toGain = Math.sqrt(sampleRate / 2);
        white = density * toGain;
        gain[0] = flowDensity * toGain;
        gain[1] = frictionDensity * toGain;
        filters[0] = bandPass(flowHertz, 0.5);
        filters[1] = bandPass(frictionHertz, 1.2);
    }

    /** Draws a noise whose velocity in the usual band is some hundredths to a tenth or two of the limit. */
    static Noise draw(Draws draws, double sampleRate, double limit) {
        double flowHertz = draws.logUniform(40, 250);
        // Half-power width of the low band is twice its middle: rms velocity is about density·sqrt(π·f)/(2πf).
        double velocity = limit * draws.logNormal(0.05, 0.6);
        double flow = velocity * 2 * Math.PI * flowHertz / Math.sqrt(Math.PI * flowHertz);
        return new Noise(sampleRate, draws.logUniform(5e-5, 5e-4), flow, flowHertz, draws.logUniform(1e-3, 1.5e-2),
                draws.logUniform(0.12, 0.36) * sampleRate);
    }

    /** Audio-cookbook form: b, a1, a2 with the quality given. */
    private double[] bandPass(double hertz, double quality) {
        double w = 2 * Math.PI * hertz / sampleRate;
        double alpha = StrictMath.sin(w) / (2 * quality);
        return new double[] {alpha / (1 + alpha), -2 * StrictMath.cos(w) / (1 + alpha), (1 - alpha) / (1 + alpha)};
    }

    void addTo(double[] samples, SplittableRandom random) {
        double[] low = filters[0];
        double[] high = filters[1];
        double x1 = 0;
        double x2 = 0;
        double l1 = 0;
        double l2 = 0;
        double h1 = 0;
        double h2 = 0;
        for (int i = 0; i < samples.length; i++) {
            double x = random.nextGaussian();
            double l = low[0] * (x - x2) - low[1] * l1 - low[2] * l2;
            double h = high[0] * (x - x2) - high[1] * h1 - high[2] * h2;
            samples[i] += white * x + gain[0] * l + gain[1] * h;
            x2 = x1;
            x1 = x;
            l2 = l1;
            l1 = l;
            h2 = h1;
            h1 = h;
        }
    }

    /** Rms acceleration, by the density at five hundred frequencies. */
    double rms() {
        double square = 0;
        int lines = 500;
        for (int i = 0; i < lines; i++) {
            double density = densityAt((i + 0.5) * sampleRate / 2 / lines);
            square += density * density * sampleRate / 2 / lines;
        }
        return Math.sqrt(square);
    }

    /** Amplitude density of the acceleration at a frequency, in m/s² in 1 Hz. */
    double densityAt(double hertz) {
        double re = white;
        double im = 0;
        double w = 2 * Math.PI * hertz / sampleRate;
        for (int i = 0; i < filters.length; i++) {
            double[] f = filters[i];
            double numRe = f[0] * (1 - StrictMath.cos(2 * w));
            double numIm = f[0] * StrictMath.sin(2 * w);
            double denRe = 1 + f[1] * StrictMath.cos(w) + f[2] * StrictMath.cos(2 * w);
            double denIm = -f[1] * StrictMath.sin(w) - f[2] * StrictMath.sin(2 * w);
            double square = denRe * denRe + denIm * denIm;
            re += gain[i] * (numRe * denRe + numIm * denIm) / square;
            im += gain[i] * (numIm * denRe - numRe * denIm) / square;
        }
        return Math.hypot(re, im) * Math.sqrt(2 / sampleRate);
    }
}
