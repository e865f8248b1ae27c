package dev.vibra.symptom;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * Where on a machine a fault can sit and a symptom is asked for.
 *
 * @param kind what it is
 * @param owner id of the shaft, coupling, gear stage, belt or bearing; the kind's label where there is one only
 * @param ratio turns of its shaft for one turn of the main shaft, &gt; 0
 */
public record Site(Kind kind, String owner, double ratio) implements Serializable {
    /** What a site is. */
    public enum Kind {
        /** The machine as a whole. */
        MACHINE("machine"),
        /** All that turns at one speed. */
        SHAFT("shaft"),
        /** A coupling between two parts. */
        COUPLING("coupling"),
        /** The induction motor that drives. */
        MOTOR("motor"),
        /** A gear stage. */
        GEAR("gear"),
        /** The wheel with blades or vanes. */
        BLADES("blades"),
        /** A belt. */
        BELT("belt"),
        /** A rolling bearing whose geometry is known. */
        BEARING("bearing");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        /** Returns the kind in words, as it stands in the table of faults. */
        @Override
        public String toString() {
            return label;
        }
    }

    /**
     * Checks what it is given.
     *
     * @param kind see the record
     * @param owner see the record
     * @param ratio see the record
     */
    public Site {
        Objects.requireNonNull(kind, "kind");
        owner = Require.notBlank("owner", owner);
        Require.positive("ratio", ratio, "");
    }

    /** {@return the owner where it says more than the kind, else the kind} */
    public String name() {
        return owner.equals(kind.toString()) ? owner : kind + " " + owner;
    }

    /** Written out, since the generated one holds the class loader of the record that used it last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Site site && kind == site.kind && owner.equals(site.owner)
                && Double.compare(ratio, site.ratio) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * kind.ordinal() + owner.hashCode()) + Double.hashCode(ratio);
    }

    /** Returns kind and owner, as in {@code coupling motor to pump}. */
    @Override
    public String toString() {
        return name();
    }
}
