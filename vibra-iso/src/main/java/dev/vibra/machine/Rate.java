package dev.vibra.machine;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * A frequency that a machine makes by the way it is built, and whose multiples its vibration may show.
 *
 * @param kind what makes it
 * @param owner which shaft, gear stage, belt or blade ring makes it; the kind's label where there is one only
 * @param hertz frequency, finite and &gt; 0 Hz
 */
public record Rate(Kind kind, String owner, double hertz) implements Serializable {
    /** What makes a rate. */
    public enum Kind {
        /** A turn of a shaft. */
        SHAFT("shaft speed"),
        /** Blades or vanes that pass a fixed part. */
        BLADE_PASSING("blade passing"),
        /** Teeth in mesh. */
        GEAR_MESH("gear mesh"),
        /** A turn of a belt. */
        BELT("belt"),
        /** Twice the line frequency, at which magnetic forces pull. */
        TWICE_LINE("twice the line frequency"),
        /** Poles of the stator that a bar of an induction motor's rotor slips past; lines lie beside others at it. */
        POLE_PASS("pole pass");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** {@return true for what turns or meshes; false for forces that need no rotation} */
        public boolean isMechanical() {
            return this != TWICE_LINE && this != POLE_PASS;
        }

        /** Returns the words of the trade, as in {@code blade passing}. */
        @Override
        public String toString() {
            return label;
        }
    }

    /**
     * Checks that the rate is a frequency.
     *
     * @param kind see the record
     * @param owner see the record
     * @param hertz see the record
     */
    public Rate {
        Objects.requireNonNull(kind, "kind");
        owner = Require.notBlank("owner", owner);
        Require.positive("hertz", hertz, "Hz");
    }

    /** {@return kind and owner in words, as in {@code gear mesh, stage 1}} */
    public String name() {
        return owner.equals(kind.toString()) ? owner : kind + ", " + owner;
    }

    /** Returns name and frequency, as in {@code blade passing 172.7 Hz}. */
    @Override
    public String toString() {
        return name() + " " + Digits.significant(hertz, 4) + " Hz";
    }
}
