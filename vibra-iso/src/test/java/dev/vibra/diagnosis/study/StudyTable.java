package dev.vibra.diagnosis.study;

import dev.vibra.evidence.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Tables of the study in Markdown. */
final class StudyTable {
    private static final double[] DECIBELS = {Double.NEGATIVE_INFINITY, 10, 20, 30, Double.POSITIVE_INFINITY};
    private static final double[] LEVELS = {0, 0.2, 0.7, 1.4, 2.5, Double.POSITIVE_INFINITY};
    private static final double[] CONFIDENCES = {0, 0.2, 0.4, 0.6, 0.8, 0.9, 1};

    private final List<StudyCase> cases;
    private final List<StudyCase> single;
    private final List<StudyCase> healthy;

    StudyTable(List<StudyCase> cases) {
        this.cases = cases;
        single = cases.stream().filter(StudyCase::single).toList();
        healthy = cases.stream().filter(StudyCase::healthy).toList();
    }

    String markdown() {
        long first = cases.stream().mapToLong(StudyCase::seed).min().orElse(0);
        long last = cases.stream().mapToLong(StudyCase::seed).max().orElse(0);
        int two = cases.size() - single.size() - healthy.size();
        return String.format(Locale.ROOT, "%d simulated machines, seeds %d to %d: %d sound, %d with one fault, %d with two."
                + "%n%n", cases.size(), first, last, healthy.size(), single.size(), two)
                + aims() + byDecibels() + byLevel() + byFault() + confused() + twoFaults() + sound()
                + confidence("confidence of a finding", findings()) + "\n"
                + confidence("confidence of a finding with its look-alikes", groups());
    }

    // ---- one fault

    private String aims() {
        List<StudyCase> visible = single.stream().filter(one -> one.decibels() >= 10).toList();
        List<StudyCase> strong = visible.stream().filter(one -> !one.begins()).toList();
        List<StudyCase> beginning = visible.stream().filter(StudyCase::begins).toList();
        return "| question | answer (95 % bounds) | of | aim |\n|---|---|---|---|\n"
                + row("one fault, 10 dB and more: it lies in the leading group", share(strong, StudyCase::inGroup), "95 %")
                + row("one fault, 10 dB and more: it leads once what would decide was measured",
                        share(strong, StudyCase::rightAfter), "90 %")
                + row("one that begins, 10 dB and more: it lies in the leading group", share(beginning, StudyCase::inGroup),
                        "none")
                + row("sound: a finding", share(healthy, one -> !one.said().isEmpty()), "1 % at most")
                + String.format(Locale.ROOT, "| confidence: mean gap to the share that is right, weighted | %.3f | %d"
                        + " findings | 0.05 at most |\n", gap(findings()), findings().size())
                + String.format(Locale.ROOT, "| the same of a finding with its look-alikes | %.3f | %d findings | 0.05 at most"
                        + " |\n\n", gap(groups()), groups().size());
    }

    private static String row(String question, Share share, String aim) {
        return "| " + question + " | " + percent(share) + " | " + share.of() + " | " + aim + " |\n";
    }

    private static String head(String first) {
        return "| " + first + " | machines | in the leading group | faults in the group | leads | leads after deciding"
                + " | nothing said |\n|---|---|---|---|---|---|---|\n";
    }

    private static String cells(String label, List<StudyCase> of) {
        List<StudyCase.Said> groups = of.stream().flatMap(one -> StudyCase.leading(one.said()).stream()).toList();
        OptionalDouble size = groups.stream().mapToInt(StudyCase.Said::size).average();
        return "| " + label + " | " + of.size() + " | " + percent(share(of, StudyCase::inGroup)) + " | "
                + (size.isEmpty() ? "-" : String.format(Locale.ROOT, "%.1f", size.getAsDouble())) + " | "
                + percent(share(of, StudyCase::firstRight)) + " | " + percent(share(of, StudyCase::rightAfter)) + " | "
                + percent(share(of, one -> StudyCase.leading(one.said()).isEmpty())) + " |\n";
    }

    private String byDecibels() {
        StringBuilder text = new StringBuilder(head("one fault, strongest line over the noise"));
        for (int i = 0; i + 1 < DECIBELS.length; i++) {
            double from = DECIBELS[i];
            double to = DECIBELS[i + 1];
            String label = i == 0 ? "below 10 dB" : i + 2 == DECIBELS.length ? "30 dB and more"
                    : String.format(Locale.ROOT, "%.0f to %.0f dB", from, to);
            text.append(cells(label, single.stream().filter(one -> one.decibels() >= from && one.decibels() < to).toList()));
        }
        return text.append('\n').toString();
    }

    private String byLevel() {
        StringBuilder text = new StringBuilder(head("one fault, the same line over the boundary B/C"));
        for (int i = 0; i + 1 < LEVELS.length; i++) {
            double from = LEVELS[i];
            double to = LEVELS[i + 1];
            String label = i + 2 == LEVELS.length ? String.format(Locale.ROOT, "%.1f and more", from)
                    : String.format(Locale.ROOT, "%.1f to %.1f", from, to);
            text.append(cells(label, single.stream().filter(one -> one.level() >= from && one.level() < to).toList()));
        }
        return text.append('\n').toString();
    }

    private String byFault() {
        StringBuilder text = new StringBuilder(head("one fault"));
        StudyCase.codesOf(single).forEach(id -> text.append(cells("`" + id + "`",
                single.stream().filter(one -> one.faults().contains(id)).toList())));
        return text.append('\n').toString();
    }

