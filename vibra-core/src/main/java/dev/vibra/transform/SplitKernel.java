package dev.vibra.transform;

/**
 * A complex transform of n₁·n₂ values as a matrix, value {@code n₂·a + b} in row a and column b: transform along the
 * rows, turn, transpose, transform along the rows (Van Loan, section 3.2). Frequency {@code k₁ + n₁·k₂} comes out in
 * row k₂ and column k₁.
 */
final class SplitKernel extends Kernel {
    private final int n1;
    private final int n2;
    private final RowTransform first;
    private final RowTransform second;
    private final Rows in;
    private final Rows swappedIn;
    private final Rows turned;
    private final Rows middle;
    private final Rows out;
    private final Rows swappedOut;
    private final Rows factors;

    SplitKernel(int n1, int n2) {
        this(n1, n2, Rows.of(n1, n2));
    }

    /** Transforms what stands in rows of another kernel. */
    SplitKernel(int n1, int n2, Rows in) {
        this.n1 = n1;
        this.n2 = n2;
        first = new RowTransform(n1, n2);
        second = n2 == n1 ? first : new RowTransform(n2, n1);
        this.in = in;
        swappedIn = in.swapped();
        turned = in.ordered(first.places());
        middle = Rows.of(n2, n1);
        out = middle.ordered(second.places());
        swappedOut = out.swapped();
        factors = Rows.of(n1, n2);
        Roots roots = new Roots((long) n1 * n2);
        for (int k = 0; k < n1; k++) {
            roots.fill(0, k, 1, factors.re()[k], factors.im()[k]);
        }
    }

    /** Rows a, columns b: what is to be transformed; overwritten by {@link #run}. */
    Rows in() {
        return in;
    }

    /** Rows k₂, columns k₁: what came out. */
    Rows out() {
        return out;
    }

    /** Transforms what stands in the rows. */
    void run() {
        first.run(in, n2);
        for (int k = 1; k < n1; k += 2) {
            turnRows(k, k + 1 < n1 ? k + 1 : 0);
        }
        turned.transposeInto(middle);
        second.run(middle, n1);
    }

    /** Two rows at a time; the factors of row 0 are 1. */
    private void turnRows(int p, int q) {
        Turns.turn(Turns.ROTATE, turned.re()[p], turned.im()[p], turned.re()[q], turned.im()[q], factors.re()[p],
                factors.im()[p], factors.re()[q], factors.im()[q], 1, 0, n2);
    }

    @Override
    void forward(double[] data, int offset) {
        load(data, offset, in);
        run();
        store(out, 1, data, offset);
    }

    @Override
    void inverse(double[] data, int offset) {
        load(data, offset, swappedIn);
        run();
        store(swappedOut, 1.0 / ((double) n1 * n2), data, offset);
    }

    private void load(double[] data, int offset, Rows rows) {
        int at = offset;
        for (int a = 0; a < n1; a++) {
            double[] re = rows.re()[a];
            double[] im = rows.im()[a];
            for (int b = 0; b < n2; b++) {
                re[b] = data[at++];
                im[b] = data[at++];
            }
        }
    }

    private void store(Rows rows, double scale, double[] data, int offset) {
        int at = offset;
        for (int k = 0; k < n2; k++) {
            double[] re = rows.re()[k];
            double[] im = rows.im()[k];
            for (int i = 0; i < n1; i++) {
                data[at++] = scale * re[i];
                data[at++] = scale * im[i];
            }
        }
    }
}
