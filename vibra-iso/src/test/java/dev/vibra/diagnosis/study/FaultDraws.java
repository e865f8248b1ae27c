package dev.vibra.diagnosis.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.apache.commons.math3.special.BesselJ;

/** Faults of a plant, drawn with other equations than the library's own models. */
final class FaultDraws {
    private final Plant plant;
    private final Map<String, KinematicFrequencies> bearings;
    private final SplittableRandom random;

    /** A fault that the plant can have. */
    record Candidate(String id, String site, double weight, Supplier<Planted> draw) {}

    FaultDraws(Plant plant, Map<String, KinematicFrequencies> bearings, SplittableRandom random) {
        this.plant = plant;
        this.bearings = bearings;
        this.random = random;
    }

    /** One or two faults; two sit at different sites, and at most one of them opens, touches or changes the structure. */
    List<Planted> draw(int number) {
        List<Planted> drawn = new ArrayList<>();
        List<Candidate> candidates = candidates();
        while (drawn.size() < number && !candidates.isEmpty()) {
            Planted next = pick(candidates).draw().get();
            drawn.add(next);
            boolean bends = next.change() != null || next.contact() != null;
            candidates.removeIf(one -> one.site().equals(next.site()) || bends && one.site().startsWith("shaft"));
        }
        return drawn;
    }

    private Candidate pick(List<Candidate> from) {
        double left = random.nextDouble() * from.stream().mapToDouble(Candidate::weight).sum();
        for (Candidate one : from) {
            left -= one.weight();
            if (left <= 0) {
                return one;
            }
        }
        return from.get(from.size() - 1);
    }

    List<Candidate> candidates() {
        List<Candidate> all = new ArrayList<>();
        for (int rotor = 0; rotor < plant.rotors.size(); rotor++) {
            if (!plant.rotors.get(rotor).id().equals("middle")) {
                addShaft(all, rotor, 1.0 / plant.rotors.size());
            }
        }
        if (plant.coupled) {
            String site = "coupling motor to " + plant.parts.get(1);
            all.add(new Candidate("misalignment/parallel", site, 1, () -> misalignment(false, site)));
            all.add(new Candidate("misalignment/angular", site, 1, () -> misalignment(true, site)));
        }
        all.add(new Candidate("eccentric-rotor", "motor", 1, this::eccentricRotor));
        all.add(new Candidate("twice-line-frequency", "motor", 1, this::twiceLine));
        all.add(new Candidate("broken-rotor-bars", "motor", 1, this::brokenBars));
        for (Plant.Mesh mesh : plant.meshes) {
            String site = "gear " + mesh.id();
            all.add(new Candidate("gear-mesh", site, 2.0 / plant.meshes.size(), () -> worn(mesh, site)));
            all.add(new Candidate("gear-tooth", site, 2.0 / plant.meshes.size(), () -> tooth(mesh, site)));
        }
        if (plant.bladed >= 0) {
            all.add(new Candidate("vane-passing", "blades", 1, () -> Planted.pushing("vane-passing", "blades",
                    vanes(1, random.nextDouble(0, 0.4))).test("flow-changes", 0.95)));
        }
        if (plant.drive != null) {
            all.add(new Candidate("belt", "belt", 2, () -> Planted.pushing("belt", "belt", belt(0.004, 0.5))
                    .test("belt-looks-worn", 0.9)));
            all.add(new Candidate("eccentric-pulley", "pulley", 2, this::pulley));
        }
        bearings.keySet().forEach(id -> addBearing(all, id));
        all.add(new Candidate("foreign-line", "machine", 0.7, () -> Planted.pushing("foreign-line", "machine",
                foreign()).test("stays-when-stopped", 0.97)));
        return all;
    }

