package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.speedrun.ProbePair;
import dev.vibra.speedrun.TurningSense;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SpeedRunReaderTest {
    private static final String HEAD = """
            { "name": "B", "speedRevolutionsPerMinute": 1480,
              "points": [ { "id": "P", "recording": "p.wav", "unit": "g" } ],
            """;
    private static final String TACHOMETER = "\"tachometer\": { \"recording\": \"t.wav\", \"channel\": 2 }";
    private static final String POINTS = "\"points\": [ { \"id\": \"X\", \"recording\": \"x.wav\", \"unit\": \"um\" },"
            + " { \"id\": \"Y\", \"recording\": \"y.wav\", \"unit\": \"um\", \"scale\": 2 } ]";

    private static MachineReading read(String runs) {
        return MachineFile.parse("machine.json", (HEAD + "\"runs\": [ " + runs + " ] }").getBytes(
                StandardCharsets.UTF_8));
    }

    private static List<String> problems(String runs) {
        return read(runs).problems().stream().map(Problem::toString).toList();
    }

    @Test
    void readsAWholeRun() {
        MachineReading reading = read("{ \"id\": \"stop\", \"orders\": [ 1, 3 ], " + TACHOMETER + ", " + POINTS
                + ", \"probes\": [ { \"id\": \"DE\", \"x\": \"X\", \"y\": \"Y\", \"xDegrees\": 45, \"yDegrees\": 135,"
                + " \"turning\": \"clockwise\", \"positive\": \"towards the probe\" } ] }");
        assertEquals(List.of(), reading.problems());
        SpeedRunSource run = reading.runs().get(0);
        assertEquals("stop", run.id());
        assertEquals(Optional.of(1480.0), run.serviceRevolutionsPerMinute());
        assertEquals(List.of(1.0, 3.0), run.orders());
        assertEquals(Set.of("X", "Y"), run.points().keySet());
        assertEquals(2, run.points().get("Y").scaling().factor());
        assertEquals(1, run.tachometer().tachometer().orElseThrow().pulsesPerRevolution());
        assertEquals(new ProbePair(45, 135, TurningSense.CLOCKWISE, false), run.pairs().get(0).probes());
        assertEquals(Set.of("t.wav", "x.wav", "y.wav"), Set.copyOf(run.files()));
    }

    @Test
    void withoutRunsThereAreNone() {
        assertEquals(List.of(), MachineFile.parse("machine.json", (HEAD + "\"blades\": 3 }").getBytes(
                StandardCharsets.UTF_8)).runs());
    }

    @Test
    void anUnknownFieldIsNamedWithTheNearestKnownOne() {
        assertEquals(List.of("machine.json, line 3, runs[0].tachometr: is not a known field; the nearest known name is"
                + " \"tachometer\""), problems("{ " + TACHOMETER + ", " + POINTS + ", \"tachometr\": 1 }"));
    }

    @Test
    void aPointWithAnErrorIsLeftOutOfItsRun() {
        MachineReading reading = read("{ " + TACHOMETER + ", \"points\": [ { \"id\": \"A\", \"recording\":"
                + " \"../a.wav\", \"unit\": \"um\" }, { \"id\": \"B\", \"recording\": \"b.wav\", \"unit\": \"um\" } ] }");
        assertEquals(Set.of("B"), reading.runs().get(0).points().keySet());
        assertEquals(1, reading.problems().size());
        assertTrue(reading.problems().get(0).toString().contains("inside the survey folder"));
        assertEquals("run 1", reading.runs().get(0).id());
    }

    @Test
    void aRunNeedsTachometerAndPoints() {
        assertEquals(List.of("machine.json, line 3, runs[0].tachometer: is required: the recording of the pulses"),
                problems("{ " + POINTS + " }"));
        assertEquals(List.of(), read("{ " + POINTS + " }").runs());
        assertEquals(List.of("machine.json, line 3, runs[0].points: is required: the recordings that go with it"),
                problems("{ " + TACHOMETER + " }"));
        assertTrue(problems("{ \"orders\": [ 0.1 ], " + TACHOMETER + ", " + POINTS + " }").get(0)
                .contains("runs[0].orders[0]"));
    }

    @Test
    void probesNamePointsOfTheirRun() {
        String probes = ", \"probes\": [ { \"x\": \"X\", \"y\": \"P\", \"xDegrees\": 0, \"yDegrees\": 90, \"turning\":"
                + " \"clockwise\", \"positive\": \"away from the probe\" } ] }";
        MachineReading reading = read("{ " + TACHOMETER + ", " + POINTS + probes);
        assertEquals(List.of("machine.json, line 3, runs[0].probes[0].y: must be the id of a point of the run, one of"
                + " X, Y: \"P\""), reading.problems().stream().map(Problem::toString).toList());
        assertEquals(List.of(), reading.runs().get(0).pairs());
        assertEquals(6, problems("{ " + TACHOMETER + ", " + POINTS + ", \"probes\": [ {} ] }").size());
    }
}
