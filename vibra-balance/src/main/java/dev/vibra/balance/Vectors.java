package dev.vibra.balance;

import dev.vibra.balance.vector.Phasor;

/** Runs and predictions, added and subtracted reading by reading. */
final class Vectors {
    private Vectors() {}

    static Phasor[] sum(Phasor[] a, Phasor[] b) {
        Phasor[] out = new Phasor[a.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i].plus(b[i]);
        }
        return out;
    }

    static Phasor[] difference(Phasor[] a, Phasor[] b) {
        Phasor[] out = new Phasor[a.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i].minus(b[i]);
        }
        return out;
    }
}