    private void addShaft(List<Candidate> all, int rotor, double weight) {
        Rotor one = plant.rotors.get(rotor);
        String site = "shaft " + one.id();
        if (one.overhung()) {
            all.add(new Candidate("unbalance/overhung", site, weight, () -> Planted.pushing("unbalance/overhung", site,
                    unbalance(rotor)).test("trial-mass-answers", 0.95)));
        } else {
            all.add(new Candidate("unbalance/static", site, weight, () -> Planted.pushing("unbalance/static", site,
                    unbalance(rotor)).test("trial-mass-answers", 0.95)));
            all.add(new Candidate("unbalance/couple", site, weight, () -> Planted.pushing("unbalance/couple", site,
                    couple(rotor)).test("trial-mass-answers", 0.95)));
        }
        all.add(new Candidate("bent-shaft", site, weight, () -> bent(rotor, site)));
        all.add(new Candidate("misalignment/bearing", site, weight, () -> cocked(rotor, site)));
        all.add(new Candidate("looseness/foot", site, weight, () -> looseFoot(rotor, site)));
        all.add(new Candidate("looseness/pedestal", site, weight, () -> pedestal(rotor, site)));
        all.add(new Candidate("looseness/rotating-part", site, weight, () -> seat(rotor, site)));
        all.add(new Candidate("soft-foot", site, weight, () -> softFoot(rotor, site)));
        all.add(new Candidate("rub", site, weight, () -> rub(rotor, site)));
        all.add(new Candidate("resonance", site, weight, () -> resonance(rotor, site)));
    }

    private void addBearing(List<Candidate> all, String id) {
        Housing housing = plant.housings.stream().filter(one -> one.name().equals(id)).findFirst().orElseThrow();
        for (BearingElement element : BearingElement.values()) {
            String fault = "rolling-bearing-" + element.toString().toLowerCase(Locale.ROOT).replace(' ', '-');
            all.add(new Candidate(fault, "bearing " + id, 0.6, () -> Planted.pushing(fault, "bearing " + id,
                    new BearingKnocks(housing.knock(), element, bearings.get(id),
                            plant.rotors.get(housing.rotor()).ratio(), random))));
        }
    }

    // ---- turning and coupling forces

    Lines unbalance(int index) {
        Rotor rotor = plant.rotors.get(index);
        double turns = random.nextDouble();
        Lines lines = new Lines().turning(rotor.x(rotor.centre()), rotor.y(rotor.centre()), rotor.turning(), 1, turns);
        double tilt = (rotor.overhung() ? 0.25 : 0.05) * Math.abs(rotor.bearing(0) - rotor.bearing(1))
                * random.nextDouble();
        return lines.turning(rotor.tilt(1), rotor.tilt(0).times(-1), rotor.turning(), tilt, turns
                + random.nextDouble(-0.1, 0.1));
    }

    Lines couple(int index) {
        Rotor rotor = plant.rotors.get(index);
        double arm = Math.abs(rotor.bearing(0) - rotor.bearing(1)) * random.nextDouble(0.2, 0.4);
        double turns = random.nextDouble();
        double uneven = random.nextDouble(0.8, 1.2);
        return new Lines().turning(rotor.x(rotor.centre() + arm), rotor.y(rotor.centre() + arm), rotor.turning(), 1,
                turns).turning(rotor.x(rotor.centre() - arm), rotor.y(rotor.centre() - arm), rotor.turning(), uneven,
                turns + 0.5 + random.nextDouble(-0.04, 0.04));
    }

    /** The bow shifts the mass and tilts both journals, which pushes the end shields apart and together. */
    private Planted bent(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        double turns = random.nextDouble();
        Lines lines = new Lines().turning(rotor.x(rotor.centre()), rotor.y(rotor.centre()), rotor.turning(), 1, turns);
        double tilt = random.nextDouble(0.02, 0.3);
        boolean middle = random.nextDouble() < 0.6;
        for (Housing housing : housings(index)) {
            double size = tilt * (middle || housing.end() == 0 ? 1 : random.nextDouble(0, 0.4));
            lines.add(housing.shield(), rotor.ratio(), 0, size, turns + (housing.end() == 0 ? 0 : 0.5));
            lines.add(housing.shield(), 2 * rotor.ratio(), 0, size * random.nextDouble(0, 0.2), random.nextDouble());
        }
        return Planted.pushing("bent-shaft", site, lines).test("slow-roll-stays", 0.95).test("trial-mass-answers", 0.8)
                .test("creeps", 0.1);
    }

    private List<Housing> housings(int rotor) {
        return plant.housings.stream().filter(one -> one.rotor() == rotor).toList();
    }

    private Planted cocked(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        Housing housing = Draw.one(random, housings(index));
        double second = Draw.logarithmic(random, 0.1, 1.5);
        Lines lines = new Lines().add(housing.shield(), rotor.ratio(), 0, 1, random.nextDouble())
                .add(housing.shield(), 2 * rotor.ratio(), 0, second, random.nextDouble())
                .add(housing.taps()[0], rotor.ratio(), 0, random.nextDouble(0, 2), random.nextDouble())
                .add(housing.taps()[1], rotor.ratio(), 0, random.nextDouble(0, 2), random.nextDouble());
        return Planted.pushing("misalignment/bearing", site, lines).test("alignment-off", 0.1)
                .test("trial-mass-answers", 0.5);
    }

