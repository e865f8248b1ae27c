package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.evidence.Share;
import dev.vibra.score.LabelOutcome;
import dev.vibra.score.NotScored;
import dev.vibra.score.ScoredLabel;
import dev.vibra.score.Scorecard;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The files and the printed text of a scorecard. */
public final class ScoreFiles {
    /** Name of the scorecard for programs, format 1. */
    public static final String JSON = "scorecard.json";
    /** Name of the rows as a table. */
    public static final String CSV = "scorecard.csv";

    private static final int FORMAT = 1;

    private ScoreFiles() {}

    /**
     * Makes the content of both files, to be written in this order: that for programs comes last and holds the digest
     * of the other.
     *
     * @param record the scorecard
     * @return content by file name
     */
    public static Map<String, Content> of(ScoreRecord record) {
        Map<String, String> digests = new LinkedHashMap<>();
        Map<String, Content> files = new LinkedHashMap<>();
        files.put(CSV, Digest.noted(CSV, digests, out -> table(record.card(), out)));
        files.put(JSON, out -> JsonText.write(json(record, digests), out));
        return files;
    }

    /**
     * Writes the scorecard for people: plain text of at most 80 columns.
     *
     * @param record the scorecard
     * @return several lines, each ended by a line feed
     */
    public static String summary(ScoreRecord record) {
        TextPage page = new TextPage();
        record.card().describe().lines().forEach(line -> wrapped(page, line));
        if (!record.problems().isEmpty()) {
            page.heading("Left out because of errors");
            record.problems().forEach(problem -> page.item("  - ", problem.toString()));
        }
        return page.toString();
    }

    /** A line that is too long hangs by its indent and a dash. */
    private static void wrapped(TextPage page, String line) {
        String text = line.stripLeading();
        String begin = line.substring(0, line.length() - text.length()) + (text.startsWith("- ") ? "- " : "");
        page.row(begin, line.substring(begin.length()));
    }

    private static Map<String, Object> json(ScoreRecord record, Map<String, String> digests) {
        Scorecard card = record.card();
        return object("format", FORMAT, "library", object("name", Library.NAME, "version", Library.VERSION),
                "run", record.run(), "digests", digests,
                "labels", card.labels().stream().map(label -> label(label, card.ofLabel(label))).toList(),
                "defects", outcomes(card.defects()), "healthy", outcomes(card.healthy()),
                "rows", card.rows().stream().map(ScoreFiles::row).toList(),
                "notScored", card.notScored().stream().map(ScoreFiles::notScored).toList(),
                "problems", record.problems().stream().map(ResultsJson::problem).toList());
    }

    private static Map<String, Object> label(String label, Scorecard rows) {
        Map<String, Object> object = object("label", label);
        object.putAll(outcomes(rows));
        return object;
    }

    private static Map<String, Object> outcomes(Scorecard card) {
        return object("count", card.rows().size(), "outcomes", Arrays.stream(LabelOutcome.values())
                        .map(outcome -> outcome(outcome, card.share(outcome))).toList(),
                "withExtra", card.rows().stream().filter(row -> !row.extra().isEmpty()).count());
    }

    private static Map<String, Object> outcome(LabelOutcome outcome, Share share) {
        return object("outcome", outcome, "count", share.count(), "of", share.of(), "share", share.value(),
                "lowest", share.lower(), "highest", share.upper());
    }

    private static Map<String, Object> row(ScoredLabel row) {
        return object("machine", row.machine(), "point", row.point(), "label", row.label(), "outcome", row.outcome(),
                "said", row.said(), "extra", row.extra(), "evidence", row.evidence());
    }

    private static Map<String, Object> notScored(NotScored one) {
        return object("machine", one.machine(), "points", one.points(), "reason", one.reason());
    }

    /** One row each, as machine, point, label, outcome, said, extra, evidence; RFC 4180. */
    private static void table(Scorecard card, OutputStream out) throws IOException {
        CsvTable table = new CsvTable(out).row("machine", "point", "label", "outcome", "said", "extra", "evidence");
        card.rows().forEach(row -> table.row(row.machine(), row.point(), row.label(), row.outcome(),
                String.join(" ", row.said()), String.join(" ", row.extra()), joined(row.evidence())));
        table.flush();
    }

    private static String joined(List<String> evidence) {
        return String.join(" | ", evidence);
    }
}
