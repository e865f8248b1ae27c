package dev.vibra.docs.survey.input;

import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.survey.DescriptorNames;
import dev.vibra.survey.machine.Arrangement;
import dev.vibra.survey.machine.GearData;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.MeasuringPoint;
import dev.vibra.survey.machine.RotorData;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Turns the top object of a machine description into a machine. */
final class MachineReader {
    static final String GRADE_RULE = "G followed by a number above 0, as in \"G6.3\"";

    private final FieldReader fields;

    private MachineReader(FieldReader fields) {
        this.fields = fields;
    }

    static Optional<MachineDescription> read(FieldReader fields) {
        Optional<String> name = fields.required("name", "what the machine is called");
        MachineDescription.Builder machine = MachineDescription.named(name.orElse("unnamed"));
        BearingReader bearings = new BearingReader();
        fields.objects("bearings", bearings::read).forEach(machine::bearing);
        MachineReader reader = new MachineReader(fields);
        reader.readPlate(machine);
        PointReader pointReader = new PointReader(bearings.ids());
        List<MeasuringPoint> points = reader.readPoints(pointReader);
        reader.readParts(machine, pointReader.ids());
        points.forEach(machine::point);
        fields.finish().faults().forEach(machine::faulty);
        return name.isPresent() && !points.isEmpty() ? Optional.of(machine.build()) : Optional.empty();
    }

    private void readPlate(MachineDescription.Builder machine) {
        fields.choice("kind", List.of(MachineKind.values())).ifPresent(machine::kind);
        fields.number("ratedPowerKilowatts", Range.above(0, "kW")).ifPresent(machine::ratedPowerKilowatts);
        fields.number("shaftHeightMillimetres", Range.above(0, "mm")).ifPresent(machine::shaftHeightMillimetres);
        fields.choice("support", List.of(Support.values())).ifPresent(machine::support);
        fields.number("speedRevolutionsPerMinute", Range.above(0, "r/min"))
                .map(RotationSpeed::ofRevolutionsPerMinute).ifPresent(machine::speed);
        fields.number("lineFrequencyHertz", Range.above(0, "Hz")).ifPresent(machine::lineFrequencyHertz);
        fields.count("blades", 1).ifPresent(machine::blades);
        part("criterion", MachineReader::criterion).ifPresent(machine::criterion);
        part("rotor", MachineReader::rotor).ifPresent(machine::rotor);
    }

    private void readParts(MachineDescription.Builder machine, Set<String> pointIds) {
        fields.objects("gears", MachineReader::gear).forEach(machine::gear);
        part("balancing", BalancingReader::read).ifPresent(machine::balancing);
        fields.object("baseline").ifPresent(baseline ->
                readBaseline(baseline, pointIds).forEach(machine::baseline));
    }

    private List<MeasuringPoint> readPoints(PointReader reader) {
        if (!fields.has("points")) {
            fields.fault("points", "is required: a list of points, each with a recording and its unit");
        }
        int before = fields.problems().count();
        List<MeasuringPoint> points = fields.objects("points", reader::read);
        if (points.isEmpty() && fields.has("points") && fields.problems().count() == before) {
            fields.fault("points", "must hold one point or more: [ ]");
        }
        return points;
    }

    /** A part with any error is left out as a whole and counts as a faulty field. */
    private <T> Optional<T> part(String name, Function<FieldReader, T> reading) {
        Optional<FieldReader> object = fields.object(name);
        if (object.isEmpty()) {
            return Optional.empty();
        }
        T part = reading.apply(object.get());
        if (object.get().finish().faulty()) {
            fields.faults().add(name);
            return Optional.empty();
        }
        return Optional.of(part);
    }

    private static CriterionRequest criterion(FieldReader fields) {
        Optional<String> standard = fields.required("standard", "number of the standard, as in \"ISO 20816-3\"");
        CriterionRequest request = CriterionRequest.of(standard.orElse("unknown"));
        request = fields.text("edition").map(request::withEdition).orElse(request);
        request = fields.text("group").map(request::withGroup).orElse(request);
        return fields.text("duty").map(request::withDuty).orElse(request);
    }

    private static RotorData rotor(FieldReader fields) {
        Optional<String> grade = fields.text("balanceGrade");
        if (grade.isPresent() && !isGrade(grade.get())) {
            fields.fault("balanceGrade", "must be " + GRADE_RULE + ": \"" + grade.get() + "\"");
        }
        return new RotorData(fields.number("massKilograms", Range.above(0, "kg")).orElse(null), grade.orElse(null),
                fields.count("planes", 1).orElse(null),
                fields.choice("arrangement", List.of(Arrangement.values())).orElse(null));
    }

    private static boolean isGrade(String text) {
        return text.matches("G ?[0-9]{1,5}(\\.[0-9]{1,5})?") && Double.parseDouble(text.substring(1).trim()) > 0;
    }

    private static Optional<GearData> gear(FieldReader fields, int index) {
        String id = fields.text("id").orElse("gear " + (index + 1));
        List<Integer> teeth = fields.counts("teeth", 1);
        if (!fields.has("teeth")) {
            fields.fault("teeth", "is required: the teeth of each wheel in the order of the power flow");
        } else if (teeth.size() < 2 && !fields.faulty()) {
            fields.fault("teeth", "must hold two wheels or more: " + teeth);
        }
        double speed = fields.number("speedRevolutionsPerMinute", Range.above(0, "r/min")).orElse(Double.NaN) / 60;
        return fields.finish().faulty() ? Optional.empty() : Optional.of(new GearData(id, teeth, speed));
    }

    private Map<String, Map<String, Double>> readBaseline(FieldReader baseline, Set<String> pointIds) {
        Map<String, Map<String, Double>> byPoint = new LinkedHashMap<>();
        for (String point : new ArrayList<>(baseline.names())) {
            Optional<FieldReader> values = baseline.object(point);
            if (!pointIds.contains(point)) {
                baseline.fault(point, "must be the id of a point, one of " + FieldReader.joined(List.copyOf(pointIds)));
                continue;
            }
            Map<String, Double> read = new LinkedHashMap<>();
            values.ifPresent(reader -> readDescriptors(reader, read));
            if (values.isPresent() && values.get().finish().faulty()) {
                fields.faults().add("baseline");
            }
            byPoint.put(point, read);
        }
        if (baseline.finish().faulty()) {
            fields.faults().add("baseline");
        }
        return byPoint;
    }

    private static void readDescriptors(FieldReader reader, Map<String, Double> values) {
        for (String name : reader.names()) {
            reader.number(name, Range.finite("")).ifPresent(value -> values.put(name, value));
            if (!DescriptorNames.isKnown(name)) {
                reader.fault(name, "is not the name of a descriptor; the nearest known name is \""
                        + NearestName.of(name, DescriptorNames.usual()) + "\"");
            }
        }
    }
}
