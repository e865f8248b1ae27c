package dev.vibra.docs.fuzz;

import java.util.ArrayList;
import java.util.List;

/** Descriptions of machines by the rules of {@code machine.json}, every field now and then. */
final class Machines {
    private static final List<String> KINDS = List.of("pump", "fan", "blower", "compressor", "electric motor",
            "generator",
            "gearbox", "turbine", "steam turbine", "gas turbine", "hydraulic turbine", "wind turbine",
            "screw compressor",
            "reciprocating compressor", "reciprocating engine", "generating set", "other");
    private static final List<String> UNITS = List.of("m/s2", "g", "mg", "mm/s2", "in/s2", "m/s", "mm/s", "in/s", "m",
            "mm", "um",
            "in", "mil");
    private static final List<String> SHAFTS = List.of("main", "slow");
    private static final List<String> PARTS = List.of("drive", "driven");
    private static final List<String> BEARINGS = List.of("drive end", "far end");
    private static final String[][] CRITERIA = {{"ISO 20816-3", "group", "group 2"}, {"ISO 10816-7", "group",
            "category I"},
        {"ISO 14694", "group", "BV-3"}, {"ISO 20816-1", "edition", "2016"}, {"ISO 10816-3: 2009", "group", "1"},
        {"API 610", "edition", "2010"}, {"ISO 10816-21", "duty", "nacelle"}, {"VDI 2059", "group", "none"}};

    private final Dice dice;
    private final int points;
    private final boolean train;
    private final boolean parts;
    private final boolean bearings;

    private Machines(Dice dice, int points) {
        this.dice = dice;
        this.points = points;
        this.train = dice.oneIn(2);
        this.parts = dice.oneIn(3);
        this.bearings = dice.oneIn(2);
    }

    /** A description whose points have the recordings {@code p0.wav}, {@code p1.wav} and so on. */
    static Json description(Dice dice, int points) {
        return new Machines(dice, points).whole();
    }

