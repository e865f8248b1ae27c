package dev.vibra.docs.pages;

import dev.vibra.docs.pages.PageParser.Block;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;

/**
 * Runs one java block as if its lines were typed into JShell one after another: a line that finishes a statement runs
 * it at once, so what works here works when pasted, and what JShell would refuse is refused.
 */
final class BlockRunner {
    private final Page page;
    private final PageSession session;
    private final Block block;
    private final JavaComments scan;
    private final Map<Integer, Expectation> expectations = new HashMap<>();
    private final List<Finding> findings = new ArrayList<>();
    private String pending = "";
    private int pendingLine;
    private Optional<Outcome> last = Optional.empty();
    private boolean lastIsCompared;

    BlockRunner(Page page, PageSession session, Block block) {
        this.page = page;
        this.session = session;
        this.block = block;
        this.scan = JavaComments.of(block.lines());
        for (JavaComments.Comment comment : scan.comments()) {
            Expectation.of(comment).ifPresent(expectation -> expectations.put(expectation.line(), expectation));
        }
    }

    /** Number of expectations in the block, those included that fail because they can't be read. */
    int expectationCount() {
        return expectations.size();
    }

    List<Finding> run() {
        List<String> code = scan.codeLines();
        for (int line = 0; line < code.size(); line++) {
            runLine(line, code.get(line));
        }
        if (scan.endsInsideComment()) {
            fail(block.lines().size() - 1, "comment is unfinished at the end of its block");
        } else if (!pending.isBlank()) {
            fail(pendingLine, "statement is unfinished at the end of its block" + of(pending));
        }
        return findings;
    }

    /** What the last statement adds to the output, unless the page compares its value beside it. */
    Optional<String> printedByLast() {
        return lastIsCompared ? Optional.empty() : last.flatMap(Outcome::prints);
    }

    private void runLine(int line, String code) {
        if (pending.isBlank()) {
            pending = "";
            pendingLine = line;
        }
        pending += code + "\n";
        List<Outcome> outcomes = runComplete(line);
        Optional<Expectation> expectation = Optional.ofNullable(expectations.get(line));
        for (int i = 0; i < outcomes.size(); i++) {
            boolean lastOfLine = i == outcomes.size() - 1 && pending.isBlank();
            compare(line, outcomes.get(i), lastOfLine ? expectation : Optional.empty());
        }
        if (expectation.isPresent() && expectation.get() instanceof Expectation.Malformed malformed) {
            fail(line, malformed.reason());
        } else if (expectation.isPresent() && !pending.isBlank()) {
            fail(line, "expectation stands inside a statement: it belongs on the last line of the statement"
                    + of(pending));
        } else if (expectation.isPresent() && outcomes.isEmpty()) {
            fail(line, "expectation stands behind no statement");
        }
    }

    private List<Outcome> runComplete(int line) {
        List<Outcome> outcomes = new ArrayList<>();
        while (!pending.isBlank()) {
            CompletionInfo info = session.analyse(pending);
            if (!info.completeness().isComplete()) {
                break;
            }
            String rest = info.remaining();
            outcomes.add(session.run(info.source()));
            pending = rest.length() < pending.length() ? rest : "";
            pendingLine = line;
        }
        if (!outcomes.isEmpty()) {
            last = Optional.of(outcomes.get(outcomes.size() - 1));
            lastIsCompared = pending.isBlank() && expectations.get(line) instanceof Expectation.Value;
        }
        return outcomes;
    }

    private void compare(int line, Outcome outcome, Optional<Expectation> expectation) {
        if (outcome.broken().isPresent()) {
            fail(line, outcome.broken().get() + of(outcome.source()));
        } else if (expectation.isPresent() && expectation.get() instanceof Expectation.Value value) {
            compareValue(line, outcome, value);
        } else if (expectation.isPresent() && expectation.get() instanceof Expectation.Thrown thrown) {
            compareThrown(line, outcome, thrown);
        } else {
            outcome.thrown().ifPresent(thrown -> fail(line, "throws " + shown(thrown) + of(outcome.source())));
        }
    }

    private void compareValue(int line, Outcome outcome, Expectation.Value expected) {
        String says = ", page says " + expected.text() + of(outcome.source());
        if (outcome.thrown().isPresent()) {
            fail(line, "throws " + shown(outcome.thrown().get()) + says);
        } else if (outcome.value().isEmpty()) {
            fail(line, "statement has no value" + says);
        } else if (!expected.text().agrees(outcome.value().get())) {
            String actual = outcome.value().get();
            String before = block.lines().get(line).substring(0, expected.column());
            Renewal renewal = new Renewal.Lines(block.firstLine() + line, 1,
                    List.of(block.indent() + before + " " + expected.text().renewed(actual)));
            findings.add(new Finding(failure(line, "value is " + shown(actual) + says), Optional.of(renewal)));
        }
    }

    private void compareThrown(int line, Outcome outcome, Expectation.Thrown expected) {
        String says = ", page says " + expected.simpleName()
                + (expected.messagePart().isEmpty() ? "" : ": " + expected.messagePart()) + of(outcome.source());
        if (outcome.thrown().isEmpty()) {
            fail(line, "nothing is thrown" + says);
            return;
        }
        Outcome.Thrown thrown = outcome.thrown().get();
        String part = ExpectedText.collapse(expected.messagePart());
        if (!thrown.simpleName().equals(expected.simpleName())
                || !ExpectedText.collapse(thrown.message()).contains(part)) {
            fail(line, "throws " + shown(thrown) + says);
        }
    }

    private static String of(String source) {
        return "; expression: " + shortened(source, 100);
    }

    private static String shown(Object actual) {
        return shortened(actual.toString(), 300);
    }

    static String shortened(String text, int length) {
        String line = ExpectedText.collapse(text);
        return line.length() <= length ? line : line.substring(0, length) + "\u2026";
    }

    private void fail(int line, String text) {
        findings.add(new Finding(failure(line, text), Optional.empty()));
    }

    private Failure failure(int line, String text) {
        return new Failure(page.name(), block.firstLine() + line, text);
    }
}
