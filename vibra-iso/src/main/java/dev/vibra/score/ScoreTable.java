package dev.vibra.score;

import static dev.vibra.score.LabelOutcome.ABSENT;
import static dev.vibra.score.LabelOutcome.FALSE_ALARM;
import static dev.vibra.score.LabelOutcome.FOUND_NOT_NAMED;
import static dev.vibra.score.LabelOutcome.NOT_DETERMINED;
import static dev.vibra.score.LabelOutcome.REFUSED;
import static dev.vibra.score.LabelOutcome.RIGHT;
import static dev.vibra.score.LabelOutcome.WRONG_CODE;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** Writes a scorecard as text. The table itself has at most 80 columns; evidence takes as long a line as it needs. */
final class ScoreTable {
    /** Outcome and its heading of two lines, in the order of {@link LabelOutcome}. */
    private static final List<List<String>> HEADINGS = List.of(List.of("", "right"), List.of("not", "named"),
            List.of("wrong", "code"), List.of("ab-", "sent"), List.of("not", "det."), List.of("re-", "fused"),
            List.of("false", "alarm"));
    private static final String TOTAL = "all";

    private final Scorecard card;
    private final List<String> lines = new ArrayList<>();

    ScoreTable(Scorecard card) {
        this.card = card;
    }

    String text() {
        if (!card.rows().isEmpty()) {
            table();
            shares();
        }
        listed("Wrong", card.wrong());
        listed("Left open", card.rows().stream().filter(row -> row.outcome() != RIGHT && !row.isWrong()).toList());
        listed("Not scored", card.notScored(), one -> List.of());
        return lines.isEmpty() ? "nothing was scored" : String.join("\n", lines);
    }

    private void table() {
        List<String> labels = card.labels();
        int width = labels.stream().mapToInt(String::length).max().orElseThrow();
        for (int i = 0; i < 2; i++) {
            int line = i;
            line(width, i == 0 ? "" : "label", i == 0 ? "" : "n",
                    HEADINGS.stream().map(heading -> heading.get(line)).toList());
        }
        labels.forEach(label -> row(width, label, card.ofLabel(label)));
        row(width, TOTAL, card);
    }

    private void row(int width, String label, Scorecard part) {
        line(width, label, String.valueOf(part.rows().size()), Arrays.stream(LabelOutcome.values())
                .map(outcome -> String.valueOf(part.count(outcome))).toList());
    }

    private void line(int width, String label, String count, List<String> cells) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-" + Math.max(1, width) + "s %5s", label, count));
        cells.forEach(cell -> line.append(String.format(Locale.ROOT, " %5s", cell)));
        lines.add(line.toString().stripTrailing());
    }

    /** Shares with their bounds: what is right in all, what is wrong in all. */
    private void shares() {
        Scorecard defects = card.defects();
        Scorecard healthy = card.healthy();
        lines.add("");
        if (!defects.rows().isEmpty()) {
            List.of(RIGHT, FOUND_NOT_NAMED, WRONG_CODE, ABSENT, NOT_DETERMINED, REFUSED)
                    .forEach(outcome -> share("faults", outcome, defects));
            long extras = defects.rows().stream().filter(row -> !row.extra().isEmpty()).count();
            lines.add("faults, right with an extra: " + extras + " of " + defects.count(RIGHT));
        }
        if (!healthy.rows().isEmpty()) {
            List.of(RIGHT, FALSE_ALARM, NOT_DETERMINED, REFUSED).forEach(outcome -> share("healthy", outcome, healthy));
        }
        lines.add("95 % bounds of Clopper and Pearson, for independent recordings; of those not refused");
    }

    private void share(String what, LabelOutcome outcome, Scorecard part) {
        lines.add(what + ", " + outcome + ": " + part.share(outcome));
    }

    private void listed(String heading, List<ScoredLabel> rows) {
        listed(heading, rows, ScoredLabel::evidence);
    }

    private <T> void listed(String heading, List<T> items, Function<T, List<String>> evidence) {
        if (items.isEmpty()) {
            return;
        }
        lines.add("");
        lines.add(heading);
        for (T item : items) {
            lines.add("  " + item);
            lines.addAll(evidence.apply(item).stream().map(text -> "    - " + text).toList());
        }
    }
}
