package dev.vibra.score;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is known of a measuring point: the faults that are there, or that there is none.
 *
 * @param codes codes of the faults, as findings have them; empty for a healthy point
 */
public record Label(List<String> codes) implements Serializable {
    /** The word for a point without a fault. */
    public static final String HEALTHY = "healthy";

    private static final String BEARING = "rolling-bearing-";
    /** Codes of findings, and of what they can't be told apart from. */
    private static final List<String> KNOWN = Stream.concat(
            FaultTable.standard().faults().stream().map(Fault::code), Stream.of("impulsiveness", "periodic-impacts"))
            .distinct().sorted().toList();

    /**
     * Checks that the codes are known, and that each stands once.
     *
     * @param codes see the record
     */
    public Label {
        codes = Require.copy("codes", codes);
        for (String code : codes) {
            if (!KNOWN.contains(code)) {
                throw new IllegalArgumentException("code must be one of " + String.join(", ", KNOWN) + ": " + code);
            }
        }
        if (new LinkedHashSet<>(codes).size() < codes.size()) {
            throw new IllegalArgumentException("codes must differ: " + String.join(", ", codes));
        }
    }

    /** {@return the label of a point without a fault} */
    public static Label healthy() {
        return new Label(List.of());
    }

    /**
     * Makes the label of a point with faults.
     *
     * @param first code of a fault, one of {@link #knownCodes()}
     * @param more codes of further ones at the same point
     * @return the label
     */
    public static Label of(String first, String... more) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(more, "more");
        return new Label(Stream.concat(Stream.of(first), Arrays.stream(more)).toList());
    }

    /** {@return codes that a label may have: those of findings and of what these can't be told apart from, sorted} */
    public static List<String> knownCodes() {
        return KNOWN;
    }

    /** {@return true if no fault is there} */
    public boolean isHealthy() {
        return codes.isEmpty();
    }

    /** The element that a code speaks of; empty for all that is no element of a bearing. */
    static Optional<BearingElement> elementOf(String code) {
        return Arrays.stream(BearingElement.values()).filter(element -> codeOf(element).equals(code)).findFirst();
    }

    private static String codeOf(BearingElement element) {
        return BEARING + element.toString().replace(' ', '-');
    }

    /** Returns the codes, or {@code healthy}. */
    @Override
    public String toString() {
        return isHealthy() ? HEALTHY : String.join(", ", codes);
    }
}
