package dev.vibra.balance.phaseless;

import dev.vibra.balance.Caution;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;

/**
 * Correction found without phase: one answer, or two that fit the amplitudes alike.
 *
 * @param candidates masses to add instead of the trial mass, at its radius; two where the runs can't tell them apart
 * @param contradiction how far the amplitudes are from those of a linear rotor, as a share; 0 is perfect
 * @param remarks doubts
 */
public record PhaselessCorrection(List<PlacedMass> candidates, double contradiction, List<Remark> remarks)
        implements Serializable {
    /**
     * Copies the lists.
     *
     * @param candidates masses to add instead of the trial mass, at its radius; two where the runs can't tell them
     * apart
     * @param contradiction how far the amplitudes are from those of a linear rotor, as a share; 0 is perfect
     * @param remarks doubts
     */
    public PhaselessCorrection {
        candidates = Require.copy("candidates", candidates);
        if (candidates.isEmpty() || candidates.size() > 2) {
            throw new IllegalArgumentException("candidates must be one or two: " + candidates.size());
        }
        Require.notNegative("contradiction", contradiction, "");
        remarks = Require.copy("remarks", remarks);
    }

    /**
     * Tells whether the runs leave two answers.
     *
     * @return true if there are two
     */
    public boolean ambiguous() {
        return candidates.size() > 1;
    }

    /**
     * Returns the only answer.
     *
     * @return mass to add
     * @throws IllegalStateException if there are two answers; the message says how to tell them apart
     */
    public PlacedMass only() {
        if (ambiguous()) {
            throw new IllegalStateException("two corrections fit the amplitudes alike: " + candidates.get(0) + ", or "
                    + candidates.get(1) + "; fit one of them and read again, or add a trial at another angle");
        }
        return candidates.get(0);
    }

    /**
     * Returns the cautions that go with masses on a rotor.
     *
     * @return all cautions
     */
    public List<Caution> cautions() {
        return List.of(Caution.values());
    }

    /** Returns the answer, or both. */
    @Override
    public String toString() {
        return "add " + String.join(", or ", candidates.stream().map(PlacedMass::toString).toList())
                + (ambiguous() ? " (the amplitudes can't tell which)" : "");
    }
}
