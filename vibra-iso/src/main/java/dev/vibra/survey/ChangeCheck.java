package dev.vibra.survey;

import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.Baseline;
import dev.vibra.alarm.Change;
import dev.vibra.quantity.Level;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Compares the judged levels of a point with its baseline.
 *
 * @see "ISO 20816-1:2016, criterion II (change of magnitude)"
 */
final class ChangeCheck {
    private static final String STATE = "baseline of the machine description";

    private final Map<String, Double> baseline;
    private final PointSurvey.Collector results;
    private final Set<String> left;

    ChangeCheck(Map<String, Double> baseline, PointSurvey.Collector results) {
        this.baseline = baseline;
        this.results = results;
        this.left = new LinkedHashSet<>(baseline.keySet());
    }

    void compare(Verdict verdict) {
        for (Judgement judgement : verdict.judgements()) {
            Criterion criterion = judgement.criterion();
            String name = DescriptorNames.rms(criterion.quantity(), criterion.band());
            if (baseline.containsKey(name) && judgement.level().detector() == criterion.detector()) {
                compare(name, judgement);
            }
        }
        omitAll("no criterion in force says which change of it matters");
    }

    private void compare(String name, Judgement judgement) {
        Criterion criterion = judgement.criterion();
        Level reference = Level.of(baseline.get(name), criterion.quantity().customaryUnit(), criterion.detector())
                .within(criterion.band());
        left.remove(name);
        try {
            results.change(new ChangeSurvey(name, judgement.value(), reference.in(criterion.unit()),
                    Change.of(criterion, reference, judgement.level()),
                    AlarmSetting.of(criterion, Baseline.of(STATE, List.of(reference)))));
        } catch (IllegalArgumentException e) {
            omit(name, e.getMessage());
        }
    }

    void omitAll(String reason) {
        left.stream().sorted().forEach(name -> omit(name, reason));
        left.clear();
    }

    private void omit(String name, String reason) {
        results.omit("change of " + name, reason);
    }
}