    /**
     * Reactions of a coupling by its offsets, bending stiffness and torque, as C. B. Gibbons (1976, from memory,
     * unverified) gives them, on the orders of the shaft in a mix that is drawn: papers agree on none.
     */
    private Planted misalignment(boolean angular, String site) {
        double[] mix = {Draw.logarithmic(random, 0.2, 5), 1, Draw.logarithmic(random, 0.02, 0.6),
            Draw.logarithmic(random, 0.01, 0.3)};
        Reactions reactions = Reactions.draw(angular, random);
        Lines lines = new Lines();
        boolean turning = random.nextBoolean();
        for (int order = 1; order <= mix.length; order++) {
            double turns = random.nextDouble();
            double quarter = order == 1 && turning ? -0.25 : random.nextDouble(-0.1, 0.1);
            double size = mix[order - 1];
            lines.add(plant.coupling(0), order, 0, size * reactions.forceX(), turns);
            lines.add(plant.coupling(1), order, 0, size * reactions.forceY(), turns + quarter);
            lines.add(plant.coupling(2), order, 0, size * reactions.axial(), turns + random.nextDouble(-0.2, 0.2));
            bend(lines, order, size * reactions.momentX(), size * reactions.momentY(), turns);
        }
        return Planted.pushing(angular ? "misalignment/angular" : "misalignment/parallel", site, lines)
                .test("alignment-off", 0.95).test("uncoupled-gone", 0.97).test("trial-mass-answers", 0.3);
    }

    private void bend(Lines lines, int order, double level, double upright, double turns) {
        Rotor driving = plant.rotors.get(0);
        Rotor driven = plant.rotors.get(plant.firstRotorOf(1));
        lines.add(driving.tilt(0).minus(driven.tilt(0)), order, 0, level, turns);
        lines.add(driving.tilt(1).minus(driven.tilt(1)), order, 0, upright, turns);
    }

    /** Small reactions of a coupling in order. */
    Lines coupling() {
        Lines lines = new Lines();
        for (int order = 1; order <= 3; order++) {
            for (int direction = 0; direction < 3; direction++) {
                lines.add(plant.coupling(direction), order, 0, random.nextDouble() / (order == 2 ? 1 : 2),
                        random.nextDouble());
            }
        }
        return lines;
    }

    /** A few small multiples that any machine has. */
    Lines multiples(int index) {
        Rotor rotor = plant.rotors.get(index);
        Lines lines = new Lines();
        for (int order = 2; order <= 5; order++) {
            lines.add(rotor.x(rotor.centre()), order * rotor.ratio(), 0, random.nextDouble() / order, random.nextDouble());
            lines.add(rotor.y(rotor.centre()), order * rotor.ratio(), 0, random.nextDouble() / order, random.nextDouble());
        }
        return lines;
    }

    // ---- feet, supports, contacts

    private Planted looseFoot(int index, String site) {
        String foot = "foot " + plant.parts.get(plant.rotors.get(index).part()) + " " + random.nextInt(4);
        double upright = Draw.logarithmic(random, 0.02, 0.3);
        double level = Draw.logarithmic(random, 0.1, 0.8);
        return Planted.changing("looseness/foot", site, Draw.logarithmic(random, 0.8, 3), sound ->
                sound.with(one -> one.name().equals(foot), upright).with(one -> one.name().equals(foot + " level"), level))
                .test("joint-steps", 0.9).test("foot-lifts", 0.5).test("cap-loose", 0.8).test("trial-mass-answers", 0.5);
    }

    private Planted softFoot(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        String foot = "foot " + plant.parts.get(rotor.part()) + " " + random.nextInt(4);
        double softer = random.nextDouble(0.2, 0.7);
        Housing housing = Draw.one(random, housings(index));
        Lines strain = new Lines().add(housing.taps()[1], rotor.ratio(), 0, Draw.logarithmic(random, 0.3, 3),
                random.nextDouble()).add(housing.taps()[1], 2 * rotor.ratio(), 0, 1, random.nextDouble())
                .add(housing.taps()[0], 2 * rotor.ratio(), 0, random.nextDouble(0, 1), random.nextDouble());
        if (rotor.part() == 0) {
            strain.add(housing.taps()[random.nextInt(2)], 0, 2, Draw.logarithmic(random, 0.2, 3), random.nextDouble());
        }
        return Planted.changing("soft-foot", site, 0, sound -> sound.with(one -> one.name().startsWith(foot), softer))
                .and(strain).test("foot-lifts", 0.95).test("joint-steps", 0.3).test("alignment-off", 0.25);
    }

