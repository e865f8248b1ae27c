package dev.vibra.balance;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.util.List;

/** Runs and predictions, added and subtracted reading by reading. */
final class Vectors {
    /** Beyond any machine; the library's own bound, so that squares and ratios of what a job is told stay numbers. */
    static final double LARGEST = 1e30;
    static final double SMALLEST = 1e-30;

    private Vectors() {}

    static void requirePlausible(String what, Phasor vector) {
        if (!(vector.magnitude() <= LARGEST)) {
            throw Require.failure("magnitude of the " + what, "at most " + LARGEST + " in SI units",
                    vector.magnitude());
        }
    }

    static void requireAlike(List<?> one, List<?>... others) {
        for (List<?> other : others) {
            if (other.size() != one.size()) {
                throw new IllegalArgumentException("vectors must be one per reading, " + one.size() + ": "
                        + other.size());
            }
        }
    }

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
