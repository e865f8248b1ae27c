package dev.vibra.score;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.diagnosis.Finding;
import dev.vibra.point.Aspect;
import dev.vibra.point.Omission;
import dev.vibra.point.PointSurvey;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Holds what was said of one point against its label. */
final class PointScore {
    private final String machine;
    private final PointSurvey point;
    private final List<Finding> findings;
    private final Label label;

    /** The findings are those of the machine; those at other points don't count. */
    PointScore(String machine, PointSurvey point, List<Finding> findings, Label label) {
        this.machine = machine;
        this.point = point;
        this.findings = findings.stream().filter(one -> one.points().contains(point.point().id())).toList();
        this.label = Objects.requireNonNull(label, "label");
    }

    /** Returns one row for each fault of the label, or one for a healthy point. */
    List<ScoredLabel> rows() {
        return label.isHealthy() ? List.of(row(Label.HEALTHY, healthy(), List.of(), elements(Optional.empty())))
                : label.codes().stream().map(this::faulty).toList();
    }

    private LabelOutcome healthy() {
        List<ElementFinding> elements = elements(Optional.empty());
        if (!findings.isEmpty()) {
            return LabelOutcome.FALSE_ALARM;
        }
        return point.refused() ? LabelOutcome.REFUSED
                : areAbsent(elements) ? LabelOutcome.RIGHT : LabelOutcome.NOT_DETERMINED;
    }

    private ScoredLabel faulty(String code) {
        List<String> others = others();
        List<ElementFinding> elements = elements(Label.elementOf(code));
        if (findings.stream().anyMatch(one -> one.code().equals(code))) {
            return row(code, LabelOutcome.RIGHT, others, List.of());
        }
        if (!others.isEmpty()) {
            return row(code, LabelOutcome.WRONG_CODE, List.of(), elements);
        }
        boolean alike = findings.stream().anyMatch(one -> one.alikeTo().contains(code));
        LabelOutcome outcome = alike ? LabelOutcome.FOUND_NOT_NAMED
                : refuses(aspectOf(code)) ? LabelOutcome.REFUSED
                : areAbsent(elements) ? LabelOutcome.ABSENT : LabelOutcome.NOT_DETERMINED;
        return row(code, outcome, List.of(), elements);
    }

    /** Codes that no label has, of findings that can be told apart from every label. */
    private List<String> others() {
        return findings.stream().filter(one -> !label.codes().contains(one.code())
                && one.alikeTo().stream().noneMatch(label.codes()::contains)).map(Finding::code).distinct().toList();
    }

    private static boolean areAbsent(List<ElementFinding> elements) {
        return !elements.isEmpty() && elements.stream().allMatch(one -> one.verdict() == ElementVerdict.ABSENT);
    }

    private List<ElementFinding> elements(Optional<BearingElement> wanted) {
        boolean bearing = label.isHealthy() || wanted.isPresent();
        return point.bearings().stream().flatMap(one -> one.diagnosis().findings().stream())
                .filter(one -> bearing && (wanted.isEmpty() || wanted.get() == one.element())).toList();
    }

    private static Aspect aspectOf(String code) {
        return Label.elementOf(code).isPresent() ? Aspect.ENVELOPE
                : code.equals("impulsiveness") ? Aspect.STATISTICS : Aspect.MOTION;
    }

    private boolean refuses(Aspect aspect) {
        return point.refused() && point.recording().filter(known -> !known.refused().contains(aspect)).isEmpty();
    }

    private ScoredLabel row(String code, LabelOutcome outcome, List<String> extra, List<ElementFinding> elements) {
        List<String> evidence = new ArrayList<>();
        findings.forEach(one -> evidence.add(one + ": " + one.evidence().stream().map(Object::toString)
                .collect(Collectors.joining("; "))));
        elements.forEach(one -> evidence.add(one.element() + " " + one.verdict() + ": " + one.evidence()));
        if (evidence.isEmpty()) {
            evidence.addAll(silence(code));
        }
        return new ScoredLabel(machine, point.point().id(), code, outcome,
                findings.stream().map(Finding::code).distinct().toList(), extra, evidence);
    }

    /** Why nothing was said. */
    private List<String> silence(String code) {
        List<String> reasons = point.omissions().stream()
                .filter(one -> one.subject() == Omission.Subject.RECORDING
                        || one.subject() == Omission.Subject.BEARINGS)
                .map(Omission::toString).toList();
        boolean noBearing = point.point().bearing().isEmpty()
                && (label.isHealthy() || Label.elementOf(code).isPresent());
        return Stream.concat(reasons.stream(), noBearing ? Stream.of("the description has no bearing at this point")
                : reasons.isEmpty() ? Stream.of("no finding, and no verdict on it") : Stream.empty()).toList();
    }
}
