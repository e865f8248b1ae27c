package dev.vibra.survey.machine;

import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Objects;

/**
 * How the readings of a balancing job were written down.
 *
 * @param unit unit of the amplitudes
 * @param detector detector of the amplitudes
 * @param phaseIsLag true if phases lag behind the mark and angles count against rotation; false if phases lead and
 *     angles count with rotation
 * @param scatter one standard deviation of a reading, its floor in the unit and detector of the readings; null if not
 *     told
 */
public record SheetReading(Unit unit, Detector detector, boolean phaseIsLag, ReadingScatter scatter)
        implements Serializable {
    /**
     * Checks what has to be there.
     *
     * @param unit see the record
     * @param detector see the record
     * @param phaseIsLag see the record
     * @param scatter see the record
     */
    public SheetReading {
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(detector, "detector");
    }

    /** Returns unit, detector and sense, as in {@code mm/s rms, phase lag}. */
    @Override
    public String toString() {
        return unit + " " + detector + ", phase " + (phaseIsLag ? "lag" : "lead");
    }
}
