package dev.vibra.docs.survey.input;

import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MachineDescription.Fact;
import dev.vibra.machine.MachinePart;
import dev.vibra.machine.RotorData;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Turns the top object of a machine description into a machine. */
final class MachineReader {
    private static final Set<MachineKind> BLADED =
            Set.of(MachineKind.PUMP, MachineKind.FAN, MachineKind.BLOWER, MachineKind.COMPRESSOR);
    private static final int MOST_NATURAL = 100;
    /** The fact that a wrong field spoils; any other wrong field only counts as missing. */
    private static final Map<String, Fact> FACTS = Map.ofEntries(Map.entry("kind", Fact.MACHINE),
            Map.entry("ratedPowerKilowatts", Fact.MACHINE), Map.entry("shaftHeightMillimetres", Fact.MACHINE),
            Map.entry("support", Fact.MACHINE), Map.entry("parts", Fact.MACHINE),
            Map.entry("speedRevolutionsPerMinute", Fact.SPEED), Map.entry("shafts", Fact.SPEED),
            Map.entry("criterion", Fact.CRITERION), Map.entry("balancing", Fact.BALANCING),
            Map.entry("baseline", Fact.BASELINE), Map.entry("earlier", Fact.BASELINE));

    private final FieldReader fields;
    private final TrainReader train;
    private final Ids parts = new Ids("part");
    private final Ids bearings = new Ids("bearing");
    private final PointReader points;

    private MachineReader(FieldReader fields) {
        this.fields = fields;
        this.train = new TrainReader(fields);
        this.points = new PointReader(parts, train.shafts(), bearings);
    }

    static MachineReading read(FieldReader fields) {
        return new MachineReader(fields).read();
    }

    private MachineReading read() {
        Optional<String> name = fields.required("name", "what the machine is called");
        Optional<String> units = fields.choice("units", List.of("metric", "imperial"));
        Chain<MachineDescription> machine = new Chain<>(MachineDescription.of(name.orElse("unnamed")));
        readMachine(machine);
        Map<String, RecordingSource> sources = readPoints(machine);
        BaselineReader.read(fields, points.ids()).forEach((point, values) ->
                machine.with(Optional.of(values), (known, one) -> known.withBaseline(point, one)));
        machine.with(fields.part("balancing", object -> BalancingReader.read(object, machine.value().rotor(),
                machine.value().speed())).flatMap(job -> job), MachineDescription::withBalancing);
        List<String> earlier = BaselineReader.earlier(fields);
        machine.with(naturalFrequencies(), MachineDescription::withNaturalHertz);
        List<SpeedRunSource> runs = SpeedRunReader.read(fields, machine.value().speed());
        ObservationsReader.read(fields, machine.value()).forEach((test, seen) ->
                machine.with(Optional.of(seen), (known, one) -> known.withObservation(test, one)));
        machine.with(fields.finish().faults().stream().filter(FACTS::containsKey).map(FACTS::get).toList(),
                MachineDescription::withFaulty);
        boolean enough = name.isPresent() && !sources.isEmpty();
        return new MachineReading(enough ? Optional.of(machine.value()) : Optional.empty(),
                Collections.unmodifiableMap(sources), earlier, Map.of(), fields.problems().byLine(), units, runs,
                List.of());
    }

    private List<Double> naturalFrequencies() {
        String name = "naturalFrequenciesHertz";
        List<Double> read = fields.numbers(name, Plausible.NATURAL_FREQUENCY);
        if (read.size() > MOST_NATURAL) {
            fields.fault(name, "must hold " + MOST_NATURAL + " at most: " + read.size());
            return List.of();
        }
        return read;
    }

    private void readMachine(Chain<MachineDescription> machine) {
        Machine plate = plate(fields).with(fields.number("speedRevolutionsPerMinute", Plausible.SPEED)
                .map(RotationSpeed::ofRevolutionsPerMinute), Machine::withSpeed).value();
        List<MachinePart> partList = fields.objects("parts", this::part);
        DriveTrain whole = train.read(parts, bladedShaft(partList));
        machine.with(Optional.of(plate), MachineDescription::withMachine)
                .with(fields.instant("measured"), MachineDescription::measuredAt)
                .with(fields.text("state"), MachineDescription::inState)
                .with(fields.part("criterion", MachineReader::criterion), MachineDescription::withCriterion)
                .with(fields.part("rotor", MachineReader::rotor), MachineDescription::withRotor)
                .with(Optional.of(whole), MachineDescription::withTrain)
                .with(partList, MachineDescription::withPart)
                .with(fields.objects("bearings", this::bearing), MachineDescription::withBearing);
    }

