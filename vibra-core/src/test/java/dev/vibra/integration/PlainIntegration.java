package dev.vibra.integration;

import dev.vibra.quantity.Band;
import dev.vibra.transform.RealTransform;

/** {@link SpectralIntegration} line by line as its comment says it, for comparison. */
final class PlainIntegration {
    private PlainIntegration() {}

    static double[] of(double[] samples, double rate, int integrations, Band band) {
        int length = samples.length;
        int taper = band.lowestHertz() == 0 ? 0 : (int) Math.ceil(3 * rate / band.lowestHertz());
        RealTransform transform = RealTransform.of(Integer.highestOneBit(length + taper - 1) << 1);
        double[] padded = new double[transform.length()];
        System.arraycopy(taper > 0 ? Detrending.withoutLine(samples) : samples, 0, padded, 0, length);
        for (int i = 0; i < taper; i++) {
            double place = (i + 0.5) / taper;
            double weight = place - Math.sin(2 * Math.PI * place) / (2 * Math.PI);
            padded[i] *= weight;
            padded[length - 1 - i] *= weight;
        }
        double[] lines = transform.forward(padded, 0, new double[2 * transform.lines()]);
        for (int k = 0; k < transform.lines(); k++) {
            double hertz = k * rate / transform.length();
            double skirt = skirt(band, hertz);
            double factor = skirt == 0 ? 0 : skirt * Math.pow(2 * Math.PI * hertz, -integrations);
            double turn = -integrations * Math.PI / 2;
            double re = lines[2 * k] * factor;
            double im = lines[2 * k + 1] * factor;
            lines[2 * k] = re * Math.cos(turn) - im * Math.sin(turn);
            lines[2 * k + 1] = re * Math.sin(turn) + im * Math.cos(turn);
        }
        double[] settled = new double[length - 2 * taper];
        System.arraycopy(transform.inverse(lines, padded, 0), taper, settled, 0, settled.length);
        return settled;
    }

    private static double skirt(Band band, double hertz) {
        if (band.contains(hertz)) {
            return 1;
        }
        double distance = hertz < band.lowestHertz() ? (band.lowestHertz() - hertz) / (0.4 * band.lowestHertz())
                : (hertz - band.highestHertz()) / (0.1 * band.highestHertz());
        return distance >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * distance);
    }
}
