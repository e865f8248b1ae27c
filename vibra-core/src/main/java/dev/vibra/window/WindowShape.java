package dev.vibra.window;

import java.io.Serializable;

/**
 * A window as a function of its place from 0 to 1, with the figures that follow from it. The defaults integrate
 * numerically; shapes with closed forms override them.
 */
interface WindowShape extends Serializable {
    /** Points of the midpoint rule; windows are smooth or have few corners, so 1e-7 is reached. */
    int POINTS = 4096;

    /** Returns the weight at a place from 0 (included) to 1. */
    double at(double place);

    /** Returns the weights at equal steps from place 0 on, as many as fill the window. */
    default double[] samples(int length) {
        double[] weights = new double[length];
        for (int n = 0; n < length; n++) {
            weights[n] = at((double) n / length);
        }
        return weights;
    }

    /** Returns the distance from the middle of the main lobe to its first zero, in bins. */
    double mainLobeHalfWidth();

    /** Returns the place from which on the window is zero, at most 1. */
    default double end() {
        return 1;
    }

    /** Returns the mean of the window. */
    default double mean() {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += at(end() * (i + 0.5) / POINTS);
        }
        return end() * sum / POINTS;
    }

    /** Returns the mean of the squared window. */
    default double meanSquare() {
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double w = at(end() * (i + 0.5) / POINTS);
            sum += w * w;
        }
        return end() * sum / POINTS;
    }

    /** Returns the magnitude of the transform at a distance in bins, relative to distance 0. */
    default double response(double bins) {
        double re = 0;
        double im = 0;
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            double place = end() * (i + 0.5) / POINTS;
            double w = at(place);
            re += w * Math.cos(2 * Math.PI * bins * place);
            im += w * Math.sin(2 * Math.PI * bins * place);
            sum += w;
        }
        return Math.hypot(re, im) / sum;
    }
}
