package dev.vibra.transform;

/**
 * What is done to the rows between the two stages of a split transform. One method for the reasons told at {@link
 * Butterflies}.
 */
final class Turns {
    /** p ← p·v, q ← q·w. */
    static final int ROTATE = 0;
    /**
     * Rows p and q are k and -k of the transform of two real columns, one as real, the other as imaginary part: p ←
     * (p + conj q)·v of the first, q ← (p - conj q)/i·v·(cos + i·sin) of the second.
     */
    static final int PART = 1;
    /** Undoes {@link #PART}, twofold, of rows whose real and imaginary parts are exchanged. */
    static final int JOIN = 2;

    private Turns() {}

    /** For {@link #ROTATE} cos and sin aren't used, for the others w isn't. */
    static void turn(int kind, double[] pr, double[] pi, double[] qr, double[] qi, double[] vr, double[] vi,
            double[] wr, double[] wi, double cos, double sin, int lanes) {
        if (kind == PART) {
            for (int i = 0; i < lanes; i++) {
                double ar = pr[i];
                double br = qr[i];
                double ai = pi[i];
                double bi = qi[i];
                double yr = ar + br;
                double yi = ai - bi;
                double c = vr[i];
                double s = vi[i];
                qr[i] = ai + bi;
                qi[i] = br - ar;
                pr[i] = yr * c - yi * s;
                pi[i] = yr * s + yi * c;
            }
        } else {
            for (int i = 0; i < lanes; i++) {
                double r = pr[i];
                double m = pi[i];
                double c = vr[i];
                double s = vi[i];
                pr[i] = r * c - m * s;
                pi[i] = r * s + m * c;
            }
        }
        if (kind == ROTATE) {
            for (int i = 0; i < lanes; i++) {
                double r = qr[i];
                double m = qi[i];
                double c = wr[i];
                double s = wi[i];
                qr[i] = r * c - m * s;
                qi[i] = r * s + m * c;
            }
        } else {
            for (int i = 0; i < lanes; i++) {
                double r = qr[i];
                double m = qi[i];
                double c = vr[i];
                double s = vi[i];
                double tr = r * c - m * s;
                double ti = r * s + m * c;
                qr[i] = tr * cos - ti * sin;
                qi[i] = tr * sin + ti * cos;
            }
        }
        if (kind == JOIN) {
            for (int i = 0; i < lanes; i++) {
                double ar = pr[i];
                double br = qr[i];
                double ai = pi[i];
                double bi = qi[i];
                pr[i] = ar + bi;
                qr[i] = bi - ar;
                pi[i] = ai - br;
                qi[i] = ai + br;
            }
        }
    }
}
