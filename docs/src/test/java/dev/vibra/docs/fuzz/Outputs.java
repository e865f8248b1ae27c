package dev.vibra.docs.fuzz;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What must hold of the files of any survey. */
final class Outputs {
    private static final Pattern NO_NUMBER = Pattern.compile("(?<![\\w/';-])(NaN|-?Infinity|null)(?![\\w/'&-])");
    /** Words of messages on what a file holds. */
    private static final Pattern OF_INPUT =
            Pattern.compile("must be [^:]*: -?(NaN|Infinity|null)|NaN and infinities are not numbers");
    private static final Pattern TAG = Pattern.compile("<(/?)([a-z][a-z0-9]*)([^<>]*)>");
    private static final Pattern PICTURE = Pattern.compile("base64,[^\"]*");
    private static final Pattern STYLE = Pattern.compile("(?s)<style>.*?</style>");
    /** What the figures are drawn from, and the words of their controls. */
    private static final Pattern DATA = Pattern.compile("(?s)<script type=\"application/json\"[^>]*>(.*?)</script>");
    private static final Set<String> WITHOUT_END = Set.of("meta", "img", "br");
    private static final JsonFactory JSON = JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private Outputs() {}

    static void check(Path folder) throws IOException {
        checkJson(Files.readString(folder.resolve("results.json")));
        checkCsv(Files.readString(folder.resolve("results.csv")));
        checkHtml(Files.readString(folder.resolve("report.html")));
    }

    /** Complains of words that stand where a number should. */
    static void requireNumbers(String what, String text) {
        String own = OF_INPUT.matcher(text.replaceAll("\\s+", " ")).replaceAll("");
        Matcher found = NO_NUMBER.matcher(own);
        if (found.find()) {
            throw new AssertionError(what + " says " + found.group() + ": " + own.substring(Math.max(0,
                    found.start() - 200),
                    Math.min(own.length(), found.end() + 100)));
        }
    }

    private static void checkJson(String text) throws IOException {
        try (JsonParser parser = JSON.createParser(text)) {
            while (parser.nextToken() != null) {
                if (parser.currentToken() == JsonToken.VALUE_STRING) {
                    requireNumbers("results.json, " + parser.currentName(), parser.getText());
                } else if (parser.currentToken() == JsonToken.VALUE_NUMBER_FLOAT
                        && !Double.isFinite(parser.getDoubleValue())) {
                    throw new AssertionError("results.json, " + parser.currentName() + ": " + parser.getText());
                }
            }
        }
    }

    private static void checkCsv(String text) {
        requireNumbers("results.csv", text);
        List<CsvRecord> rows = CsvReader.builder().ofCsvRecord(text).stream().toList();
        for (CsvRecord row : rows) {
            if (row.getFieldCount() != 4) {
                throw new AssertionError("results.csv must have four columns: " + row);
            }
            for (int i : new int[] {0, 1, 3}) {
                if (!row.getField(i).isEmpty() && "=+-@\t\r".indexOf(row.getField(i).charAt(0)) >= 0) {
                    throw new AssertionError("results.csv holds what a spreadsheet runs: " + row.getField(i));
                }
            }
            if (row != rows.get(0) && !Double.isFinite(Double.parseDouble(row.getField(2)))) {
                throw new AssertionError("results.csv: " + row);
            }
        }
    }

    /** Tags are closed in order, and none comes from a name. */
    private static void checkHtml(String page) throws IOException {
        Matcher data = DATA.matcher(page);
        while (data.find()) {
            checkJson(data.group(1));
        }
        // The last script before the end is the page's own; any other is foreign.
        String own = page.substring(page.lastIndexOf("<script>"), page.lastIndexOf("</script>") + 9);
        String text = DATA.matcher(STYLE.matcher(PICTURE.matcher(page.replace(own, "")).replaceAll("")).replaceAll(""))
                .replaceAll("");
        requireNumbers("report.html", text);
        Shown.require("report.html", "x" + text.replace("\n", ""), Integer.MAX_VALUE);
        Deque<String> open = new ArrayDeque<>();
        Matcher tag = TAG.matcher(text);
        while (tag.find()) {
            String name = tag.group(2);
            if (name.equals("script") || tag.group().startsWith("<img src=x")) {
                throw new AssertionError("report.html holds a foreign tag: " + tag.group());
            }
            if (!tag.group(1).isEmpty()) {
                if (open.isEmpty() || !open.pop().equals(name)) {
                    throw new AssertionError("report.html closes what isn't open: " + tag.group());
                }
            } else if (!WITHOUT_END.contains(name) && !tag.group(3).endsWith("/")) {
                open.push(name);
            }
        }
        if (!open.isEmpty()) {
            throw new AssertionError("report.html leaves open: " + open);
        }
    }
}
