package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;

/** Whatever stands in a machine description, reading it gives a machine or says why not. */
class MachineFileProperties {
    private static final String FULL = full();

    private static String full() {
        try (InputStream in = MachineFileProperties.class.getResourceAsStream("full.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static MachineReading read(String json) {
        return MachineFile.parse("machine.json", json.getBytes(StandardCharsets.UTF_8));
    }

    @Property(tries = 500)
    void aDescriptionWithAHoleIsReadOrRefusedWithAReason(@ForAll @IntRange(max = 4000) int from,
            @ForAll @IntRange(min = 1, max = 40) int length) {
        int begin = from % FULL.length();
        int end = Math.min(FULL.length(), begin + length);
        MachineReading reading = read(FULL.substring(0, begin) + FULL.substring(end));
        assertTrue(reading.machine().isPresent() || !reading.problems().isEmpty());
        reading.problems().forEach(problem -> assertTrue(problem.toString().startsWith("machine.json, line ")));
    }

    @Property(tries = 300)
    void strayCharactersAreReadOrRefusedWithAReason(@ForAll @IntRange(max = 4000) int at,
            @ForAll @StringLength(min = 1, max = 5) String stray) {
        int place = at % FULL.length();
        MachineReading reading = read(FULL.substring(0, place) + stray + FULL.substring(place));
        assertTrue(reading.machine().isPresent() || !reading.problems().isEmpty());
    }

    @Property(tries = 200)
    void anUnknownFieldIsAlwaysNamed(@ForAll @AlphaChars @StringLength(min = 12, max = 30) String name) {
        MachineReading reading = read(FULL.replace("\"blades\": 7", "\"" + name + "\": 7"));
        assertEquals(1, reading.problems().size());
        assertEquals(name, reading.problems().get(0).field());
        assertTrue(reading.machine().isPresent());
    }
}
