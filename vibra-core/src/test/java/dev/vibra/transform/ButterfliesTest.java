package dev.vibra.transform;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.spi.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Methods of inner loops must be too long to be inlined (FreqInlineSize is 325 on JDK 17 and 25), or they stay scalar. */
class ButterfliesTest {
    private static final int LONGEST_INLINED = 325;
    private static final Pattern BYTECODE = Pattern.compile("^ +([0-9]+): [a-z]");

    @Test
    void innerLoopsAreTooLongToBeInlined(@TempDir Path folder) throws Exception {
        assertEquals(3, lengths(Butterflies.class, folder).size());
        assertEquals(1, lengths(Turns.class, folder).size());
    }

    private static List<Integer> lengths(Class<?> type, Path folder) throws Exception {
        Path file = folder.resolve(type.getSimpleName() + ".class");
        try (var bytes = type.getResourceAsStream(file.getFileName().toString())) {
            Files.copy(bytes, file);
        }
        StringWriter text = new StringWriter();
        ToolProvider.findFirst("javap").orElseThrow()
                .run(new PrintWriter(text), new PrintWriter(text), "-c", "-p", file.toString());
        List<Integer> lengths = new ArrayList<>();
        for (String method : text.toString().split("\n\n")) {
            if (method.contains("static void")) {
                Matcher matcher = BYTECODE.matcher("");
                int last = method.lines().map(matcher::reset).filter(Matcher::find)
                        .mapToInt(found -> Integer.parseInt(found.group(1))).reduce(0, (a, b) -> b);
                assertTrue(last + 1 > LONGEST_INLINED, type + ", " + last + " bytecodes: " + method);
                lengths.add(last + 1);
            }
        }
        return lengths;
    }
}
