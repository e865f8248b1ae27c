package dev.vibra.docs.pages;

import dev.vibra.docs.pages.PageParser.Block;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Compares what a block printed with the text block behind it, line by line; blank lines at the end do not count. */
final class OutputComparison {
    private OutputComparison() {}

    static List<Finding> compare(Page page, Block expected, String printed) {
        List<String> says = withoutBlankEnd(expected.lines());
        List<String> gives = withoutBlankEnd(List.of(printed.split("\r\n|\n|\r", -1)));
        Optional<Renewal> renewal = Optional.of(new Renewal.Lines(expected.firstLine(), expected.lines().size(),
                gives.stream().map(line -> line.isEmpty() ? line : expected.indent() + line.stripTrailing()).toList()));
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < Math.min(says.size(), gives.size()); i++) {
            if (!ExpectedText.printed(says.get(i)).agrees(gives.get(i))) {
                String text = "output line " + (i + 1) + " is " + quoted(gives.get(i)) + ", page says "
                        + quoted(says.get(i));
                findings.add(new Finding(new Failure(page.name(), expected.firstLine() + i, text), renewal));
                if (says.size() != gives.size()) {
                    break; // The rest is most likely the same text, moved by some lines.
                }
            }
        }
        if (says.size() != gives.size()) {
            String text = "output has " + gives.size() + " lines, page says " + says.size() + surplus(says, gives);
            findings.add(new Finding(new Failure(page.name(), expected.firstLine(), text), renewal));
        }
        return findings;
    }

    private static String surplus(List<String> says, List<String> gives) {
        int common = Math.min(says.size(), gives.size());
        return gives.size() > common ? "; first line beyond: " + quoted(gives.get(common))
                : "; first line missing: " + quoted(says.get(common));
    }

    private static String quoted(String line) {
        return "\"" + BlockRunner.shortened(line, 300) + "\"";
    }

    private static List<String> withoutBlankEnd(List<String> lines) {
        int size = lines.size();
        while (size > 0 && lines.get(size - 1).isBlank()) {
            size--;
        }
        return lines.subList(0, size);
    }
}
