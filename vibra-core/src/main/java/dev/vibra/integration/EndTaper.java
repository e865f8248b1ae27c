package dev.vibra.integration;

/**
 * What is done to the ends of a recording before its lines are divided: the least-squares line is taken out and both
 * ends rise from nothing by the integral of a Hann window, smoother than half a cosine, so that less leaks to low
 * frequencies.
 */
final class EndTaper {
    /** Sines are made of two tables, so that a long taper costs few of them: {@code sin(a + b)}. */
    private static final int TABLE = 64;

    private final int length;
    private final double[] weights;

    EndTaper(int length, int taper) {
        this.length = length;
        weights = new double[taper];
        double[] fine = new double[2 * Math.min(TABLE, taper)];
        for (int i = 0; i < fine.length / 2; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / taper;
            fine[2 * i] = Math.sin(angle);
            fine[2 * i + 1] = Math.cos(angle);
        }
        for (int from = 0; from < taper; from += TABLE) {
            double sine = Math.sin(2 * Math.PI * from / taper);
            double cosine = Math.cos(2 * Math.PI * from / taper);
            for (int i = 0; i < Math.min(TABLE, taper - from); i++) {
                double turned = sine * fine[2 * i + 1] + cosine * fine[2 * i];
                weights[from + i] = (from + i + 0.5) / taper - turned / (2 * Math.PI);
            }
        }
    }

    int samples() {
        return weights.length;
    }

    /** Writes to the start of an array, where the samples may stand; without a taper nothing is taken out either. */
    void apply(double[] samples, int offset, double[] out) {
        if (weights.length == 0) {
            System.arraycopy(samples, offset, out, 0, length);
            return;
        }
        Detrending.removeLine(samples, offset, out, length);
        for (int i = 0; i < weights.length; i++) {
            out[i] *= weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            out[length - 1 - i] *= weights[i];
        }
    }
}
