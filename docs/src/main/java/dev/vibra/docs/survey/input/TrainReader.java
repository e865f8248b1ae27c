package dev.vibra.docs.survey.input;

import dev.vibra.machine.Belt;
import dev.vibra.machine.CoupledParts;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.Motor;
import dev.vibra.severity.Coupling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what turns, meshes and passes: shafts first, since parts, gears, belts and points name them. */
final class TrainReader {
    private final FieldReader fields;
    private final Ids shafts = new Ids("shaft");
    private final Ids gears = new Ids("gear");
    private final Ids belts = new Ids("belt");
    private final Chain<DriveTrain> train = new Chain<>(DriveTrain.plain());

    TrainReader(FieldReader fields) {
        this.fields = fields;
        train.with(fields.objects("shafts", this::shaft), (known, shaft) -> known.withShaft(shaft.id, shaft.ratio));
    }

    private record Shaft(String id, double ratio) {}

    Ids shafts() {
        return shafts;
    }

    /** Reads the rest; the blades sit on the given shaft, if any. */
    DriveTrain read(Ids parts, Optional<String> bladed) {
        fields.objects("gears", this::gear).forEach(stages -> train.with(stages, DriveTrain::withGear));
        return train.with(fields.objects("belts", this::belt), DriveTrain::withBelt)
                .with(fields.objects("couplings", (object, index) -> coupling(object, parts)), DriveTrain::withCoupling)
                .with(fields.count("blades", 1), DriveTrain::withBlades)
                .with(bladed, DriveTrain::withBladesOn)
                .with(fields.count("guideVanes", 1), DriveTrain::withGuideVanes)
                .with(fields.part("motor", TrainReader::motor), DriveTrain::withMotor)
                .with(fields.number("lineFrequencyHertz", Plausible.LINE_FREQUENCY), DriveTrain::withLineHertz).value();
    }

    private Optional<Shaft> shaft(FieldReader object, int index) {
        String id = shafts.read(object, index);
        Optional<Double> ratio = object.require("ratio", "its speed over speedRevolutionsPerMinute")
                .number("ratio", Plausible.RATIO);
        return object.finished(() -> {
            shafts.keep(id);
            return new Shaft(id, ratio.orElseThrow());
        });
    }

    private Optional<List<GearStage>> gear(FieldReader object, int index) {
        String id = gears.read(object, index);
        List<Integer> teeth = object.require("teeth", "the teeth of each wheel in the order of the power flow")
                .counts("teeth", 1);
        boolean known = teeth.size() == 2 || teeth.size() == 3 || teeth.size() >= 4 && teeth.size() % 2 == 0;
        if (!known && !object.faults().contains("teeth")) {
            object.fault("teeth", "must hold two wheels, three (the second an idler), or two of each of several stages"
                    + " in the order of the power flow: " + teeth);
        }
        Optional<String> shaft = shafts.named(object, "shaft");
        Optional<Double> speed = object.number("speedRevolutionsPerMinute", Plausible.SPEED);
        return object.finished(() -> {
            List<GearStage> stages = stages(id, teeth);
            stages.set(0, new Chain<>(stages.get(0)).with(shaft, GearStage::drivenBy)
                    .with(speed, (stage, rpm) -> stage.withInputHertz(rpm / 60)).value());
            return stages;
        });
    }

    private static List<GearStage> stages(String id, List<Integer> teeth) {
        List<GearStage> stages = new ArrayList<>();
        if (teeth.size() < 4) {
            stages.add(GearStage.of(id, teeth));
            return stages;
        }
        for (int i = 0; i < teeth.size(); i += 2) {
            stages.add(GearStage.of(id + " stage " + (i / 2 + 1), teeth.subList(i, i + 2)));
        }
        return stages;
    }

    private Optional<Belt> belt(FieldReader object, int index) {
        String id = belts.read(object, index);
        OptionalDouble driving = pulley(object, "drivingPulleyMillimetres");
        OptionalDouble driven = pulley(object, "drivenPulleyMillimetres");
        double shortest = Math.PI * Math.max(driving.orElse(0), driven.orElse(0));
        Optional<Double> length = object.require("lengthMillimetres", "length of the belt in mm")
                .number("lengthMillimetres", new Range(shortest, false, Plausible.LENGTH.highest(), true, "mm"));
        Optional<String> shaft = shafts.named(object, "drivingShaft");
        return object.finished(() -> {
            Belt belt = Belt.of(id, length.orElseThrow() / 1000, driving.orElseThrow() / 1000,
                    driven.orElseThrow() / 1000);
            return shaft.map(belt::drivenBy).orElse(belt);
        });
    }

    private static OptionalDouble pulley(FieldReader object, String name) {
        return object.require(name, "effective diameter in mm").number(name, Plausible.LENGTH).stream()
                .mapToDouble(Double::doubleValue).findFirst();
    }

    private static Optional<CoupledParts> coupling(FieldReader object, Ids parts) {
        List<String> between = object.require("between", "the ids of two parts").texts("between");
        boolean unknown = !between.stream().allMatch(parts::has);
        if ((between.size() != 2 || unknown) && !object.faults().contains("between")) {
            object.fault("between", (unknown ? parts.rule() : "must hold the ids of two parts") + ": " + between);
        }
        Optional<Coupling> kind = object.require("kind", FieldReader.joined(List.of(Coupling.values())))
                .choice("kind", List.of(Coupling.values()));
        return object.finished(() -> new CoupledParts(between.get(0), between.get(1), kind.orElseThrow()));
    }

    private static Motor motor(FieldReader object) {
        Optional<Integer> poles = object.count("poles", 2);
        poles.filter(number -> number % 2 != 0).ifPresent(number ->
                object.fault("poles", "must be an even number: " + number));
        Motor motor = new Chain<>(Motor.unknown()).with(poles.filter(number -> number % 2 == 0), Motor::withPoles)
                .with(object.count("rotorBars", 1), Motor::withRotorBars).value();
        return object.truth("converter").orElse(false) ? motor.onConverter() : motor;
    }
}
