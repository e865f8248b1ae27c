package dev.vibra.symptom;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What each place says to one question: it shows the symptom, it lacks it, or it can't tell. */
final class Tally {
    private static final int MOST_TOLD = 4;

    /** How close a place comes to a yes, for those that say no. */
    private record Said(List<String> points, double closeness, String words) {}

    private final List<Said> shown = new ArrayList<>();
    private final List<Said> lacking = new ArrayList<>();
    private final Map<String, List<String>> obstacles = new LinkedHashMap<>();

    void says(boolean seen, List<String> points, double closeness, String words) {
        (seen ? shown : lacking).add(new Said(points, closeness, words));
    }

    /** The place can't tell; the reason is told once, with all places that it holds for. */
    void cannot(String place, String why) {
        obstacles.computeIfAbsent(why, key -> new ArrayList<>()).add(place);
    }

    /**
     * Holds a line against what it has to reach, where either may be known by an upper limit only: noise that could
     * hide a line as large, or another line that isn't parted from it.
     */
    void weigh(List<String> points, LineSize line, double needed, String doubtOfNeeded, String words) {
        boolean reaches = line.size() >= needed;
        double closeness = line.size() / Math.max(needed, Double.MIN_NORMAL);
        if (reaches && line.isKnown()) {
            says(true, points, closeness, words);
        } else if (!reaches && doubtOfNeeded.isEmpty()) {
            says(false, points, closeness, line.isKnown() ? words : words + " (" + line.doubt() + ")");
        } else {
            cannot(points.get(0), line.isKnown() ? doubtOfNeeded : line.doubt());
        }
    }

    /** Counts lines that reach something for sure, and those that may. */
    void count(String point, int sure, int possible, int needed, String words, String doubt) {
        if (sure >= needed || possible < needed) {
            says(sure >= needed, List.of(point), sure, words);
        } else {
            cannot(point, doubt);
        }
    }

    /** Yes where one place shows it. */
    Answer any(String nothing) {
        return answer(nothing, !shown.isEmpty());
    }

    /** Yes where half of the places that can tell show it: each place has its own supports, which turn phases. */
    Answer half(String nothing) {
        return answer(nothing, !shown.isEmpty() && shown.size() >= lacking.size());
    }

    private Answer answer(String nothing, boolean seen) {
        if (seen) {
            return Answer.seen(shown.stream().flatMap(one -> one.points.stream()).distinct().toList(), words(shown));
        }
        if (shown.isEmpty() && lacking.isEmpty()) {
            return Answer.notMeasured(obstacles.isEmpty() ? nothing : obstacles.entrySet().stream()
                    .map(entry -> entry.getKey() + " (" + String.join(", ", entry.getValue()) + ")")
                    .collect(Collectors.joining("; ")));
        }
        Said closest = lacking.stream().max(Comparator.comparingDouble(Said::closeness)).orElseThrow();
        return Answer.notSeen(lacking.size() == 1 && shown.isEmpty() ? closest.words
                : words(Stream.concat(shown.stream(), Stream.of(closest)).toList()) + "; the others less");
    }

    private static String words(List<Said> said) {
        String told = said.stream().sorted(Comparator.comparingDouble(Said::closeness).reversed()).limit(MOST_TOLD)
                .map(Said::words).collect(Collectors.joining("; "));
        return told + (said.size() > MOST_TOLD ? "; " + (said.size() - MOST_TOLD) + " more" : "");
    }
}
