package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A speed that lines of a recording may stand for.
 *
 * @param speed speed
 * @param standardUncertaintyHertz standard uncertainty of it in Hz, if the lines are its, finite, above zero
 * @param confidence probability that the shaft turns at it, 0 to 1
 * @param multiples which of its first ten multiples have a line, in rising order
 */
public record SpeedCandidate(RotationSpeed speed, double standardUncertaintyHertz, double confidence,
        List<Integer> multiples) implements Serializable {
    /**
     * Checks the values and copies the list.
     *
     * @param speed see the record
     * @param standardUncertaintyHertz see the record
     * @param confidence see the record
     * @param multiples see the record
     */
    public SpeedCandidate {
        Objects.requireNonNull(speed, "speed");
        Require.positive("standardUncertaintyHertz", standardUncertaintyHertz, "Hz");
        Require.within("confidence", confidence, 0, 1, "");
        multiples = Require.copy("multiples", multiples);
    }

    /**
     * Returns speed, confidence and multiples, as in {@code 1485 r/min (24.75 Hz), confidence 0.97, lines at 1, 2x}.
     */
    @Override
    public String toString() {
        return speed + ", confidence " + printed(confidence) + (multiples.isEmpty() ? ", no line at it"
                : ", lines at " + multiples.stream().map(String::valueOf).collect(Collectors.joining(", ")) + "x");
    }

    /** The fit tells no confidences beyond 0.99 apart. */
    static String printed(double confidence) {
        return confidence > 0.99 ? "above 0.99" : Digits.significant(confidence, 2);
    }
}
