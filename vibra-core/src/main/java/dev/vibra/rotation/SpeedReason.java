package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.util.List;
import java.util.stream.Collectors;

/** Says in words what the best candidate rests on and what speaks against it, or why there is none. */
final class SpeedReason {
    private static final double LARGE = 0.3;
    private static final double RIVAL = 0.05;

    private SpeedReason() {}

    static String of(LineSet lines, SpeedEvidence best, List<SpeedCandidate> candidates) {
        SpeedCandidate first = candidates.get(0);
        StringBuilder text = new StringBuilder(basis(best, first));
        int left = best.strongestLeft();
        double own = best.shaft().largest();
        if (left >= 0 && lines.size(left) > LARGE * own) {
            text.append("; the line at ").append(hertz(lines.hertz(left)));
            text.append(own > 0 ? ", " + Digits.significant(lines.size(left) / own, 2) + " times as large," : "");
            text.append(" is left unexplained");
        }
        if (candidates.size() > 1 && candidates.get(1).confidence() > RIVAL) {
            text.append("; ").append(hertz(candidates.get(1).speed().hertz())).append(" is possible, confidence ")
                    .append(Digits.significant(candidates.get(1).confidence(), 2));
        }
        if (first.confidence() < SpeedEstimate.LEAST_CONFIDENCE) {
            text.append("; confidence ").append(Digits.significant(first.confidence(), 2)).append(" is below ")
                    .append(SpeedEstimate.LEAST_CONFIDENCE);
        } else if (!SpeedEstimate.isPrecise(first)) {
            text.append("; its standard uncertainty of ").append(hertz(first.standardUncertaintyHertz()))
                    .append(" is too large");
        } else if (best.leavesMost()) {
            text.append("; so large a line must be explained first");
        } else if (best.clue(SpeedClue.LONE) > 0) {
            text.append("; that might be any line");
        }
        return text.toString();
    }

    private static String basis(SpeedEvidence best, SpeedCandidate first) {
        List<Integer> numbers = first.multiples();
        String speed = hertz(first.speed().hertz());
        boolean spaced = best.clue(SpeedClue.SPACINGS) > SpeedEvidence.TELLING_SPACINGS;
        if (numbers.isEmpty()) {
            return (spaced ? "lines " : "few lines ") + speed + " apart, none at it";
        }
        String multiples = numbers.equals(List.of(1)) ? "a line at " + speed + ", none at its multiples"
                : numbers.size() == 1 ? "a line at " + numbers.get(0) + " times " + speed
                        : "lines at " + listed(numbers) + " times " + speed;
        return multiples + (spaced ? ", others as far apart" : "");
    }

    private static String listed(List<Integer> numbers) {
        int last = numbers.size() - 1;
        return numbers.subList(0, last).stream().map(String::valueOf).collect(Collectors.joining(", ")) + " and "
                + numbers.get(last);
    }

    static String none(LineSet lines, SpeedKnowledge known) {
        if (known.possible().isEmpty()) {
            return "what is known contradicts itself (" + known + ")";
        }
        boolean hum = false;
        for (int i = 0; i < lines.count(); i++) {
            hum |= known.allows(lines.hertz(i));
        }
        return "no line " + (hum ? "but those of the mains " : "") + "stands out of the noise from "
                + known.possible().stream().map(SpeedReason::range).collect(Collectors.joining(", "));
    }

    private static String range(Band band) {
        return Digits.significant(band.lowestHertz(), 3) + " to " + hertz(band.highestHertz());
    }

    private static String hertz(double value) {
        return Digits.significant(value, 4) + " Hz";
    }
}
