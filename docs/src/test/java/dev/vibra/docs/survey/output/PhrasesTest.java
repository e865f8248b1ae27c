package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All texts of the report stand in one file, and each of them is used. */
class PhrasesTest {
    private static final Path CODE = Path.of("docs/src/main/java/dev/vibra/docs/survey/output");
    private static final Path SCRIPTS = Path.of("docs/src/main/resources/dev/vibra/docs/survey/output");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Pattern KEY = Pattern.compile("[a-z]+(-[a-z]+)*(\\.[a-zA-Z0-9_-]+)+");
    private static final Pattern FILE = Pattern.compile(".*\\.(html|css|json|csv|txt|svg|png|properties|js)");

    @TempDir
    Path temp;

    private static List<String> literals(Path folder, String names) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<String> literals = new ArrayList<>();
            for (Path file : files.filter(one -> one.getFileName().toString().matches(names)).sorted().toList()) {
                Matcher matcher = LITERAL.matcher(Files.readString(file).replaceAll("(?m)^\\s*(\\*|//|/\\*).*$", ""));
                while (matcher.find()) {
                    literals.add(matcher.group(1));
                }
            }
            return literals;
        }
    }

    @Test
    void eachKeyOfTheCodeIsInTheFileAndEachKeyOfTheFileInTheCode() throws IOException {
        Set<String> known = Phrases.english().under("").keySet();
        List<String> literals = literals(CODE, ".*\\.java");
        for (String literal : literals) {
            if (KEY.matcher(literal).matches() && !FILE.matcher(literal).matches()) {
                assertTrue(known.contains(literal) || known.contains(literal + ".one"), literal);
            }
        }
        Set<String> used = new TreeSet<>(literals);
        String script = Files.readString(SCRIPTS.resolve("plots.js"));
        assertEquals(List.of(), known.stream().filter(key -> !used.contains(key.replaceFirst("\\.(one|many)$", ""))
                && used.stream().noneMatch(prefix -> prefix.endsWith(".") && key.startsWith(prefix))
                && !script.contains("\"" + key.replaceFirst("^plot\\.", "") + "\"")).toList());
    }

    /** Words beside the file would stay English in every language. */
    @Test
    void sectionsHoldNoWordsOfTheirOwn() throws IOException {
        List<String> words = literals(CODE, "(FirstPage|OpenQuestions|.*Section|.*Figures|BalancingFigure)\\.java").stream()
                .filter(text -> text.matches(".*[A-Za-z]{2,} [A-Za-z]{2,}.*") && !text.matches("[a-z ]*(ruler|error)[a-z ]*"))
                .toList();
        assertEquals(List.of(), words);
    }

    @Test
    void argumentsStandWhereTheTextWantsThem() throws IOException {
        Path file = Files.writeString(temp.resolve("other.properties"), "finding.standing = {2}/{0}/{7}/{x}\n");
        assertEquals("c/a/{7}/{x}", Phrases.translated(file).say("finding.standing", "a", "b", "c"));
        assertEquals("Judged by", Phrases.translated(file).say("front.criterion"));
        assertEquals("1 measuring point", Phrases.english().counted("machine.points", 1));
        assertEquals("0 measuring points", Phrases.english().counted("machine.points", 0));
    }

    @Test
    void aKeyThatNoTextHasIsNamed() throws IOException {
        Path file = Files.writeString(temp.resolve("other.properties"), "front.stat = x\n");
        assertEquals("keys must be those of words.properties: front.stat",
                assertThrows(IllegalArgumentException.class, () -> Phrases.translated(file)).getMessage());
        assertEquals("key must be one of words.properties: nothing",
                assertThrows(IllegalArgumentException.class, () -> Phrases.english().say("nothing")).getMessage());
    }

    @Test
    void theFileNamesEachKeyOnce() throws IOException {
        List<String> keys = Files.readAllLines(SCRIPTS.resolve("words.properties")).stream()
                .filter(line -> line.contains(" = ")).map(line -> line.substring(0, line.indexOf(" = "))).toList();
        assertEquals(keys.size(), Set.copyOf(keys).size(), keys.stream().collect(Collectors.groupingBy(key -> key,
                Collectors.counting())).toString());
    }
}
