package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.point.PointChange;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.MachineSurvey;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A point against its reference recording, as it is told.
 *
 * @param change the comparison
 */
record Reference(PointChange change) {
    private static final int MOST_TOLD = 4;

    /** Empty where the point has no reference. */
    static Optional<Reference> of(MachineSurvey survey, PointSurvey point) {
        return survey.changes().stream().filter(one -> one.point().equals(point.point().id())).findFirst()
                .map(Reference::new);
    }

    /** What changed much, the largest lines first, without full stop. */
    String words() {
        if (!change.obstacle().isEmpty()) {
            return "not compared: " + change.obstacle();
        }
        List<String> large = Stream.concat(change.largeLines().stream(), change.largeNoise().stream())
                .map(Object::toString).toList();
        return large.isEmpty() ? "none of the lines (" + change.lines().size() + ") and octaves of noise ("
                + change.noise().size() + ") has doubled or halved"
                : String.join("; ", large.subList(0, Math.min(MOST_TOLD, large.size())))
                + (large.size() > MOST_TOLD ? "; " + (large.size() - MOST_TOLD) + " more" : "");
    }

    Map<String, Object> json() {
        return object("obstacle", Optional.of(change.obstacle()).filter(one -> !one.isEmpty()),
                "lines", change.lines().stream().map(Reference::line).toList(),
                "noise", change.noise().stream().map(Reference::octave).toList());
    }

    private static Map<String, Object> line(PointChange.LineChange one) {
        boolean known = one.now().stands() && one.then().stands();
        return object("name", one.now().name(), "frequencyHertz", one.now().hertz(),
                "level", one.now().level().in(Unit.MM_PER_S), "stands", one.now().stands(),
                "reference", one.then().level().in(Unit.MM_PER_S), "stood", one.then().stands(),
                "unit", Unit.MM_PER_S.plainSymbol(), "ratio", one.ratio(),
                "expandedUncertaintyPercent", Optional.of(100 * one.relativeExpanded()).filter(error -> known),
                "large", one.isLarge());
    }

    private static Map<String, Object> octave(PointChange.NoiseChange one) {
        return object("lowestHertz", one.band().lowestHertz(), "highestHertz", one.band().highestHertz(),
                "level", one.now(), "reference", one.then(), "unit", Unit.M_PER_S2.plainSymbol(),
                "ratio", one.ratio(), "expandedUncertaintyPercent", 100 * one.relativeExpanded(),
                "large", one.isLarge());
    }
}
