package dev.vibra.filter;

/**
 * Runs second-order sections one behind the other, up to four in one loop: each has its state in local variables, and
 * while one waits for its own last output the processor works on the next. The order of operations is the same however
 * the sections are grouped and the signal is cut.
 */
final class SectionKernels {
    private static final int MOST_AT_ONCE = 4;

    private SectionKernels() {}

    /** Five coefficients and two numbers of state a section; the input may be the output at the same place. */
    static void run(double[] c, double[] state, double[] in, int inOffset, double[] out, int outOffset, int length) {
        int sections = c.length / 5;
        int first = 0;
        while (first < sections) {
            int rest = sections - first;
            int count = rest <= MOST_AT_ONCE ? rest : Math.min(MOST_AT_ONCE, (rest + 1) / 2);
            double[] from = first == 0 ? in : out;
            int at = first == 0 ? inOffset : outOffset;
            switch (count) {
                case 1 -> one(c, state, first, from, at, out, outOffset, length);
                case 2 -> two(c, state, first, from, at, out, outOffset, length);
                case 3 -> three(c, state, first, from, at, out, outOffset, length);
                default -> four(c, state, first, from, at, out, outOffset, length);
            }
            first += count;
        }
    }

    private static void one(double[] c, double[] state, int first, double[] in, int inOffset, double[] out,
            int outOffset, int length) {
        int p = 5 * first;
        int q = 2 * first;
        double b00 = c[p];
        double b01 = c[p + 1];
        double b02 = c[p + 2];
        double a01 = c[p + 3];
        double a02 = c[p + 4];
        double s0 = state[q];
        double t0 = state[q + 1];
        for (int i = 0; i < length; i++) {
            double x = in[inOffset + i];
            double y = b00 * x + s0;
            s0 = b01 * x + t0 - a01 * y;
            t0 = b02 * x - a02 * y;
            out[outOffset + i] = y;
        }
        state[q] = s0;
        state[q + 1] = t0;
    }

    private static void two(double[] c, double[] state, int first, double[] in, int inOffset, double[] out,
            int outOffset, int length) {
        int p = 5 * first;
        int q = 2 * first;
        double b00 = c[p];
        double b01 = c[p + 1];
        double b02 = c[p + 2];
        double a01 = c[p + 3];
        double a02 = c[p + 4];
        double b10 = c[p + 5];
        double b11 = c[p + 6];
        double b12 = c[p + 7];
        double a11 = c[p + 8];
        double a12 = c[p + 9];
        double s0 = state[q];
        double t0 = state[q + 1];
        double s1 = state[q + 2];
        double t1 = state[q + 3];
        for (int i = 0; i < length; i++) {
            double x = in[inOffset + i];
            double y = b00 * x + s0;
            s0 = b01 * x + t0 - a01 * y;
            t0 = b02 * x - a02 * y;
            x = b10 * y + s1;
            s1 = b11 * y + t1 - a11 * x;
            t1 = b12 * y - a12 * x;
            out[outOffset + i] = x;
        }
        state[q] = s0;
        state[q + 1] = t0;
        state[q + 2] = s1;
        state[q + 3] = t1;
    }

    private static void three(double[] c, double[] state, int first, double[] in, int inOffset, double[] out,
            int outOffset, int length) {
        int p = 5 * first;
        int q = 2 * first;
        double b00 = c[p];
        double b01 = c[p + 1];
        double b02 = c[p + 2];
        double a01 = c[p + 3];
        double a02 = c[p + 4];
        double b10 = c[p + 5];
        double b11 = c[p + 6];
        double b12 = c[p + 7];
        double a11 = c[p + 8];
        double a12 = c[p + 9];
        double b20 = c[p + 10];
        double b21 = c[p + 11];
        double b22 = c[p + 12];
        double a21 = c[p + 13];
        double a22 = c[p + 14];
        double s0 = state[q];
        double t0 = state[q + 1];
        double s1 = state[q + 2];
        double t1 = state[q + 3];
        double s2 = state[q + 4];
        double t2 = state[q + 5];
        for (int i = 0; i < length; i++) {
            double x = in[inOffset + i];
            double y = b00 * x + s0;
            s0 = b01 * x + t0 - a01 * y;
            t0 = b02 * x - a02 * y;
            x = b10 * y + s1;
            s1 = b11 * y + t1 - a11 * x;
            t1 = b12 * y - a12 * x;
            y = b20 * x + s2;
            s2 = b21 * x + t2 - a21 * y;
            t2 = b22 * x - a22 * y;
            out[outOffset + i] = y;
        }
        state[q] = s0;
        state[q + 1] = t0;
        state[q + 2] = s1;
        state[q + 3] = t1;
        state[q + 4] = s2;
        state[q + 5] = t2;
    }

    private static void four(double[] c, double[] state, int first, double[] in, int inOffset, double[] out,
            int outOffset, int length) {
        int p = 5 * first;
        int q = 2 * first;
        double b00 = c[p];
        double b01 = c[p + 1];
        double b02 = c[p + 2];
        double a01 = c[p + 3];
        double a02 = c[p + 4];
        double b10 = c[p + 5];
        double b11 = c[p + 6];
        double b12 = c[p + 7];
        double a11 = c[p + 8];
        double a12 = c[p + 9];
        double b20 = c[p + 10];
        double b21 = c[p + 11];
        double b22 = c[p + 12];
        double a21 = c[p + 13];
        double a22 = c[p + 14];
        double b30 = c[p + 15];
        double b31 = c[p + 16];
        double b32 = c[p + 17];
        double a31 = c[p + 18];
        double a32 = c[p + 19];
        double s0 = state[q];
        double t0 = state[q + 1];
        double s1 = state[q + 2];
        double t1 = state[q + 3];
        double s2 = state[q + 4];
        double t2 = state[q + 5];
        double s3 = state[q + 6];
        double t3 = state[q + 7];
        for (int i = 0; i < length; i++) {
            double x = in[inOffset + i];
            double y = b00 * x + s0;
            s0 = b01 * x + t0 - a01 * y;
            t0 = b02 * x - a02 * y;
            x = b10 * y + s1;
            s1 = b11 * y + t1 - a11 * x;
            t1 = b12 * y - a12 * x;
            y = b20 * x + s2;
            s2 = b21 * x + t2 - a21 * y;
            t2 = b22 * x - a22 * y;
            x = b30 * y + s3;
            s3 = b31 * y + t3 - a31 * x;
            t3 = b32 * y - a32 * x;
            out[outOffset + i] = x;
        }
        state[q] = s0;
        state[q + 1] = t0;
        state[q + 2] = s1;
        state[q + 3] = t1;
        state[q + 4] = s2;
        state[q + 5] = t2;
        state[q + 6] = s3;
        state[q + 7] = t3;
    }
}
