package dev.vibra.filter;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/** Zeros, poles and gain of a low-pass filter in the s plane with its corner at 1 rad/s, and its transformations. */
record AnalogPrototype(List<Complex> zeros, List<Complex> poles, double gain) {
    static AnalogPrototype butterworth(int order) {
        List<Complex> poles = new ArrayList<>();
        for (int m = 1 - order; m < order; m += 2) {
            poles.add(unit(Math.PI * m / (2.0 * order)).negate());
        }
        return new AnalogPrototype(List.of(), poles, 1);
    }

    static AnalogPrototype chebyshev1(int order, double rippleDecibels) {
        double epsilon = Math.sqrt(Math.pow(10, 0.1 * rippleDecibels) - 1);
        double mu = asinh(1 / epsilon) / order;
        List<Complex> poles = new ArrayList<>();
        for (int m = 1 - order; m < order; m += 2) {
            poles.add(ellipse(Math.PI * m / (2.0 * order), mu).negate());
        }
        double gain = product(poles).getReal() / (order % 2 == 0 ? Math.sqrt(1 + epsilon * epsilon) : 1);
        return new AnalogPrototype(List.of(), poles, gain);
    }

    static AnalogPrototype chebyshev2(int order, double attenuationDecibels) {
        double delta = 1 / Math.sqrt(Math.pow(10, 0.1 * attenuationDecibels) - 1);
        double mu = asinh(1 / delta) / order;
        List<Complex> zeros = new ArrayList<>();
        List<Complex> poles = new ArrayList<>();
        for (int m = 1 - order; m < order; m += 2) {
            double angle = Math.PI * m / (2.0 * order);
            if (m != 0) {
                zeros.add(new Complex(0, 1 / Math.sin(angle)));
            }
            poles.add(ellipse(angle, mu).negate().reciprocal());
        }
        return new AnalogPrototype(zeros, poles, product(poles).divide(product(zeros)).getReal());
    }

    /** Point of the ellipse with half axes sinh μ and cosh μ. */
    private static Complex ellipse(double angle, double mu) {
        return new Complex(Math.sinh(mu) * Math.cos(angle), Math.cosh(mu) * Math.sin(angle));
    }

    private static Complex unit(double angle) {
        return new Complex(Math.cos(angle), Math.sin(angle));
    }

    private static double asinh(double x) {
        return Math.log(x + Math.sqrt(x * x + 1));
    }

    /** Product of the negated values: what a polynomial of these roots is at s = 0. */
    private static Complex product(List<Complex> roots) {
        return roots.stream().map(Complex::negate).reduce(Complex.ONE, Complex::multiply);
    }

    private int excess() {
        return poles.size() - zeros.size();
    }

    AnalogPrototype lowPass(double corner) {
        return new AnalogPrototype(zeros.stream().map(z -> z.multiply(corner)).toList(),
                poles.stream().map(p -> p.multiply(corner)).toList(), gain * Math.pow(corner, excess()));
    }

    AnalogPrototype highPass(double corner) {
        List<Complex> newZeros = new ArrayList<>(zeros.stream().map(z -> z.reciprocal().multiply(corner)).toList());
        for (int i = 0; i < excess(); i++) {
            newZeros.add(Complex.ZERO);
        }
        return new AnalogPrototype(newZeros, poles.stream().map(p -> p.reciprocal().multiply(corner)).toList(),
                gain * product(zeros).divide(product(poles)).getReal());
    }

    AnalogPrototype bandPass(double lower, double upper) {
        double width = upper - lower;
        double centre = Math.sqrt(lower * upper);
        List<Complex> newZeros = split(zeros.stream().map(z -> z.multiply(0.5 * width)).toList(), centre);
        for (int i = 0; i < excess(); i++) {
            newZeros.add(Complex.ZERO);
        }
        return new AnalogPrototype(newZeros, split(poles.stream().map(p -> p.multiply(0.5 * width)).toList(), centre),
                gain * Math.pow(width, excess()));
    }

    AnalogPrototype bandStop(double lower, double upper) {
        double width = upper - lower;
        double centre = Math.sqrt(lower * upper);
        List<Complex> newZeros = split(zeros.stream().map(z -> z.reciprocal().multiply(0.5 * width)).toList(), centre);
        for (int i = 0; i < excess(); i++) {
            newZeros.add(new Complex(0, centre));
            newZeros.add(new Complex(0, -centre));
        }
        return new AnalogPrototype(newZeros,
                split(poles.stream().map(p -> p.reciprocal().multiply(0.5 * width)).toList(), centre),
                gain * product(zeros).divide(product(poles)).getReal());
    }

    /** Each root becomes two, one at each side of the centre. */
    private static List<Complex> split(List<Complex> roots, double centre) {
        List<Complex> both = new ArrayList<>();
        for (Complex root : roots) {
            Complex distance = root.multiply(root).subtract(centre * centre).sqrt();
            both.add(root.add(distance));
            both.add(root.subtract(distance));
        }
        return both;
    }

    /** Goes to the z plane by the bilinear transform, s = 2·(z-1)/(z+1) in units of the sample rate. */
    SectionCascade sampled() {
        List<Complex> newZeros = new ArrayList<>(zeros.stream().map(AnalogPrototype::bilinear).toList());
        for (int i = 0; i < excess(); i++) {
            newZeros.add(Complex.ONE.negate());
        }
        double scale = distance(zeros).divide(distance(poles)).getReal();
        return SectionPairing.pair(newZeros, poles.stream().map(AnalogPrototype::bilinear).toList(), gain * scale);
    }

    private static Complex bilinear(Complex s) {
        return s.add(2).divide(s.negate().add(2));
    }

    private static Complex distance(List<Complex> roots) {
        return roots.stream().map(r -> r.negate().add(2)).reduce(Complex.ONE, Complex::multiply);
    }
}
