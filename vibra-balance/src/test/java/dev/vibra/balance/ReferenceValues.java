package dev.vibra.balance;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads {@code key = number number ...} files of the reference folder. */
public final class ReferenceValues {
    private final Map<String, double[]> values = new LinkedHashMap<>();

    private ReferenceValues() {}

    public static ReferenceValues read(String name) {
        ReferenceValues out = new ReferenceValues();
        try (InputStream in = ReferenceValues.class.getResourceAsStream("/reference/" + name)) {
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (!line.isBlank() && !line.startsWith("#")) {
                    String[] parts = line.split(" = ");
                    out.values.put(parts[0], Arrays.stream(parts[1].trim().split(" "))
                            .mapToDouble(Double::parseDouble).toArray());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out;
    }

    public double[] all(String key) {
        if (!values.containsKey(key)) {
            throw new IllegalArgumentException("no reference value " + key);
        }
        return values.get(key).clone();
    }

    public double one(String key) {
        return all(key)[0];
    }
}
