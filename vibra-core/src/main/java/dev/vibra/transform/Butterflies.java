package dev.vibra.transform;

/**
 * The inner loops of a transform along the rows of a matrix, one butterfly of whole rows a call: out₀ stays, outᵩ is
 * turned by the q-th of the factors w from {@code at} on, interleaved (cos, sin).
 *
 * <p>Their form is what makes the compiler of JDK 17 vectorise them, which is worth a factor of two: all rows of a loop
 * share one index; a loop has at most five rows in and out and some twenty operations; the difference before a rotation
 * is written {@code x + (-y)} in one of its parts only, since two equal operations of one loop body are paired wrongly.
 * Each method is longer than 325 bytecodes: a shorter one would be inlined into the loop that calls it, and loops
 * inside loops stay scalar. {@code ButterfliesTest} guards the length, the benchmark against JTransforms the effect.
 *
 * @see "C. Van Loan, Computational Frameworks for the Fast Fourier Transform, SIAM 1992, sections 1.2 and 2.4"
 */
final class Butterflies {
    private static final double SIN_THIRD = Math.sqrt(0.75);
    private static final double COS_FIFTH = Math.sqrt(5) / 4;
    private static final double SIN_FIFTH = Math.sin(2 * Math.PI / 5);
    private static final double SIN_TWO_FIFTHS = Math.sin(4 * Math.PI / 5);

    private Butterflies() {}

    /** Two rows, or three if the third isn't null; outputs in the order 0, 1, 2. */
    static void twoOrThree(double[] ar, double[] ai, double[] br, double[] bi, double[] cr, double[] ci, double[] w,
            int at, int lanes) {
        double cos1 = w[at];
        double sin1 = w[at + 1];
        if (cr == null) {
            for (int i = 0; i < lanes; i++) {
                double xr = ar[i];
                double yr = br[i];
                double xi = ai[i];
                double yi = bi[i];
                double ur = xr - yr;
                double ui = xi + (-yi);
                ar[i] = xr + yr;
                ai[i] = xi + yi;
                br[i] = ur * cos1 - ui * sin1;
                bi[i] = ur * sin1 + ui * cos1;
            }
            return;
        }
        double third = SIN_THIRD;
        double half = 0.5;
        for (int i = 0; i < lanes; i++) {
            double a = ar[i];
            double b = br[i];
            double c = cr[i];
            double sum = b + c;
            ar[i] = a + sum;
            br[i] = a - half * sum;
            cr[i] = third * (b - c);
        }
        for (int i = 0; i < lanes; i++) {
            double a = ai[i];
            double b = bi[i];
            double c = ci[i];
            double sum = b + c;
            ai[i] = a + sum;
            bi[i] = a - half * sum;
            ci[i] = third * (b - c);
        }
        double cos2 = w[at + 2];
        double sin2 = w[at + 3];
        for (int i = 0; i < lanes; i++) {
            double xr = br[i];
            double yr = cr[i];
            double xi = bi[i];
            double yi = ci[i];
            double ur = xr + yi;
            double ui = xi - yr;
            double vr = xr - yi;
            double vi = xi + yr;
            br[i] = ur * cos1 - ui * sin1;
            bi[i] = ur * sin1 + ui * cos1;
            cr[i] = vr * cos2 - vi * sin2;
            ci[i] = vr * sin2 + vi * cos2;
        }
    }

