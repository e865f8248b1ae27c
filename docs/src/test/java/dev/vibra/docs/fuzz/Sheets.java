package dev.vibra.docs.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Sheets of balancing jobs by the rules of {@code machine.json}, of rotors that answer in proportion or don't. */
final class Sheets {
    private final Dice dice;
    private final List<String> planes;
    private final List<String> sensors;
    private final boolean displacement;
    private final boolean radius;

    private Sheets(Dice dice) {
        this.dice = dice;
        this.planes = List.of("drive end", "far end", "middle").subList(0, dice.between(1, dice.oneIn(4) ? 3 : 2));
        this.sensors = List.of("P0", "P1", "P2").subList(0, dice.between(1, 3));
        this.displacement = dice.oneIn(4);
        this.radius = dice.oneIn(2);
    }

    static Json sheet(Dice dice) {
        return new Sheets(dice).whole();
    }

    private Json whole() {
        Json job = new Json().maybe(dice, 2, "speedRevolutionsPerMinute", dice.pick(1485, 3000, 120.5))
                .with("reading", new Json().with("unit", displacement ? "um" : "mm/s").with("detector",
                        dice.pick("rms", "0-peak",
                        "peak-peak")).with("phase", dice.pick("lag, degrees", "lead, degrees")))
                .with("sensors", new ArrayList<Object>(sensors)).with("planes", new ArrayList<Object>(planes))
                .maybe(dice, 2, "scatter", scatter().maybe(dice, 3, "floor", 0.02));
        if (displacement) {
            job.maybe(dice, 2, "runout", bySensor(() -> reading(0.5)));
        }
        job.with("initial", bySensor(() -> reading(8)));
        if (dice.oneIn(4)) {
            job.with("influence", bySensor(() -> byPlane(() -> reading(0.8))));
            job.maybe(dice, 3, "influenceScatter", scatter());
        } else {
            job.with("trials", trials()).maybe(dice, 5, "trialsLeftOn", dice.oneIn(2));
        }
        if (dice.oneIn(2)) {
            job.with("final", bySensor(() -> reading(2))).maybe(dice, 3, "fitted", byPlane(null));
        }
        if (radius) {
            job.with("radiusMillimetres", perPlane(() -> dice.between(50, 500)));
            job.maybe(dice, 2, "positions", perPlane(() -> dice.between(3, 36)));
        }
        return job.maybe(dice, 4, "axial", new Json().with("bearingsMillimetres", Json.list(0, 800))
                .with("planesMillimetres", perPlane(() -> dice.between(-200, 1000)))
                .maybe(dice, 2, "centreOfMassMillimetres", dice.between(100, 700)));
    }

    private Json scatter() {
        return new Json().with("amplitudePercent", dice.between(0, 10)).with("phaseDegrees", dice.between(0, 10));
    }

    private Json reading(double largest) {
        return new Json().with("amplitude", dice.oneIn(15) ? 0 : dice.between(0.01, largest)).with("phaseDegrees",
                dice.between(0, 360));
    }

    private List<Object> trials() {
        List<Object> trials = new ArrayList<>();
        for (String plane : planes) {
            for (int i = dice.oneIn(6) ? 2 : 1; i > 0; i--) {
                trials.add(mass(plane).with("readings", bySensor(() -> reading(10))));
            }
        }
        return trials;
    }

    private Json mass(String plane) {
        Json mass = new Json().with("plane", plane).with("massGrams", dice.between(0.1, 50)).with("angleDegrees",
                dice.between(0, 360));
        return radius ? mass.maybe(dice, 2, "radiusMillimetres", 160) : mass;
    }

    private List<Object> bySensor(Supplier<Object> one) {
        List<Object> list = new ArrayList<>();
        sensors.forEach(sensor -> list.add(one.get()));
        return list;
    }

    private List<Object> byPlane(Supplier<Object> one) {
        List<Object> list = new ArrayList<>();
        planes.forEach(plane -> list.add(one == null ? mass(plane) : one.get()));
        return list;
    }

    private Json perPlane(Supplier<Object> one) {
        Json object = new Json();
        planes.forEach(plane -> object.with(plane, one.get()));
        return object;
    }
}
