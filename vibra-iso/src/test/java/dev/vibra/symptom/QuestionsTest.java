package dev.vibra.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The text of questions. */
class QuestionsTest {
    @Test
    void everyRowOfTheTableOfFaultsIsAQuestion() throws IOException {
        String table;
        try (InputStream in = Site.class.getResourceAsStream("/dev/vibra/fault/faults.txt")) {
            table = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String rows = table.substring(table.indexOf("\n[symptoms]"), table.indexOf("\n[faults]"));
        List<String[]> cells = rows.lines().skip(3).filter(line -> line.contains("|")).map(line -> line.split("\\|"))
                .toList();
        assertTrue(cells.size() > 60);
        cells.forEach(row -> Questions.parse(row[0].strip(), row[2]));
    }

    @Test
    void aFigureThatIsWrongIsNamed() {
        Map<String, String> wrong = Map.of(
                "ratio 2 1", "c: SHARE of \"ratio\" must be a number from 0.01 to 100.0: it is missing",
                "ratio 2 x 1", "c: B of \"ratio\" must be a whole number from 1 to 10: x",
                "ratio 2 1 NaN", "c: SHARE of \"ratio\" must be a number from 0.01 to 100.0: NaN",
                "leads 1 sideways", "c: DIRECTION of \"leads\" must be one of radial, axial, any: sideways",
                "rate-high sun", "c: RATE of \"rate-high\" must be one of twice-line, mesh, blades, belt: sun",
                "carried 1", "c: \"carried\" takes no more figures: 1",
                "element ball",
                "c: ELEMENT of \"element\" must be one of outer-race, inner-race, rolling-element, cage: ball");
        wrong.forEach((asks, message) -> assertEquals(message, assertThrows(IllegalArgumentException.class,
                () -> Questions.parse("c", asks)).getMessage()));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Questions.parse("c", "")).getMessage()
                .startsWith("c: kind of question must be one of axial, both-sides,"));
    }
}
