package dev.vibra.transform;

import java.util.stream.IntStream;

/**
 * A transform of n₁·n₂ real samples as a matrix, sample {@code n₂·a + b} in row a and column b, n₂ even. Columns b and
 * b + n₂/2 are transformed as real and imaginary part of one, and told apart by the symmetry of their transforms while
 * they are turned; only rows 0 to n₁/2 go on. Frequency {@code k₁ + n₁·k₂} comes out in row k₂ and column k₁, {@code 0
 * ≤ k₁ ≤ n₁/2}; the others are their conjugates.
 *
 * <p>The inverse goes the same way back, real and imaginary parts exchanged.
 */
final class SplitRealKernel extends RealKernel {
    private final int n1;
    private final int n2;
    private final int half;
    /** Columns that go on, n₁/2 + 1. */
    private final int lanes;
    private final RowTransform first;
    private final RowTransform second;
    private final Rows in;
    private final Rows middle;
    private final Rows out;
    /** Row k₁ of the transforms of the lower and of the upper columns, where they come out of the first stage. */
    private final Rows lower;
    private final Rows upper;
    /** The same rows where the inverse wants them. */
    private final Rows lowerBack;
    private final Rows upperBack;
    /** Factors of row k₁ of the lower columns; those of the upper ones are turned by {@code shift} of k₁ besides. */
    private final Rows factors;
    private final Rows shift;
    private final Rows middleLower;
    private final Rows middleUpper;
    private final Rows outLower;
    private final Rows outUpper;

    SplitRealKernel(int n1, int n2) {
        this.n1 = n1;
        this.n2 = n2;
        half = n2 / 2;
        lanes = n1 / 2 + 1;
        first = new RowTransform(n1, half);
        second = new RowTransform(n2, lanes);
        in = Rows.of(n1, half);
        middle = Rows.of(n2, lanes);
        out = middle.ordered(second.places());
        Rows spare = Rows.of(3, half);
        lower = in.ordered(first.places()).part(0, lanes);
        upper = upperOf(in.ordered(first.places()), spare);
        lowerBack = in.part(0, lanes);
        upperBack = upperOf(in, spare);
        keepParts(spare);
        factors = Rows.of(lanes, half);
        shift = Rows.of(1, lanes);
        fillFactors();
        middleLower = middle.part(0, half);
        middleUpper = middle.part(half, n2);
        outLower = out.part(0, half);
        outUpper = out.part(half, n2);
    }

    /** Row k of the upper columns stands where row -k stood; in the middle both are the same, and one must move. */
    private Rows upperOf(Rows rows, Rows spare) {
        Rows upper = rows.ordered(IntStream.range(0, lanes).map(k -> (n1 - k) % n1).toArray());
        if (n1 % 2 == 0) {
            upper.re()[n1 / 2] = spare.re()[0];
            upper.im()[n1 / 2] = spare.im()[0];
        }
        return upper;
    }

    /**
     * Row 0 of both is real; their real parts stand as the two parts of one row. The other parts are read from a row of
     * zeros and written to one that nobody reads.
     */
    private void keepParts(Rows spare) {
        upper.re()[0] = lower.im()[0];
        lower.im()[0] = spare.re()[1];
        upper.im()[0] = spare.re()[1];
        upperBack.im()[0] = lowerBack.re()[0];
        lowerBack.re()[0] = spare.re()[2];
        upperBack.re()[0] = spare.re()[2];
    }

    private void fillFactors() {
        Roots roots = new Roots((long) n1 * n2);
        for (int k = 1; k < lanes; k++) {
            double scale = 2 * k == n1 ? 1 : 0.5;
            roots.fill(0, k, scale, factors.re()[k], factors.im()[k]);
        }
        roots.fill(0, half, 1, shift.re()[0], shift.im()[0]);
    }

    @Override
    void forward(double[] samples, int offset, double level, double[] spectrum) {
        run(samples, offset, level);
        for (int k = 0; k < half; k++) {
            int mirrored = n2 - 1 - k;
            store(out.re()[k], out.im()[k], out.re()[mirrored], out.im()[mirrored], spectrum, 2 * k * n1);
        }
        spectrum[n1 * n2] = out.re()[half][0];
        spectrum[n1 * n2 + 1] = 0;
        spectrum[1] = 0;
    }

    private void run(double[] samples, int offset, double level) {
        for (int a = 0; a < n1; a++) {
            load(samples, offset + a * n2, level, in.re()[a]);
            load(samples, offset + a * n2 + half, level, in.im()[a]);
        }
        first.run(in, half);
        turnRows(Turns.PART, lower, upper);
        if (n1 % 2 == 0) {
            partMiddle();
        }
        lower.transposeInto(middleLower);
        upper.transposeInto(middleUpper);
        second.run(middle, lanes);
    }

