package dev.vibra.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Labels have the codes of findings. */
class LabelTest {
    @Test
    void aLabelHasCodesOrIsHealthy() {
        assertEquals("healthy", Label.healthy().toString());
        assertTrue(Label.healthy().isHealthy());
        assertEquals("unbalance, rolling-bearing-cage", Label.of("unbalance", "rolling-bearing-cage").toString());
        assertFalse(Label.of("unbalance").isHealthy());
    }

    @Test
    void unknownAndRepeatedCodesAreRefused() {
        String unknown = assertThrows(IllegalArgumentException.class, () -> Label.of("outer-race")).getMessage();
        assertTrue(unknown.startsWith("code must be one of ") && unknown.endsWith(": outer-race"), unknown);
        assertThrows(IllegalArgumentException.class, () -> Label.of("unbalance", "unbalance"));
    }

    @Test
    void everyFaultOfTheTableIsKnown() {
        for (Fault fault : FaultTable.standard().faults()) {
            assertTrue(Label.knownCodes().contains(fault.code()), fault.id());
        }
        assertEquals(List.of("broken-rotor-bars"), Label.of("broken-rotor-bars").codes());
        assertThrows(IllegalArgumentException.class, () -> Label.of("unbalance/static"), "a kind is no code");
    }

    /**
     * Whatever code an observation beside the table can give, or names as alike, may be a label. The codes are read out of
     * the sources, as no recording brings forth all of them.
     */
    @Test
    void everyCodeOfAnObservationIsKnown() throws IOException {
        Pattern places = Pattern.compile("(?:new Weighing|alikeTo)\\(((?:\\s*\"[^\"]*\"\\s*,?)+)");
        Pattern codes = Pattern.compile("\"([a-z]+(?:-[a-z]+)*)\"");
        Set<String> found = new TreeSet<>();
        for (Path source : sources()) {
            Matcher place = places.matcher(Files.readString(source));
            while (place.find()) {
                Matcher code = codes.matcher(place.group(1));
                while (code.find()) {
                    found.add(code.group(1));
                }
            }
        }
        assertTrue(found.containsAll(List.of("looseness", "impulsiveness", "periodic-impacts")), found.toString());
        found.removeAll(Label.knownCodes());
        assertEquals(Set.of(), found);
    }

    private static List<Path> sources() throws IOException {
        Path folder = Path.of(System.getProperty("basedir", "")).toAbsolutePath()
                .resolve("src/main/java/dev/vibra/diagnosis");
        try (Stream<Path> list = Files.list(folder)) {
            return list.toList();
        }
    }
}
