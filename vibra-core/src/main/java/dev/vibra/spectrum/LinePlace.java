package dev.vibra.spectrum;

import dev.vibra.window.Window;

/**
 * Where between the bins a sine lies, by the difference of the two neighbours over the highest line: {@code (|W(1-d)| -
 * |W(1+d)|) / |W(d)|} with the window's response W, a rising and odd function of the distance d.
 *
 * <p>For a Hann window it is {@code 6d/(4-d²)}. Other smooth windows follow {@code p·d/(q-d²)} so closely that one or
 * two steps of the secant method from there end at the root; where they don't (a rectangle has no slope at d = 0), the root
 * is enclosed.
 *
 * @see "T. R. Chandrupatla, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function
 *     without using derivatives, Advances in Engineering Software 28 (1997) 145-149 (from memory, unverified)"
 */
final class LinePlace {
    private static final double ACCURACY = 1e-9;
    private static final double CLOSELY = 0.02;
    private static final int MOST_STEPS = 50;

    private final Window window;
    private final double largest;
    private final double p;
    private final double q;
    private final boolean close;

    LinePlace(Window window) {
        this.window = window;
        largest = difference(0.5);
        double half = difference(0.25);
        q = (largest / 4 - half / 8) / (largest - 2 * half);
        p = 2 * largest * (q - 0.25);
        double model = 0.125 * p / (q - 0.125 * 0.125);
        close = p > 0 && q > 0.5 && Math.abs(difference(0.125) - model) <= CLOSELY * model;
    }

    private double difference(double d) {
        return (window.response(1 - d) - window.response(1 + d)) / window.response(d);
    }

    /** The distance in bins, -0.5 to 0.5; a difference beyond what an isolated sine can give is met at half a bin. */
    double distance(double difference) {
        if (!(difference > -largest)) {
            return -0.5;
        }
        if (!(difference < largest)) {
            return 0.5;
        }
        return close ? bySecants(difference) : enclosed(difference);
    }

    private double bySecants(double difference) {
        double d = 2 * q * difference / (p + Math.sqrt(p * p + 4 * q * difference * difference));
        double excess = difference(d) - difference;
        double rise = p * (q + d * d) / ((q - d * d) * (q - d * d));
        for (int i = 0; i < MOST_STEPS && Math.abs(excess) > 0.01 * ACCURACY * rise; i++) {
            double next = Math.max(-0.5, Math.min(0.5, d - excess / rise));
            double excessThere = difference(next) - difference;
            rise = next == d ? rise : (excessThere - excess) / (next - d);
            d = next;
            excess = excessThere;
        }
        return d;
    }

    /** Halves the interval, or goes where the inverse parabola through three points has its root if that is safe. */
    private double enclosed(double difference) {
        double a = -0.5;
        double b = 0.5;
        double atA = -largest - difference;
        double atB = largest - difference;
        double share = 0.5;
        for (int i = 0; i < MOST_STEPS && atA != 0 && Math.abs(b - a) > 0.01 * ACCURACY; i++) {
            double next = a + share * (b - a);
            double there = difference(next) - difference;
            boolean same = there > 0 == atA > 0;
            double c = same ? a : b;
            double atC = same ? atA : atB;
            b = same ? b : a;
            atB = same ? atB : atA;
            a = next;
            atA = there;
            double xi = (a - b) / (c - b);
            double phi = (atA - atB) / (atC - atB);
            boolean safe = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
            double parabola = atA / (atB - atA) * (atC / (atB - atC))
                    + (c - a) / (b - a) * (atA / (atC - atA)) * (atB / (atC - atB));
            double least = 0.5 * Math.min(1, 0.005 * ACCURACY / Math.abs(b - a));
            share = safe ? Math.max(least, Math.min(1 - least, parabola)) : 0.5;
        }
        return Math.abs(atA) < Math.abs(atB) ? a : b;
    }

    /** What a line reads low that lies so far from its bin. */
    double response(double distance) {
        return window.response(distance);
    }
}
