package dev.vibra.bearing.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** Rows of a reference file, {@code name = values}. */
public final class Reference {
    private final Map<String, double[]> rows;

    private Reference(String text) {
        rows = text.lines().filter(line -> !line.startsWith("#")).map(line -> line.split(" = ", 2))
                .collect(Collectors.toMap(parts -> parts[0],
                        parts -> Arrays.stream(parts[1].split(" ")).mapToDouble(Double::parseDouble).toArray()));
    }

    public static Reference of(String name) {
        try (InputStream in = Objects.requireNonNull(Reference.class.getResourceAsStream("/reference/" + name), name)) {
            return new Reference(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    public double[] row(String name) {
        return Objects.requireNonNull(rows.get(name), name).clone();
    }

    public double value(String name) {
        return row(name)[0];
    }

    public void assertRow(String name, double[] actual, double relative) {
        double[] expected = row(name);
        assertEquals(expected.length, actual.length, name);
        double largest = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual[i], relative * largest, name + "[" + i + "]");
        }
    }
}