    private String confused() {
        StringBuilder text = new StringBuilder("| one fault, 10 dB and more | what leads (machines) |\n|---|---|\n");
        single.stream().map(StudyCase::code).distinct().sorted().forEach(code -> {
            List<StudyCase> of = single.stream().filter(one -> one.code().equals(code) && one.decibels() >= 10).toList();
            text.append("| `").append(code).append("` | ").append(most(of.stream().map(one -> StudyCase.leading(one.said())
                    .map(StudyCase.Said::code).orElse("nothing")).toList(), 5)).append(" |\n");
        });
        return text.append('\n').toString();
    }

    /** The most frequent of some words with their counts. */
    static String most(List<String> words, int number) {
        Map<String, Integer> counts = new TreeMap<>();
        words.forEach(word -> counts.merge(word, 1, Integer::sum));
        return counts.entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()).limit(number)
                .map(one -> one.getKey() + " " + one.getValue()).collect(Collectors.joining(", "));
    }

    // ---- two faults, none

    private String twoFaults() {
        List<StudyCase> two = cases.stream().filter(one -> one.faults().size() == 2).toList();
        StringBuilder text = new StringBuilder("| two faults | machines | both named | one named | none named |\n"
                + "|---|---|---|---|---|\n");
        for (boolean strong : new boolean[] {false, true}) {
            List<StudyCase> of = two.stream().filter(one -> !strong || one.decibels() >= 10).toList();
            text.append("| ").append(strong ? "10 dB and more" : "all").append(" | ").append(of.size());
            for (int found = 2; found >= 0; found--) {
                int number = found;
                text.append(" | ").append(percent(share(of, one -> one.found() == number)));
            }
            text.append(" |\n");
        }
        return text.append('\n').toString();
    }

    private String sound() {
        StringBuilder text = new StringBuilder("| sound | machines | with a finding (95 % bounds) | which |\n|---|---|---|---|\n");
        for (String zone : List.of("A", "B", "C", "D")) {
            text.append(sound("zone " + zone, healthy.stream().filter(one -> one.zone().equals(zone)).toList()));
        }
        return text.append(sound("all", healthy)).append('\n').toString();
    }

    private static String sound(String label, List<StudyCase> of) {
        List<String> codes = of.stream().flatMap(one -> one.said().stream()).map(StudyCase.Said::code).toList();
        return "| " + label + " | " + of.size() + " | " + percent(share(of, one -> !one.said().isEmpty())) + " | "
                + most(codes, 5) + " |\n";
    }

    // ---- confidence

    private record Claim(double confidence, boolean right) {}

    /** Findings of the table on all machines; one is right if its first code is that of a fault of the machine. */
    private List<Claim> findings() {
        List<Claim> claims = new ArrayList<>();
        for (StudyCase one : cases) {
            one.said().stream().filter(StudyCase.Said::isFault).forEach(said -> claims.add(new Claim(said.confidence(),
                    one.faults().stream().anyMatch(id -> StudyCase.code(id).equals(said.code())))));
        }
        claims.sort(Comparator.comparingDouble(Claim::confidence));
        return claims;
    }

    /** The same of whole groups: one is right if any of its codes is. */
    private List<Claim> groups() {
        List<Claim> claims = new ArrayList<>();
        for (StudyCase one : cases) {
            one.said().stream().filter(StudyCase.Said::isFault).forEach(said -> claims.add(new Claim(said.together(),
                    one.faults().stream().anyMatch(id -> said.names(StudyCase.code(id))))));
        }
        claims.sort(Comparator.comparingDouble(Claim::confidence));
        return claims;
    }

    private static List<Claim> within(List<Claim> claims, int bin) {
        boolean last = bin + 2 == CONFIDENCES.length;
        return claims.stream().filter(one -> one.confidence() >= CONFIDENCES[bin]
                && (one.confidence() < CONFIDENCES[bin + 1] || last)).toList();
    }

    private static double mean(List<Claim> of) {
        return of.stream().mapToDouble(Claim::confidence).average().orElse(0);
    }

    private static Share right(List<Claim> of) {
        return new Share((int) of.stream().filter(Claim::right).count(), of.size());
    }

    /** Mean distance between confidence and share right over the bins, weighted by their findings. */
    private static double gap(List<Claim> all) {
        double sum = 0;
        for (int bin = 0; bin + 1 < CONFIDENCES.length; bin++) {
            List<Claim> of = within(all, bin);
            sum += of.isEmpty() ? 0 : of.size() * Math.abs(mean(of) - right(of).value().orElseThrow()) / all.size();
        }
        return sum;
    }

    private static String confidence(String what, List<Claim> all) {
        StringBuilder text = new StringBuilder("| " + what + " | findings | mean | right (95 % bounds) |\n"
                + "|---|---|---|---|\n");
        for (int bin = 0; bin + 1 < CONFIDENCES.length; bin++) {
            List<Claim> of = within(all, bin);
            text.append(String.format(Locale.ROOT, "| %.1f to %.1f | %d | %s | %s |%n", CONFIDENCES[bin],
                    CONFIDENCES[bin + 1], of.size(), of.isEmpty() ? "-" : String.format(Locale.ROOT, "%.2f", mean(of)),
                    percent(right(of))));
        }
        return text.toString();
    }

    static Share share(List<StudyCase> of, Predicate<StudyCase> which) {
        return new Share((int) of.stream().filter(which).count(), of.size());
    }

    /** Share in per cent with its bounds, as in {@code 43.0 (38.2-48.1) %}; a dash without any case. */
    static String percent(Share share) {
        return share.of() == 0 ? "-" : String.format(Locale.ROOT, "%.1f (%.1f-%.1f) %%", 100 * share.value().orElseThrow(),
                100 * share.lower(), 100 * share.upper());
    }
}