    private static void load(double[] samples, int from, double level, double[] row) {
        System.arraycopy(samples, from, row, 0, row.length);
        if (level != 0) {
            for (int i = 0; i < row.length; i++) {
                row[i] -= level;
            }
        }
    }

    private void turnRows(int kind, Rows p, Rows q) {
        for (int k = 1; 2 * k < n1; k++) {
            Turns.turn(kind, p.re()[k], p.im()[k], q.re()[k], q.im()[k], factors.re()[k], factors.im()[k], null, null,
                    shift.re()[0][k], shift.im()[0][k], half);
        }
    }

    /** Row n₁/2: its real part belongs to the lower columns, its imaginary part to the upper ones. */
    private void partMiddle() {
        int k = n1 / 2;
        double[] re = lower.re()[k];
        double[] im = lower.im()[k];
        double cos = shift.re()[0][k];
        double sin = shift.im()[0][k];
        for (int i = 0; i < half; i++) {
            double x = re[i];
            double y = im[i];
            double c = factors.re()[k][i];
            double s = factors.im()[k][i];
            re[i] = x * c;
            im[i] = x * s;
            upper.re()[k][i] = y * (c * cos - s * sin);
            upper.im()[k][i] = y * (c * sin + s * cos);
        }
    }

    /** Lines of one row, then those that are conjugates of the mirrored row. */
    private void store(double[] re, double[] im, double[] mirroredRe, double[] mirroredIm, double[] spectrum, int to) {
        int at = to;
        for (int i = 0; i < lanes; i++) {
            spectrum[at++] = re[i];
            spectrum[at++] = im[i];
        }
        for (int i = n1 - lanes; i > 0; i--) {
            spectrum[at++] = mirroredRe[i];
            spectrum[at++] = -mirroredIm[i];
        }
    }

    @Override
    void addPower(double[] samples, int offset, double[] sums) {
        run(samples, offset, 0);
        for (int k = 0; k < half; k++) {
            double[] re = out.re()[k];
            double[] im = out.im()[k];
            int at = k * n1;
            for (int i = 0; i < lanes; i++) {
                sums[at + i] += re[i] * re[i] + im[i] * im[i];
            }
            addMirrored(out.re()[n2 - 1 - k], out.im()[n2 - 1 - k], sums, at + n1);
        }
        sums[half * n1] += out.re()[half][0] * out.re()[half][0];
    }

    private void addMirrored(double[] re, double[] im, double[] sums, int end) {
        for (int i = n1 - lanes; i > 0; i--) {
            sums[end - i] += re[i] * re[i] + im[i] * im[i];
        }
    }

    @Override
    void inverse(double[] spectrum, double[] samples, int offset) {
        double scale = 2.0 / ((double) n1 * n2);
        for (int k = 0; k < half; k++) {
            load(spectrum, 2 * k * n1, scale, 1, middle.im()[k], middle.re()[k]);
            load(spectrum, 2 * (k + 1) * n1, scale, -1, middle.im()[n2 - 1 - k], middle.re()[n2 - 1 - k]);
        }
        middle.re()[0][0] = 0;
        middle.re()[half][0] = 0;
        second.run(middle, lanes);
        outLower.transposeInto(lowerBack);
        outUpper.transposeInto(upperBack);
        turnRows(Turns.JOIN, lowerBack, upperBack);
        if (n1 % 2 == 0) {
            joinMiddle();
        }
        first.run(in, half);
        int[] places = first.places();
        for (int a = 0; a < n1; a++) {
            System.arraycopy(in.im()[places[a]], 0, samples, offset + a * n2, half);
            System.arraycopy(in.re()[places[a]], 0, samples, offset + a * n2 + half, half);
        }
    }

    /**
     * Lines upwards, or conjugates downwards from a line. Rows that weren't halved when they were told apart are halved
     * here.
     */
    private void load(double[] spectrum, int from, double scale, int direction, double[] re, double[] im) {
        int at = from;
        for (int i = 0; i < lanes; i++) {
            double factor = i == 0 || 2 * i == n1 ? 0.5 * scale : scale;
            re[i] = factor * spectrum[at];
            im[i] = direction * factor * spectrum[at + 1];
            at += 2 * direction;
        }
    }

    private void joinMiddle() {
        int k = n1 / 2;
        double[] re = lowerBack.re()[k];
        double[] im = lowerBack.im()[k];
        double cos = shift.re()[0][k];
        double sin = shift.im()[0][k];
        for (int i = 0; i < half; i++) {
            double c = factors.re()[k][i];
            double s = factors.im()[k][i];
            double x = re[i] * s + im[i] * c;
            re[i] = upperBack.re()[k][i] * (c * sin + s * cos) + upperBack.im()[k][i] * (c * cos - s * sin);
            im[i] = x;
        }
    }
}