    private Json whole() {
        Json machine = new Json().with("name", dice.oneIn(20) ? Hostile.text(dice) + "x" : "Fan " + dice.below(100))
                .maybe(dice, 2, "measured", "2026-03-04T10:20:00Z").maybe(dice, 3, "state", "80 % load")
                .maybe(dice, 9, "units", "metric");
        plate(machine);
        machine.maybe(dice, 2, "speedRevolutionsPerMinute", speed()).maybe(dice, 3, "lineFrequencyHertz", dice.pick(50,
                60))
                .maybe(dice, 3, "motor", motor()).maybe(dice, 3, "blades", dice.between(1, 20))
                .maybe(dice, 5, "guideVanes", dice.between(1, 20)).maybe(dice, 3, "rotor", rotor());
        if (train) {
            train(machine);
        }
        if (parts) {
            machine.with("parts", Json.list(part("drive"), part("driven")));
            machine.maybe(dice, 2, "couplings", Json.list(new Json().with("between", new ArrayList<Object>(PARTS))
                    .with("kind", dice.pick("rigid", "flexible"))));
        }
        if (bearings) {
            machine.with("bearings", Json.list(bearing(BEARINGS.get(0)), bearing(BEARINGS.get(1))));
        }
        List<Object> all = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            all.add(point(i));
        }
        machine.with("points", all);
        machine.maybe(dice, 4, "baseline", new Json().with("P0", new Json().with(dice.pick("velocity-rms-10-1000Hz",
                "kurtosis",
                "acceleration-peak"), dice.between(0.1, 10))));
        machine.maybe(dice, 8, "earlier", Json.list(dice.pick("earlier.json", "machine.json", "p0.wav", "none.json")));
        return machine.maybe(dice, 2, "balancing", Sheets.sheet(dice));
    }

    private void plate(Json machine) {
        machine.maybe(dice, 2, "kind", dice.pick(KINDS)).maybe(dice, 2, "ratedPowerKilowatts",
                Math.exp(dice.between(-1, 11)))
                .maybe(dice, 2, "shaftHeightMillimetres", dice.between(50, 600)).maybe(dice, 2, "support",
                        dice.pick("rigid",
                        "flexible"));
        if (dice.oneIn(5)) {
            String[] one = dice.pick(CRITERIA);
            machine.with("criterion", new Json().with("standard", one[0]).with(one[1], one[2]));
        }
    }

    private Object speed() {
        return dice.oneIn(2) ? dice.pick(1485, 2970, 3000, 600, 90) : (Object) dice.between(30, 60000);
    }

    private Json motor() {
        return new Json().with("poles", 2 * dice.between(1, 6)).maybe(dice, 2, "rotorBars", dice.between(8, 90))
                .maybe(dice, 2, "converter", dice.oneIn(2));
    }

    private Json rotor() {
        return new Json().maybe(dice, 2, "massKilograms", dice.between(1, 500)).maybe(dice, 2, "balanceGrade",
                dice.pick("G6.3",
                "G 2.5", "G40")).maybe(dice, 2, "planes", dice.between(1, 2)).maybe(dice, 2, "arrangement",
                dice.pick("between bearings", "overhung"));
    }

    private void train(Json machine) {
        machine.with("shafts", Json.list(new Json().with("id", SHAFTS.get(0)).with("ratio", 1), new Json().with("id",
                SHAFTS.get(1)).with("ratio", dice.between(0.05, 8))));
        Json gear = new Json().maybe(dice, 2, "id", "reducer").with("teeth", dice.pick(Json.list(23, 71), Json.list(20,
                31, 40),
                Json.list(17, 60, 19, 71)));
        if (dice.oneIn(2)) {
            gear.with("shaft", dice.pick(SHAFTS));
        } else {
            gear.maybe(dice, 2, "speedRevolutionsPerMinute", speed());
        }
        machine.maybe(dice, 2, "gears", Json.list(gear));
        machine.maybe(dice, 3, "belts", Json.list(new Json().with("id", "belt").with("lengthMillimetres", 2400)
                .with("drivingPulleyMillimetres", dice.between(80, 400)).with("drivenPulleyMillimetres",
                        dice.between(80, 400))
                .maybe(dice, 2, "drivingShaft", dice.pick(SHAFTS))));
    }

    private Json part(String id) {
        Json part = new Json().with("id", id);
        plate(part);
        return train ? part.maybe(dice, 2, "shaft", dice.pick(SHAFTS)) : part;
    }

    private Json bearing(String id) {
        double pitch = dice.between(20, 200);
        return new Json().with("id", id).with("rollingElements", dice.between(3, 12)).with("ballDiameterMillimetres",
                pitch * dice.between(0.1, 0.24)).with("pitchDiameterMillimetres", pitch)
                .maybe(dice, 2, "contactAngleDegrees", dice.between(0, 45)).maybe(dice, 3, "rotatingRing",
                        dice.pick("inner",
                        "outer"));
    }

    private Json point(int index) {
        String id = dice.oneIn(25) ? Hostile.text(dice) + "y" + index : "P" + index;
        Json point = new Json().with("id", id).with("recording", "p" + index + ".wav")
                .maybe(dice, 2, "channel", 1).with("unit", dice.oneIn(2) ? "m/s2" : dice.pick(UNITS))
                .maybe(dice, 2, "direction", dice.pick("horizontal", "vertical", "radial", "axial", "along the belt"))
                .maybe(dice, 4, "positive", dice.pick((Object) "towards the coupling", "away from the coupling", 45,
                        -90.5))
                .maybe(dice, 6, "measured", "2026-03-04T10:2" + index + ":00+01:00");
        if (dice.oneIn(4)) {
            point.with("scale", dice.pick(1.5, -4.0, 1e-3, 1000.0));
        } else if (dice.oneIn(4)) {
            point.with("sensitivityMillivoltsPerUnit", 100).maybe(dice, 2, "fullScaleVolts", 10);
        }
        if (parts) {
            point.maybe(dice, 2, "part", dice.pick(PARTS));
        }
        if (train) {
            point.maybe(dice, 2, "shaft", dice.pick(SHAFTS));
        }
        if (bearings) {
            point.maybe(dice, 2, "bearing", dice.pick(BEARINGS));
        }
        point.maybe(dice, 5, "tachometer", new Json().with("recording", "tacho.wav").maybe(dice, 2,
                "pulsesPerRevolution",
                dice.between(1, 4)));
        return point.maybe(dice, 3, "sensor", new Json().maybe(dice, 2, "mounting", dice.pick("stud", "adhesive",
                "wax", "tape",
                "magnet", "hand-held")).maybe(dice, 2, "expandedUncertaintyPercent", dice.between(0, 20)));
    }
}
