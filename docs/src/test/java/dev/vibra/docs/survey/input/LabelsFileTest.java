package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.score.Label;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is wrong with labels is named with its line; the other labels are read. */
class LabelsFileTest {
    private static LabelsReading parse(String json) {
        return LabelsFile.parse(json.getBytes(StandardCharsets.UTF_8), List.of("DE-H", "FE-H"));
    }

    @Test
    void aCodeAListAndHealthyAreLabels() {
        LabelsReading reading = parse("""
            { "DE-H": ["rolling-bearing-outer-race", "unbalance"], "FE-H": "healthy" }
            """);
        assertEquals(Map.of("DE-H", Label.of("rolling-bearing-outer-race", "unbalance"), "FE-H", Label.healthy()),
                reading.labels());
        assertEquals(List.of(), reading.problems());
        assertEquals(Map.of("DE-H", Label.of("rub")), parse("{ \"DE-H\": \"rub\" }").labels());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
        "rolling-bearing-outer"       | labels.json, line 2, DE-H: is not a known code; the nearest known name is "rolling-bearing-outer-race": "rolling-bearing-outer"
        "inner-race"                  | labels.json, line 2, DE-H: is not a known code; the nearest known name is "rolling-bearing-inner-race": "inner-race"
        "Healthy"                     | labels.json, line 2, DE-H: is not a known code; the nearest known name is "healthy": "Healthy"
        3                             | labels.json, line 2, DE-H: must be a code, a list of codes, or "healthy": 3
        []                            | labels.json, line 2, DE-H: must be a code, a list of codes, or "healthy": [ ]
        ["rub", "unbalanse"]          | labels.json, line 2, DE-H[1]: is not a known code; the nearest known name is "unbalance": "unbalanse"
        ["rub", "rub"]                | labels.json, line 2, DE-H[1]: must be given once only: "rub"
        ["rub", "healthy"]            | labels.json, line 2, DE-H[1]: "healthy" must stand alone: "healthy"
        "rub", "DE-H": "rub"          | labels.json, line 2, DE-H: must be given once only; it stands on line 2 already
        "rub", "DE_H": "rub"          | labels.json, line 2, DE_H: is not the id of a point that machine.json describes without error; the nearest known name is "DE-H"
        """)
    void anErrorLeavesOutItsLabelOnly(String value, String problem) {
        LabelsReading reading = parse("{ \"FE-H\": \"healthy\",\n\"DE-H\": " + value + " }");
        assertEquals(List.of(problem), reading.problems().stream().map(Problem::toString).toList());
        assertEquals(Optional.of(Label.healthy()), Optional.ofNullable(reading.labels().get("FE-H")));
        assertEquals(problem.contains("DE_H"), reading.labels().containsKey("DE-H"));
    }

    @Test
    void whatIsNoObjectHasNoLabels() {
        assertTrue(parse("{ \"DE-H\": ").problems().get(0).toString().startsWith("labels.json, line 1: is not valid"));
        assertEquals("labels.json, line 1: must be an object { }: a list [ ]", parse("[]").problems().get(0)
                .toString());
    }

    @Test
    void withoutFileThereAreNoLabels(@TempDir Path folder) throws IOException {
        assertEquals(Optional.empty(), LabelsFile.in(folder, List.of("P")));
        Files.writeString(folder.resolve("labels.json"), "{ \"P\": \"healthy\" }");
        assertEquals(Map.of("P", Label.healthy()), LabelsFile.in(folder, List.of("P")).orElseThrow().labels());
    }
}
