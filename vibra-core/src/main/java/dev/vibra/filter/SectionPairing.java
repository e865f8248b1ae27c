package dev.vibra.filter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Makes second-order sections of zeros and poles: each pair of poles, the nearest to the unit circle first, takes the
 * nearest zeros; the sections then run in the opposite order, so that the sharpest resonance comes last.
 *
 * @see "Oppenheim and Schafer, Discrete-Time Signal Processing, 3rd ed. 2010, section 6.9.3"
 */
final class SectionPairing {
    private static final double REAL = 1e-12;

    private SectionPairing() {}

    static SectionCascade pair(List<Complex> zeros, List<Complex> poles, double gain) {
        List<Complex[]> polePairs = pairs(poles);
        List<Complex[]> zeroPairs = pairs(zeros);
        polePairs.sort(Comparator.comparingDouble((Complex[] p) -> -largest(p)));
        // A lone pole, of an odd order, comes after all pairs and so runs first.
        polePairs.sort(Comparator.comparingInt(p -> -p.length));
        double[][] sections = new double[polePairs.size()][];
        for (int i = 0; i < polePairs.size(); i++) {
            Complex[] pole = polePairs.get(i);
            Complex[] zero = nearest(zeroPairs, pole);
            zeroPairs.remove(zero);
            sections[polePairs.size() - 1 - i] = section(zero, pole);
        }
        for (int i = 0; i < 3; i++) {
            sections[0][i] *= gain;
        }
        return SectionCascade.of(sections);
    }

    private static double largest(Complex[] roots) {
        double largest = 0;
        for (Complex root : roots) {
            largest = Math.max(largest, root.abs());
        }
        return largest;
    }

    private static Complex[] nearest(List<Complex[]> candidates, Complex[] pole) {
        return candidates.stream().filter(z -> z.length == pole.length)
                .min(Comparator.comparingDouble(z -> z[0].subtract(pole[0]).abs()))
                .orElseGet(() -> candidates.isEmpty() ? new Complex[0] : candidates.get(0));
    }

    /** Complex roots with their conjugates, the upper one first; real roots two by two, the outermost together. */
    private static List<Complex[]> pairs(List<Complex> roots) {
        List<Complex[]> pairs = new ArrayList<>();
        List<Complex> real = new ArrayList<>();
        for (Complex root : roots) {
            if (Math.abs(root.getImaginary()) <= REAL * root.abs()) {
                real.add(new Complex(root.getReal()));
            } else if (root.getImaginary() > 0) {
                pairs.add(new Complex[] {root, root.conjugate()});
            }
        }
        real.sort(Comparator.comparingDouble(r -> -r.abs()));
        for (int i = 0; i < real.size(); i += 2) {
            pairs.add(i + 1 < real.size() ? new Complex[] {real.get(i), real.get(i + 1)} : new Complex[] {real.get(i)});
        }
        return pairs;
    }

    private static double[] section(Complex[] zeros, Complex[] poles) {
        double[] numerator = polynomial(zeros);
        double[] denominator = polynomial(poles);
        return new double[] {numerator[0], numerator[1], numerator[2], 1, denominator[1], denominator[2]};
    }

    private static double[] polynomial(Complex[] roots) {
        return switch (roots.length) {
            case 0 -> new double[] {1, 0, 0};
            case 1 -> new double[] {1, -roots[0].getReal(), 0};
            default -> new double[] {1, -roots[0].add(roots[1]).getReal(), roots[0].multiply(roots[1]).getReal()};
        };
    }
}