    /** Feet of one part stiffened or softened so that a mode in which the rotor takes part lies at the speed. */
    private Planted resonance(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        String feet = "foot " + plant.parts.get(rotor.part());
        double off = random.nextDouble(-0.04, 0.04);
        return Planted.changing("resonance", site, Draw.logarithmic(random, 0.8, 3), sound ->
                Tuning.to(plant.hertz(index) * (1 + off), sound, feet, rotor)).test("speed-peaks", 0.95)
                .test("joint-steps", 0.1).test("trial-mass-answers", 0.7);
    }

    /** Both feet of one end come loose in their joints: closed, a gap, a stop. */
    private Planted pedestal(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        Casing casing = plant.casings.get(rotor.part());
        int end = random.nextInt(2);
        String name = "foot " + plant.parts.get(rotor.part()) + " " + 2 * end;
        String twin = "foot " + plant.parts.get(rotor.part()) + " " + (2 * end + 1);
        var feet = plant.structure.springs().stream().filter(one -> one.name().equals(name) || one.name().equals(twin))
                .toList();
        Tap lift = feet.get(0).along().plus(1, feet.get(1).along()).times(0.5);
        double stiffness = feet.get(0).stiffness() + feet.get(1).stiffness();
        double gap = random.nextDouble(0.1, 2);
        double preload = random.nextDouble(0, 0.8);
        double stop = stiffness * Draw.logarithmic(random, 0.5, 5);
        double damping = 0.1 * Math.sqrt(stop * casing.mass() / 4);
        return Planted.touching("looseness/pedestal", site, Draw.logarithmic(random, 0.5, 3), lift, amplitude ->
                new Contact.Joint(lift, stiffness, preload * amplitude * stiffness, gap * amplitude, stop, damping))
                .test("joint-steps", 0.9).test("cap-loose", 0.9).test("trial-mass-answers", 0.2)
                .test("foot-lifts", 0.4);
    }

    private Planted seat(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        Housing housing = Draw.one(random, housings(index));
        double z = rotor.bearing(housing.end());
        Tap x = rotor.x(z).minus(housing.taps()[0]);
        Tap y = rotor.y(z).minus(housing.taps()[1]);
        double clearance = Draw.logarithmic(random, 0.2, 4);
        double weight = random.nextDouble(0.1, 1.2);
        double damping = 0.15 * Math.sqrt(rotor.bearingStiffness() * rotor.mass() / 2);
        return Planted.touching("looseness/rotating-part", site, Draw.logarithmic(random, 0.5, 2), x, amplitude ->
                new Contact.Seat(x, y, rotor.bearingStiffness(), rotor.uprightStiffness(), clearance * amplitude,
                        weight * amplitude * rotor.uprightStiffness(), damping))
                .test("cap-loose", 0.8).test("creeps", 0.3).test("trial-mass-answers", 0.2).test("rub-marks", 0.1);
    }

    private Planted rub(int index, String site) {
        Rotor rotor = plant.rotors.get(index);
        Housing housing = Draw.one(random, housings(index));
        Casing casing = plant.casings.get(rotor.part());
        double angle = random.nextDouble(0, 2 * Math.PI);
        double z = rotor.centre();
        Tap x = rotor.x(z).minus(casing.x(0, z)).plus(-0.1, housing.taps()[0]);
        Tap y = rotor.y(z).minus(casing.y(rotor.offset(), z)).plus(-0.1, housing.taps()[1]);
        Tap normal = x.times(Math.cos(angle)).plus(Math.sin(angle), y);
        Tap along = y.times(Math.cos(angle)).plus(-Math.sin(angle), x);
        double clearance = random.nextDouble(0.3, 0.95);
        double stiffness = rotor.bearingStiffness() * 2 * Draw.logarithmic(random, 0.3, 8);
        double friction = random.nextDouble(0.05, 0.25) * -Math.signum(rotor.turning());
        return Planted.touching("rub", site, Draw.logarithmic(random, 0.5, 2.5), normal, amplitude ->
                new Contact.Wall(normal, along, clearance * amplitude, stiffness, amplitude * 0.3, friction))
                .test("rub-marks", 0.95).test("creeps", 0.5).test("trial-mass-answers", 0.1);
    }

