package dev.vibra.bearing.study;

import dev.vibra.bearing.study.StudyCase.Outcome;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Predicate;

/**
 * A way to detect a defect.
 *
 * @param name heading of its column
 * @param detects whether it detects the defect of a case; of a healthy one: whether it gives a false alarm
 */
record Detector(String name, Predicate<StudyCase> detects) {
    /** The diagnosis in both meanings, each beside plain envelopes that give as many false alarms. */
    static List<Detector> all(List<StudyCase> healthy) {
        Detector present = new Detector("`present`",
                c -> c.outcome() == Outcome.PRESENT || c.healthy() && c.outcome() == Outcome.WRONG);
        Detector reported = new Detector("reported", StudyCase::reported);
        List<StudyCase> quiet = healthy.stream().filter(c -> c.disturbance() == Disturbance.NONE).toList();
        return List.of(present, present.plain("right band", true, healthy), present.plain("full band", false, healthy),
                reported, reported.plain("right band", true, healthy), reported.plain("full band", false, healthy),
                reported.plain("right band, quiet", true, quiet));
    }

    /** A plain envelope whose threshold as many healthy bearings pass as this one gives false alarms at. */
    private Detector plain(String heading, boolean rightBand, List<StudyCase> healthy) {
        double threshold = threshold(rightBand, healthy);
        return new Detector(heading, c -> c.plain(rightBand) > threshold);
    }

    double threshold(boolean rightBand, List<StudyCase> healthy) {
        List<Double> falling = healthy.stream().map(c -> c.plain(rightBand)).sorted(Comparator.reverseOrder()).toList();
        int alarms = (int) healthy.stream().filter(detects).count();
        return falling.isEmpty() ? Double.POSITIVE_INFINITY : alarms < falling.size() ? falling.get(alarms) : 0;
    }

    /** Share of some cases in per cent, as in {@code 43}; a dash if there are none. */
    String percent(List<StudyCase> cases) {
        OptionalDouble share = StudyTable.share(cases, detects).value();
        return share.isEmpty() ? "-" : String.format(Locale.ROOT, "%.0f", 100 * share.getAsDouble());
    }
}