    /** Four rows; outputs in the order 0, 2, 1, 3. */
    static void four(double[] ar, double[] ai, double[] br, double[] bi, double[] cr, double[] ci, double[] dr,
            double[] di, double[] w, int at, int lanes) {
        for (int i = 0; i < lanes; i++) {
            double a = ar[i];
            double b = br[i];
            double c = cr[i];
            double d = dr[i];
            double even = a + c;
            double odd = b + d;
            ar[i] = even + odd;
            br[i] = even - odd;
            cr[i] = a - c;
            dr[i] = b - d;
        }
        for (int i = 0; i < lanes; i++) {
            double a = ai[i];
            double b = bi[i];
            double c = ci[i];
            double d = di[i];
            double even = a + c;
            double odd = b + d;
            ai[i] = even + odd;
            bi[i] = even - odd;
            ci[i] = a - c;
            di[i] = b - d;
        }
        double cos2 = w[at + 2];
        double sin2 = w[at + 3];
        for (int i = 0; i < lanes; i++) {
            double ur = br[i];
            double ui = bi[i];
            br[i] = ur * cos2 - ui * sin2;
            bi[i] = ur * sin2 + ui * cos2;
        }
        double cos1 = w[at];
        double sin1 = w[at + 1];
        double cos3 = w[at + 4];
        double sin3 = w[at + 5];
        for (int i = 0; i < lanes; i++) {
            double xr = cr[i];
            double yr = dr[i];
            double xi = ci[i];
            double yi = di[i];
            double ur = xr + yi;
            double ui = xi - yr;
            double vr = xr - yi;
            double vi = xi + yr;
            cr[i] = ur * cos1 - ui * sin1;
            ci[i] = ur * sin1 + ui * cos1;
            dr[i] = vr * cos3 - vi * sin3;
            di[i] = vr * sin3 + vi * cos3;
        }
    }

    /** Five rows; outputs in the order 0, 1, 2, 4, 3. */
    static void five(double[] ar, double[] ai, double[] br, double[] bi, double[] cr, double[] ci, double[] dr,
            double[] di, double[] er, double[] ei, double[] w, int at, int lanes) {
        double quarter = 0.25;
        double fifth = COS_FIFTH;
        for (int i = 0; i < lanes; i++) {
            double a = ar[i];
            double b = br[i];
            double c = cr[i];
            double d = dr[i];
            double e = er[i];
            double outer = b + e;
            double inner = c + d;
            double sum = outer + inner;
            double middle = a - quarter * sum;
            double swing = fifth * (outer - inner);
            ar[i] = a + sum;
            br[i] = middle + swing;
            cr[i] = middle - swing;
            er[i] = b - e;
            dr[i] = c - d;
        }
        for (int i = 0; i < lanes; i++) {
            double a = ai[i];
            double b = bi[i];
            double c = ci[i];
            double d = di[i];
            double e = ei[i];
            double outer = b + e;
            double inner = c + d;
            double sum = outer + inner;
            double middle = a - quarter * sum;
            double swing = fifth * (outer - inner);
            ai[i] = a + sum;
            bi[i] = middle + swing;
            ci[i] = middle - swing;
            ei[i] = b - e;
            di[i] = c - d;
        }
        double cos = SIN_TWO_FIFTHS;
        double sin = SIN_FIFTH;
        for (int i = 0; i < lanes; i++) {
            double u = er[i];
            double v = dr[i];
            er[i] = u * cos - v * sin;
            dr[i] = u * sin + v * cos;
        }
        for (int i = 0; i < lanes; i++) {
            double u = ei[i];
            double v = di[i];
            ei[i] = u * cos - v * sin;
            di[i] = u * sin + v * cos;
        }
        double cos1 = w[at];
        double sin1 = w[at + 1];
        double cos4 = w[at + 6];
        double sin4 = w[at + 7];
        for (int i = 0; i < lanes; i++) {
            double xr = br[i];
            double yr = dr[i];
            double xi = bi[i];
            double yi = di[i];
            double ur = xr + yi;
            double ui = xi - yr;
            double vr = xr - yi;
            double vi = xi + yr;
            br[i] = ur * cos1 - ui * sin1;
            bi[i] = ur * sin1 + ui * cos1;
            dr[i] = vr * cos4 - vi * sin4;
            di[i] = vr * sin4 + vi * cos4;
        }
        double cos2 = w[at + 2];
        double sin2 = w[at + 3];
        double cos3 = w[at + 4];
        double sin3 = w[at + 5];
        for (int i = 0; i < lanes; i++) {
            double xr = cr[i];
            double yr = er[i];
            double xi = ci[i];
            double yi = ei[i];
            double ur = xr + yi;
            double ui = xi - yr;
            double vr = xr - yi;
            double vi = xi + yr;
            cr[i] = ur * cos2 - ui * sin2;
            ci[i] = ur * sin2 + ui * cos2;
            er[i] = vr * cos3 - vi * sin3;
            ei[i] = vr * sin3 + vi * cos3;
        }
    }
}
