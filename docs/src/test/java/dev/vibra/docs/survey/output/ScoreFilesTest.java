package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.survey.input.Problem;
import dev.vibra.score.LabelOutcome;
import dev.vibra.score.NotScored;
import dev.vibra.score.ScoredLabel;
import dev.vibra.score.Scorecard;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The files of a scorecard: field names of the contract, their order, plain numbers, RFC 4180. */
class ScoreFilesTest {
    private static final Map<String, byte[]> FILES = Contents.bytes(ScoreFiles.of(new ScoreRecord(new Scorecard(List.of(
            new ScoredLabel("set/a, \"7\"", "DE-H", "rolling-bearing-outer-race", LabelOutcome.RIGHT,
                    List.of("rolling-bearing-outer-race", "unbalance"), List.of("unbalance"),
                    List.of("outer: 1f, 2f", "once per revolution")),
            new ScoredLabel("b", "P", "healthy", LabelOutcome.REFUSED, List.of(), List.of(), List.of("lost"))),
            List.of(new NotScored("c", List.of("Q"), "no label"))), List.of(new Problem("b/machine.json", 3, "kind",
            "must be one of")), "0123")));

    private static String text(String name) {
        return new String(FILES.get(name), StandardCharsets.UTF_8);
    }

    @Test
    void jsonHasTheFieldsOfTheContractInTheirOrder() {
        String json = text(ScoreFiles.JSON).replaceAll("\\s+", " ");
        assertTrue(json.startsWith("{ \"format\" : 1, \"library\" : { \"name\" : \"Vibra\", \"version\" : "), json);
        assertTrue(json.contains("\"run\" : \"0123\", \"digests\" : { \"scorecard.csv\" : \""
                + Digest.of(FILES.get(ScoreFiles.CSV)) + "\" }, \"labels\" : [ { \"label\" : \"healthy\", \"count\" :"
                + " 1, \"outcomes\" : [ { \"outcome\" : \"right\", \"count\" : 0, \"of\" : 0, \"lowest\" : 0,"
                + " \"highest\" : 1 }, { \"outcome\" : \"found, not named\","), json);
        // One of one: Clopper and Pearson's lower bound is 0.025 in closed form.
        assertTrue(json.contains("\"defects\" : { \"count\" : 1, \"outcomes\" : [ { \"outcome\" : \"right\", \"count\" :"
                + " 1, \"of\" : 1, \"share\" : 1, \"lowest\" : 0.025, \"highest\" : 1 }"), json);
        assertTrue(json.contains("\"withExtra\" : 1 }, \"healthy\" : {"), json);
        assertTrue(json.contains("\"rows\" : [ { \"machine\" : \"set/a, \\\"7\\\"\", \"point\" : \"DE-H\", \"label\" :"
                + " \"rolling-bearing-outer-race\", \"outcome\" : \"right\", \"said\" : [ \"rolling-bearing-outer-race\","
                + " \"unbalance\" ], \"extra\" : [ \"unbalance\" ], \"evidence\" : [ \"outer: 1f, 2f\", \"once per"
                + " revolution\" ] }, {"), json);
        assertTrue(json.endsWith("\"notScored\" : [ { \"machine\" : \"c\", \"points\" : [ \"Q\" ], \"reason\" :"
                + " \"no label\" } ], \"problems\" : [ { \"file\" : \"b/machine.json\", \"line\" : 3, \"field\" :"
                + " \"kind\", \"text\" : \"must be one of\" } ] } "), json);
    }

    @Test
    void csvHasOneRowForEachLabel() {
        assertEquals("machine,point,label,outcome,said,extra,evidence\r\n\"set/a, \"\"7\"\"\",DE-H,"
                + "rolling-bearing-outer-race,right,rolling-bearing-outer-race unbalance,unbalance,\"outer: 1f, 2f |"
                + " once per revolution\"\r\nb,P,healthy,refused,,,lost\r\n", text(ScoreFiles.CSV));
    }

    @Test
    void theFileForProgramsComesLast() {
        assertEquals(List.of(ScoreFiles.CSV, ScoreFiles.JSON), List.copyOf(FILES.keySet()));
    }
}