    // ---- motor

    private Planted eccentricRotor() {
        double cage = random.nextDouble() < 0.6 ? Draw.logarithmic(random, 0.01, 0.15) : 0;
        Lines lines = pull(new AirGap(plant.poles / 2, random.nextDouble(0, 0.05), random.nextDouble(0.1, 0.5), cage), 0);
        return Planted.pushing("eccentric-rotor", "motor", lines).test("power-cut-drops", 0.97).test("load-raises", 0.5)
                .test("trial-mass-answers", 0.7).test("uncoupled-gone", 0.1);
    }

    private Planted twiceLine() {
        Lines lines = pull(new AirGap(plant.poles / 2, random.nextDouble(0.1, 0.4), random.nextDouble(0, 0.005), 0), 1);
        return Planted.pushing("twice-line-frequency", "motor", lines).test("power-cut-drops", 0.97)
                .test("load-raises", 0.4);
    }

    /** Bars: pull of the backward wave, and the speed that swings at the pole-pass rate sweeps the turning force. */
    private Planted brokenBars() {
        int pairs = plant.poles / 2;
        double index = Draw.logarithmic(random, 0.03, 0.8);
        Rotor rotor = plant.rotors.get(0);
        Lines lines = new Lines();
        double turns = random.nextDouble();
        for (int n = -3; n <= 3; n++) {
            double size = n == 0 ? 0 : BesselJ.value(Math.abs(n), index) * (n < 0 && n % 2 != 0 ? -1 : 1);
            lines.add(rotor.x(rotor.centre()), 1 - 2.0 * pairs * n, 2 * n, size, turns);
            lines.add(rotor.y(rotor.centre()), 1 - 2.0 * pairs * n, 2 * n, size, turns - 0.25);
        }
        for (Lines.Line one : pull(new AirGap(pairs, 0.03, random.nextDouble(0.03, 0.12), random.nextDouble(0.05, 0.3)),
                0).lines()) {
            if (Math.abs(one.line()) > 0) {
                lines.add(one.tap(), one.shaft(), one.line(), 0.3 * one.amplitude(), one.turns());
            }
        }
        return Planted.pushing("broken-rotor-bars", "motor", lines).test("current-sidebands", 0.97)
                .test("load-raises", 0.95).test("power-cut-drops", 0.9);
    }

    /** Pull of the air gap between rotor and frame; the frame itself ovals, and uneven phases make it rock. */
    Lines pull(AirGap gap, double torque) {
        Rotor rotor = plant.rotors.get(0);
        Casing casing = plant.casings.get(0);
        double angle = random.nextDouble(0, 2 * Math.PI);
        Tap x = rotor.x(rotor.centre()).minus(casing.x(0, rotor.centre()));
        Tap y = rotor.y(rotor.centre()).minus(casing.y(0, rotor.centre()));
        Tap level = x.times(Math.cos(angle)).plus(Math.sin(angle), y);
        Tap upright = y.times(Math.cos(angle)).plus(-Math.sin(angle), x);
        Lines lines = new Lines();
        gap.pulls(AirGap.Sum.LEVEL).forEach(one -> lines.add(level, one.shaft(), one.line(), one.amplitude(), one.turns()));
        gap.pulls(AirGap.Sum.UPRIGHT).forEach(one -> lines.add(upright, one.shaft(), one.line(), one.amplitude(),
                one.turns()));
        if (torque > 0) {
            lines.add(casing.turn(2), 0, 2, torque * random.nextDouble(0.05, 0.3), random.nextDouble());
        }
        double oval = random.nextDouble(0.02, 0.1) * (gap.polePairs() == 1 ? 1 : 0.1);
        for (Housing housing : housings(0)) {
            lines.add(housing.taps()[0].minus(housing.taps()[1]), 0, 2, oval * Math.max(torque, 0.3), random.nextDouble());
        }
        return lines;
    }

    // ---- gears, flow, belts, neighbours

    private Planted worn(Plant.Mesh mesh, String site) {
        double[] profile = {Draw.logarithmic(random, 0.2, 1.5), Draw.logarithmic(random, 0.2, 1.5),
            Draw.logarithmic(random, 0.1, 1)};
        double[] runOut = {Draw.logarithmic(random, 0.02, 0.5), Draw.logarithmic(random, 0.02, 0.5)};
        return Planted.pushing("gear-mesh", site, mesh(mesh, new MeshForce.Design(profile, random.nextDouble(0.02, 0.3),
                runOut, -1, 0, 1))).test("contact-off", 0.9).test("tooth-marks", 0.1);
    }

