package dev.vibra.survey;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Choice;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Machine;
import dev.vibra.severity.Measurement;
import dev.vibra.severity.Severity;
import dev.vibra.severity.Verdict;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.uncertainty.LevelUncertainty;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The severity criterion of the machine under survey and its use on one point. */
final class SeverityCheck {
    /** Facts that the choice rests on: if one of them was given wrong, choosing without it would be a guess. */
    private static final List<String> FACTS = List.of("kind", "ratedPowerKilowatts", "shaftHeightMillimetres",
            "support",
            "speedRevolutionsPerMinute", "criterion");

    private final Severity severity;
    private final String doubt;

    private SeverityCheck(Severity severity, String doubt) {
        this.severity = severity;
        this.doubt = doubt;
    }

    static SeverityCheck of(MachineDescription description) {
        Machine machine = machine(description);
        Severity severity = description.criterion().map(request -> Severity.of(machine, request))
                .orElseGet(() -> Severity.of(machine));
        List<String> wrong = FACTS.stream().filter(description.faultyFields()::contains).toList();
        return new SeverityCheck(severity, wrong.isEmpty() ? ""
                : "the criterion depends on " + String.join(", ", wrong)
                        + ", which the description gives with an error");
    }

    private static Machine machine(MachineDescription description) {
        Machine machine = Machine.unknown();
        machine = description.kind().map(machine::withKind).orElse(machine);
        machine = description.ratedPowerKilowatts().map(machine::withRatedPowerKilowatts).orElse(machine);
        machine = description.shaftHeightMillimetres().map(machine::withShaftHeightMillimetres).orElse(machine);
        machine = description.support().map(machine::withSupport).orElse(machine);
        return description.speed().map(machine::withSpeed).orElse(machine);
    }

    Choice choice() {
        return severity.choice();
    }

    /** Says why no point of the machine can be judged; empty if nothing speaks against it. */
    Optional<String> obstacle() {
        if (!doubt.isEmpty()) {
            return Optional.of(doubt);
        }
        return choice().hasCriterion() ? Optional.empty() : Optional.of(choice().reason());
    }

    /** Bands in which a quantity is judged, those of the usual one included. */
    List<Band> bands(Quantity quantity) {
        List<Band> bands = new ArrayList<>();
        if (quantity == Quantity.VELOCITY) {
            bands.add(Levels.USUAL_BAND);
        }
        severity.criteria().stream().filter(criterion -> criterion.quantity() == quantity).map(Criterion::band)
                .filter(band -> !bands.contains(band)).forEach(bands::add);
        return bands;
    }

    /** Judges the levels of a point: of each quantity the one in the band that its criterion asks for. */
    Optional<Verdict> judge(MeasuringPoint point, List<Level> levels) {
        Map<Quantity, Measurement> measurements = new LinkedHashMap<>();
        for (Criterion criterion : severity.criteria()) {
            levels.stream().filter(level -> level.quantity() == criterion.quantity()
                            && level.detector() == criterion.detector()
                            && level.band().filter(criterion.band()::equals).isPresent())
                    .findFirst().ifPresent(level -> measurements.put(level.quantity(), measurement(point, level)));
        }
        return measurements.isEmpty() ? Optional.empty()
                : Optional.of(severity.judge(measurements.values().toArray(Measurement[]::new)));
    }

    private static Measurement measurement(MeasuringPoint point, Level level) {
        Measurement measurement = Measurement.of(level);
        return point.expandedUncertaintyPercent()
                .map(percent -> LevelUncertainty.withDefaults().withSensor(percent).of(level))
                .map(measurement::withUncertainty)
                .orElse(measurement);
    }
}
