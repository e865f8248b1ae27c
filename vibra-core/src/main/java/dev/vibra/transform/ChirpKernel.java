package dev.vibra.transform;

import java.util.Arrays;

/**
 * A length with a large prime factor, as a convolution with a chirp in a longer length without one (L. I. Bluestein,
 * IEEE Trans. Audio Electroacoust. 18 (1970) 451-455; Van Loan, section 4.2). The way back takes the rows of the way
 * there as they come out, so that nothing is put in order in between.
 */
final class ChirpKernel extends Kernel {
    private final int length;
    private final int columns;
    private final SplitKernel there;
    private final SplitKernel back;
    private final double[] chirpRe;
    private final double[] chirpIm;
    private final Rows filter;

    ChirpKernel(int length) {
        this.length = length;
        int padded = RealTransform.fastLengthFrom(2 * length - 1);
        columns = largestDivisorUpToRoot(padded);
        there = new SplitKernel(padded / columns, columns);
        // Real and imaginary parts change places, so that the way back is an inverse transform.
        back = new SplitKernel(columns, padded / columns, there.out().swapped());
        chirpRe = new double[length];
        chirpIm = new double[length];
        new Roots(2L * length).fillChirp(chirpRe, chirpIm);
        filter = transformedFilter(padded);
    }

    private Rows transformedFilter(int padded) {
        for (int k = 0; k < length; k++) {
            int mirrored = k == 0 ? 0 : padded - k;
            set(there.in(), k, chirpRe[k] / padded, -chirpIm[k] / padded);
            set(there.in(), mirrored, chirpRe[k] / padded, -chirpIm[k] / padded);
        }
        there.run();
        Rows out = there.out();
        return new Rows(copy(out.re()), copy(out.im()));
    }

    private void set(Rows rows, int at, double re, double im) {
        rows.re()[at / columns][at % columns] = re;
        rows.im()[at / columns][at % columns] = im;
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    private static void clear(Rows rows, int from) {
        for (int r = from; r < rows.re().length; r++) {
            Arrays.fill(rows.re()[r], 0);
            Arrays.fill(rows.im()[r], 0);
        }
    }

    @Override
    void forward(double[] data, int offset) {
        convolve(data, offset, 1, 1);
    }

    @Override
    void inverse(double[] data, int offset) {
        convolve(data, offset, -1, 1.0 / length);
    }

    /** The inverse is the forward transform of the conjugate, conjugated. */
    private void convolve(double[] data, int offset, double sign, double scale) {
        load(data, offset, sign);
        there.run();
        filterRows();
        back.run();
        store(data, offset, sign, scale);
    }

    private void load(double[] data, int offset, double sign) {
        clear(there.in(), length / columns);
        for (int r = 0, k = 0; k < length; r++) {
            double[] re = there.in().re()[r];
            double[] im = there.in().im()[r];
            for (int c = 0; c < columns && k < length; c++, k++) {
                double x = data[offset + 2 * k];
                double y = sign * data[offset + 2 * k + 1];
                re[c] = x * chirpRe[k] - y * chirpIm[k];
                im[c] = x * chirpIm[k] + y * chirpRe[k];
            }
        }
    }

    private void filterRows() {
        double[][] re = there.out().re();
        double[][] im = there.out().im();
        for (int r = 0; r < columns; r += 2) {
            int q = Math.min(r + 1, columns - 1);
            if (q > r) {
                Turns.turn(Turns.ROTATE, re[r], im[r], re[q], im[q], filter.re()[r], filter.im()[r],
                        filter.re()[q], filter.im()[q], 1, 0, re[r].length);
            } else {
                multiply(re[r], im[r], filter.re()[r], filter.im()[r]);
            }
        }
    }

    private static void multiply(double[] re, double[] im, double[] byRe, double[] byIm) {
        for (int i = 0; i < re.length; i++) {
            double x = re[i];
            re[i] = x * byRe[i] - im[i] * byIm[i];
            im[i] = x * byIm[i] + im[i] * byRe[i];
        }
    }

    private void store(double[] data, int offset, double sign, double scale) {
        for (int r = 0, k = 0; k < length; r++) {
            double[] im = back.out().re()[r];
            double[] re = back.out().im()[r];
            for (int c = 0; c < columns && k < length; c++, k++) {
                data[offset + 2 * k] = scale * (re[c] * chirpRe[k] - im[c] * chirpIm[k]);
                data[offset + 2 * k + 1] = sign * scale * (re[c] * chirpIm[k] + im[c] * chirpRe[k]);
            }
        }
    }
}
