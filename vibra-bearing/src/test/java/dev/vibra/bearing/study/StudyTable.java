package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.study.StudyCase.Outcome;
import dev.vibra.evidence.Share;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Tables of the study in Markdown. */
final class StudyTable {
    /** Above this signal to noise, a defect should not be missed for sure. */
    static final double LOUD = -14;

    private static final double LOWEST = -30;
    private static final double STEP = 4;
    private static final int BINS = 10;
    private static final double[] LENGTHS = {20, 50, 100, 200, 400};

    private final List<StudyCase> defective;
    private final List<StudyCase> healthy;
    private final List<Detector> detectors;

    StudyTable(List<StudyCase> cases) {
        defective = cases.stream().filter(c -> !c.healthy()).toList();
        healthy = cases.stream().filter(StudyCase::healthy).toList();
        detectors = Detector.all(healthy);
    }

    String markdown() {
        return defective.size() + healthy.size() + " simulated bearings, " + healthy.size() + " of them healthy.\n\n"
                + summary() + bySignal() + byKind() + byDisturbance();
    }

    private String summary() {
        List<StudyCase> loud = loud(c -> true);
        double threshold = detectors.get(0).threshold(true, healthy);
        return "| question | count (95 % bounds) | of |\n|---|---|---|\n"
                + row("defective: wrong element `present`", share(defective, c -> c.outcome() == Outcome.WRONG))
                + row("healthy: any element `present`", share(healthy, c -> c.outcome() == Outcome.WRONG))
                + row("healthy: a family reported at an element's rate", share(healthy, StudyCase::reported))
                + row("defective above -14 dB: `absent`", share(loud, c -> c.outcome() == Outcome.ABSENT))
                + row("plain envelope, right band, as many false alarms as `present`: another element highest",
                        share(defective, c -> c.plainWrong(true, threshold))) + "\n";
    }

    static Share share(List<StudyCase> cases, Predicate<StudyCase> which) {
        return new Share((int) cases.stream().filter(which).count(), cases.size());
    }

    /** Count and bounds in per cent, as in {@code 3 (0.06-0.9 %)}; a dash without any case. */
    private static String text(Share share) {
        return share.of() == 0 ? "-" : String.format(Locale.ROOT, "%d (%.2g-%.2g %%)", share.count(),
                100 * share.lower(), 100 * share.upper());
    }

    private static String row(String question, Share share) {
        return "| " + question + " | " + text(share) + " | " + share.of() + " |\n";
    }

    private String bySignal() {
        StringBuilder text = new StringBuilder(head("signal to noise, dB"));
        for (int bin = 0; bin < BINS; bin++) {
            double from = LOWEST + bin * STEP;
            text.append(cells(String.format(Locale.ROOT, "%.0f to %.0f", from, from + STEP), bin(bin)));
        }
        return text.append(crossings(0.5)).append(crossings(0.8)).append('\n').toString();
    }

    private String head(String first) {
        String names = detectors.stream().map(d -> d.name() + ", %").collect(Collectors.joining(" | "));
        return "| " + first + " | bearings | wrong | not determined | absent | " + names + " |\n"
                + "|---".repeat(5 + detectors.size()) + "|\n";
    }

    private List<StudyCase> bin(int bin) {
        double from = LOWEST + bin * STEP;
        return defective.stream().filter(c -> c.decibels() >= from && c.decibels() < from + STEP).toList();
    }

    private List<StudyCase> loud(Predicate<StudyCase> which) {
        return defective.stream().filter(c -> c.decibels() > LOUD).filter(which).toList();
    }

    private String cells(String label, List<StudyCase> cases) {
        StringBuilder text = new StringBuilder("| " + label + " | " + cases.size() + " ");
        for (Outcome outcome : List.of(Outcome.WRONG, Outcome.NOT_DETERMINED, Outcome.ABSENT)) {
            text.append("| ").append(share(cases, c -> c.outcome() == outcome).count()).append(' ');
        }
        detectors.forEach(d -> text.append("| ").append(d.percent(cases)).append(' '));
        return text.append("|\n").toString();
    }

    private String crossings(double share) {
        return String.format(Locale.ROOT, "| %.0f %% from, dB | | | | | ", 100 * share)
                + detectors.stream().map(d -> crossing(d, share)).collect(Collectors.joining(" | ")) + " |\n";
    }

    /** Signal from which on a share is detected: between the last bin below it and the next. */
    private String crossing(Detector detector, double share) {
        double before = 0;
        String crossing = "-";
        for (int bin = 0; bin < BINS; bin++) {
            List<StudyCase> cases = bin(bin);
            double value = cases.isEmpty() ? before : share(cases, detector.detects()).value().orElseThrow();
            if (value < share) {
                crossing = "-";
            } else if (before < share) {
                double centre = LOWEST + (bin + 0.5) * STEP;
                crossing = String.format(Locale.ROOT, "%.1f", centre - STEP * (value - share) / (value - before));
            }
            before = value;
        }
        return crossing;
    }

    /** By length, element and company, of defects that stand above -14 dB. */
    private String byKind() {
        StringBuilder text = new StringBuilder(head("above -14 dB"));
        for (int i = 0; i + 1 < LENGTHS.length; i++) {
            double from = LENGTHS[i];
            double to = LENGTHS[i + 1];
            text.append(cells(String.format(Locale.ROOT, "%.0f to %.0f revolutions", from, to),
                    loud(c -> c.revolutions() > from && c.revolutions() <= to)));
        }
        for (BearingElement element : StudyCase.STRUCK) {
            text.append(cells(element.toString(), loud(c -> c.defect().filter(d -> d == element).isPresent())));
        }
        for (Disturbance kind : SimulatedBearing.BESIDE_DEFECTS) {
            text.append(cells("beside " + kind, loud(c -> c.disturbance() == kind)));
        }
        return text.append('\n').toString();
    }

    private String byDisturbance() {
        StringBuilder text = new StringBuilder("| healthy beside | bearings | `present` | reported | not determined "
                + "| all absent |\n|---|---|---|---|---|---|\n");
        for (Disturbance kind : Disturbance.values()) {
            List<StudyCase> cases = healthy.stream().filter(c -> c.disturbance() == kind).toList();
            text.append("| ").append(kind).append(" | ").append(cases.size())
                    .append(" | ").append(text(share(cases, c -> c.outcome() == Outcome.WRONG)))
                    .append(" | ").append(share(cases, StudyCase::reported).count())
                    .append(" | ").append(share(cases, c -> c.outcome() == Outcome.NOT_DETERMINED).count())
                    .append(" | ").append(share(cases, c -> c.outcome() == Outcome.ABSENT).count()).append(" |\n");
        }
        return text.toString();
    }
}
