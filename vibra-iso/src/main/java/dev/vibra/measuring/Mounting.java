package dev.vibra.measuring;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * How an accelerometer is fixed, with the usable upper frequencies that public sources give.
 *
 * <p>The figures differ by sensor, surface and source; the standard itself gives none and asks for the mounted
 * resonance instead. They serve for warnings only, never for a verdict; {@link MountedResonance} is the way to be sure.
 *
 * @see "ISO 5348:2021 (methods); figures: public secondary sources that disagree, partly from memory, unverified"
 */
public enum Mounting {
    /** Threaded stud on a flat, clean surface with a film of grease. */
    STUD("stud", 7000, 10_000),
    /** Stiff adhesive such as cyanoacrylate or epoxy. */
    ADHESIVE("adhesive", 6000, 10_000),
    /** Thin film of bees wax, up to about 40 °C. */
    WAX("wax", 8000, 9000),
    /** Double-sided tape, thick or thin. */
    TAPE("tape", 1500, 5000),
    /** Magnet, from two-pole on a curved surface to flat on a flat one. */
    MAGNET("magnet", 2000, 7000),
    /** Probe held by hand. */
    HAND_HELD("hand-held", 500, 2000);

    private final String label;
    private final double lowestFigureHertz;
    private final double highestFigureHertz;

    Mounting(String label, double lowestFigureHertz, double highestFigureHertz) {
        this.label = label;
        this.lowestFigureHertz = lowestFigureHertz;
        this.highestFigureHertz = highestFigureHertz;
    }

    /**
     * Finds a mounting by its plain name.
     *
     * @param name as in {@code magnet}
     * @return the mounting
     * @throws IllegalArgumentException if no mounting has that name; the message lists all names
     */
    public static Mounting ofName(String name) {
        List<String> known = new ArrayList<>();
        for (Mounting mounting : values()) {
            if (mounting.label.equals(name)) {
                return mounting;
            }
            known.add(mounting.label);
        }
        throw new IllegalArgumentException("mounting must be one of " + String.join(", ", known) + ": " + name);
    }

    /**
     * Returns the lowest usable upper frequency that a source gives.
     *
     * @return frequency in Hz
     */
    public double lowestFigureHertz() {
        return lowestFigureHertz;
    }

    /**
     * Returns the highest usable upper frequency that a source gives.
     *
     * @return frequency in Hz
     */
    public double highestFigureHertz() {
        return highestFigureHertz;
    }

    /**
     * Warns where a band reaches into or beyond what the mounting is said to carry.
     *
     * @param band band of the recording or of a criterion
     * @return unmodifiable list of warnings; empty if even the most careful figure covers the band
     */
    public List<String> warnings(Band band) {
        List<String> warnings = new ArrayList<>();
        String figures = Digits.compact(lowestFigureHertz, 5) + " Hz to " + Digits.compact(highestFigureHertz, 5)
                + " Hz (sources disagree)";
        if (Objects.requireNonNull(band, "band").highestHertz() > highestFigureHertz) {
            warnings.add(label + " is said to be usable up to " + figures + ": " + band
                    + " reaches beyond all of them");
        } else if (band.highestHertz() > lowestFigureHertz) {
            warnings.add(label + " is said to be usable up to " + figures
                    + ": find the mounted resonance to be sure of "
                    + band);
        }
        if (this == HAND_HELD && !warnings.isEmpty()) {
            warnings.add("a held probe repeats badly: not for trends (common practice, no source)");
        }
        return List.copyOf(warnings);
    }

    /** Returns the plain name, for example {@code magnet}. */
    @Override
    public String toString() {
        return label;
    }
}
