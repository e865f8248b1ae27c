package dev.vibra.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** Rows of a reference file, {@code name = values}. */
public final class Reference {
    private final Map<String, double[]> rows = new LinkedHashMap<>();

    private Reference(String text) {
        text.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
            String[] parts = line.split(" = ", 2);
            rows.put(parts[0], Arrays.stream(parts[1].split(" ")).mapToDouble(Double::parseDouble).toArray());
        });
    }

    /** Reads a file of the folder {@code reference}. */
    public static Reference of(String name) {
        try (InputStream in = Objects.requireNonNull(Reference.class.getResourceAsStream("/reference/" + name), name)) {
            return new Reference(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Returns a row. */
    public double[] row(String name) {
        return Objects.requireNonNull(rows.get(name), name).clone();
    }

    /** Returns a row of one value. */
    public double value(String name) {
        return row(name)[0];
    }

    /** Asserts that values agree with a row to a fraction of its largest value. */
    public void assertRow(String name, double[] actual, double relative) {
        double[] expected = row(name);
        assertEquals(expected.length, actual.length, name);
        double largest = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual[i], relative * largest, name + "[" + i + "]");
        }
    }
}
