package dev.vibra.descriptor;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The numbers that describe a recording, and why others could not be made.
 *
 * @param numbers the numbers in the order of the table
 * @param missing reason by name of what could not be made
 */
public record Description(List<DescriptorValue> numbers, Map<String, String> missing) implements Serializable {
    /**
     * Copies both.
     *
     * @param numbers see the record
     * @param missing see the record
     */
    public Description {
        Objects.requireNonNull(missing, "missing");
        numbers = Require.copy("numbers", numbers);
        missing = Collections.unmodifiableMap(new LinkedHashMap<>(missing));
    }

    /** {@return value by name, in the unit of its row, as a historian keeps it} */
    public Map<String, Double> values() {
        Map<String, Double> values = new LinkedHashMap<>();
        numbers.forEach(one -> values.put(one.name(), one.value()));
        return values;
    }

    /** {@return unit by name} */
    public Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        numbers.forEach(one -> units.put(one.name(), one.unit()));
        return units;
    }

    /**
     * Finds a number.
     *
     * @param name name of a descriptor
     * @return its value in the unit of its row, if it could be made
     */
    public OptionalDouble value(String name) {
        Objects.requireNonNull(name, "name");
        return numbers.stream().filter(one -> one.name().equals(name)).mapToDouble(DescriptorValue::value).findFirst();
    }

    /** {@return the numbers, one a line} */
    public String describe() {
        return String.join("\n", numbers.stream().map(DescriptorValue::toString).toList());
    }

    /** Returns how many there are, as in {@code 10 descriptors}. */
    @Override
    public String toString() {
        return numbers.size() + " descriptors" + (missing.isEmpty() ? "" : ", " + missing.size() + " missing");
    }
}