    private Planted tooth(Plant.Mesh mesh, String site) {
        return Planted.pushing("gear-tooth", site, mesh(mesh, new MeshForce.Design(new double[] {0, 0, 0}, 0,
                new double[] {0, 0}, random.nextInt(2), random.nextDouble(0.3, 0.9), 1)))
                .test("tooth-marks", 0.95).test("contact-off", 0.1);
    }

    MeshForce mesh(Plant.Mesh mesh, MeshForce.Design design) {
        List<Tap> knocks = plant.housings.stream().filter(one -> plant.rotors.get(one.rotor()).part() == 1)
                .map(Housing::knock).toList();
        return new MeshForce(plant.action(mesh), knocks, plant.rotors.get(mesh.driving()).ratio(),
                new int[] {mesh.drivingTeeth(), mesh.drivenTeeth()}, design, random);
    }

    MeshForce soundMesh(Plant.Mesh mesh) {
        return mesh(mesh, new MeshForce.Design(new double[] {1, random.nextDouble(0, 0.5), random.nextDouble(0, 0.3)},
                random.nextDouble(0, 0.03), new double[] {random.nextDouble(0, 0.06), random.nextDouble(0, 0.06)}, -1, 0, 1));
    }

    /** Wheel and guide vanes: a multiple n of the passing rate shakes if n blades and some vanes differ by one. */
    Lines vanes(double size, double uneven) {
        Rotor rotor = plant.rotors.get(plant.bladed);
        Lines lines = new Lines();
        double angle = random.nextDouble(0, 2 * Math.PI);
        Tap x = rotor.x(rotor.centre());
        Tap y = rotor.y(rotor.centre());
        Tap fixed = x.times(Math.cos(angle)).plus(Math.sin(angle), y);
        for (int n = 1; n <= 3; n++) {
            int mode = VaneModes.lowest(n, plant.blades, plant.guideVanes);
            double strength = size / (n * n) * (plant.guideVanes == 1 || Math.abs(mode) <= 1 ? 1 : 0.15);
            double passing = n * plant.blades * rotor.ratio();
            double turns = random.nextDouble();
            if (Math.abs(mode) == 1 && plant.guideVanes > 1) {
                lines.turning(x, y, passing * Math.signum(mode), strength, turns);
            } else {
                lines.add(mode == 0 && plant.guideVanes > 1 ? rotor.z() : fixed, passing, 0, strength, turns);
            }
            lines.add(fixed, passing - rotor.ratio(), 0, strength * uneven / 2, random.nextDouble());
            lines.add(fixed, passing + rotor.ratio(), 0, strength * uneven / 2, random.nextDouble());
        }
        return lines;
    }

    BeltForce belt(double spread, double flutter) {
        return new BeltForce(plant.beltTap(0).minus(plant.beltTap(1)), plant.drive.perTurn(), random.nextInt(1, 4),
                random.nextDouble() * spread, random.nextDouble() * flutter, random);
    }

    private Planted pulley() {
        int index = random.nextInt(2);
        Rotor rotor = plant.rotors.get(index);
        Tap pull = plant.beltTap(0).minus(plant.beltTap(1));
        Lines lines = new Lines().add(pull, rotor.ratio(), 0, 1, random.nextDouble())
                .add(pull, 2 * rotor.ratio(), 0, random.nextDouble(0, 0.15), random.nextDouble());
        return Planted.pushing("eccentric-pulley", "shaft " + rotor.id(), lines).test("pulley-runs-out", 0.95)
                .test("trial-mass-answers", 0.3);
    }

    Lines foreign() {
        double hertz = plant.motorHertz() * random.nextDouble(0.3, 4);
        while (Rates.near(plant, hertz, 0.03)) {
            hertz = plant.motorHertz() * random.nextDouble(0.3, 4);
        }
        Lines lines = new Lines();
        double turns = random.nextDouble();
        double level = random.nextDouble(-1, 1);
        for (Casing casing : plant.casings) {
            lines.foreign(casing.y(0, 0), hertz, casing.mass() * random.nextDouble(0.5, 1), turns);
            lines.foreign(casing.x(-casing.height(), 0), hertz, casing.mass() * level * random.nextDouble(0.5, 1), turns);
        }
        return lines;
    }
}