    /** What a criterion is chosen by, of the machine or of a part. */
    private static Chain<Machine> plate(FieldReader from) {
        return new Chain<>(Machine.unknown())
                .with(from.choice("kind", List.of(MachineKind.values())), Machine::withKind)
                .with(from.number("ratedPowerKilowatts", Plausible.POWER), Machine::withRatedPowerKilowatts)
                .with(from.number("shaftHeightMillimetres", Plausible.LENGTH), Machine::withShaftHeightMillimetres)
                .with(from.choice("support", List.of(Support.values())), Machine::withSupport);
    }

    /** A part with an error stays with what of it is right, so that its points still are points of a part. */
    private Optional<MachinePart> part(FieldReader object, int index) {
        String id = parts.read(object, index);
        boolean repeated = object.faulty();
        Chain<MachinePart> part = new Chain<>(MachinePart.of(id, plate(object).value()))
                .with(train.shafts().named(object, "shaft"), MachinePart::onShaft)
                .with(object.part("criterion", MachineReader::criterion), MachinePart::withCriterion);
        if (object.finish().faulty()) {
            fields.faults().add("parts");
        }
        parts.keep(id);
        return repeated ? Optional.empty() : Optional.of(part.value());
    }

    private static Optional<String> bladedShaft(List<MachinePart> parts) {
        List<String> bladed = parts.stream().filter(part -> part.machine().kind().filter(BLADED::contains).isPresent())
                .flatMap(part -> part.shaft().stream()).toList();
        return bladed.size() == 1 ? Optional.of(bladed.get(0)) : Optional.empty();
    }

    /** A bearing with an error keeps its name, so that its point is at a bearing of unknown geometry. */
    private Optional<BearingData> bearing(FieldReader object, int index) {
        object.require("id", "name of the bearing on this machine");
        String id = bearings.read(object, index);
        bearings.keep(id);
        return BearingReader.read(object, id);
    }

    private Map<String, RecordingSource> readPoints(Chain<MachineDescription> machine) {
        fields.require("points", "a list of points, each with a recording and its unit");
        int before = fields.problems().count();
        Map<String, RecordingSource> sources = new LinkedHashMap<>();
        List<PointReader.Found> all = fields.objects("points", points::read);
        Map<String, Long> pointsOfFiles = all.stream()
                .collect(Collectors.groupingBy(found -> found.source().channel().file(), Collectors.counting()));
        for (PointReader.Found found : all) {
            String file = found.source().channel().file();
            // Channels of one file were taken together.
            machine.with(Optional.of(pointsOfFiles.get(file) > 1 ? found.point().recordedWith(file) : found.point()),
                    MachineDescription::withPoint);
            sources.put(found.point().id(), found.source());
        }
        if (sources.isEmpty() && fields.has("points") && fields.problems().count() == before) {
            fields.fault("points", "must hold one point or more: [ ]");
        }
        return sources;
    }

    private static CriterionRequest criterion(FieldReader object) {
        String rule = "number of the standard, as in \"ISO 20816-3\"";
        Optional<String> standard = object.required("standard", rule);
        standard.filter(text -> !isStandard(text)).ifPresent(text -> object.fault("standard", "must be the " + rule
                + ": \"" + text + "\""));
        return new Chain<>(CriterionRequest.of(standard.filter(MachineReader::isStandard).orElse("unknown")))
                .with(object.text("edition"), CriterionRequest::withEdition)
                .with(object.text("group"), CriterionRequest::withGroup)
                .with(object.text("duty"), CriterionRequest::withDuty).value();
    }

    /** A number, and its edition behind a colon if wanted. */
    private static boolean isStandard(String text) {
        return text.matches("[^:]*[^:\\s][^:]*(:\\s*\\d+\\s*)?");
    }

    private static RotorData rotor(FieldReader object) {
        Optional<BalanceGrade> grade = object.text("balanceGrade").flatMap(text -> grade(object, text));
        return new Chain<>(RotorData.unknown())
                .with(object.number("massKilograms", Plausible.ROTOR_MASS), RotorData::withMassKilograms)
                .with(grade, RotorData::withGrade)
                .with(object.count("planes", 1), RotorData::withPlanes)
                .with(object.choice("arrangement", List.of(Arrangement.values())), RotorData::withArrangement).value();
    }

    private static Optional<BalanceGrade> grade(FieldReader object, String text) {
        if (text.matches("G ?[0-9]{1,5}(\\.[0-9]{1,5})?") && Double.parseDouble(text.substring(1).trim()) > 0) {
            return Optional.of(BalanceGrade.parse(text));
        }
        object.fault("balanceGrade", "must be G followed by a number above 0, as in \"G6.3\": \"" + text + "\"");
        return Optional.empty();
    }
}
