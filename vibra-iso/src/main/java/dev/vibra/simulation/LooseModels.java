package dev.vibra.simulation;

import java.util.List;

/** Faults of joints, fits and clearances. */
final class LooseModels {
    /** Smaller lines than this part of the largest are left out. */
    private static final double NEGLIGIBLE = 0.004;

    private LooseModels() {}

    /**
     * An open or cracked joint below a foot: the housing there gets softer in one direction, upright mostly, and what
     * is left of unbalance moves it more. A mode of its own in series with the casing; a little of 2× and 3× for the
     * joint works.
     */
    static String foot(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = RotorModels.measured(scene, draws);
        int housing = RotorModels.end(scene, rotor, draws);
        int direction = draws.chance(0.65) ? Excitation.VERTICAL : Excitation.HORIZONTAL;
        soften(scene, rotor, housing, direction, draws);
        Cause cause = Cause.reaching(FaultModels.level(draws));
        Excitation forces = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(forces, rotor, rotor.plane(), 1, draws.angle());
        RotorForces.couple(forces, rotor, draws.uniform(0, 0.4), draws.angle());
        cause.with(forces);
        double work = draws.logUniform(0.01, 0.3);
        for (int n = 2; n <= 3; n++) {
            cause.with(scene.forces(n * rotor.ratio(), 0).push(housing, direction, work / (n - 1) * draws.uniform(0.3,
                    1),
                    draws.angle()));
        }
        scene.addFault(cause);
        return rotor.owner();
    }

    private static void soften(Scene scene, PlanParts.Rotor rotor, int housing, int direction, Draws draws) {
        double[] shape = new double[Excitation.DIRECTIONS * scene.plan().housings()];
        for (int at = 0; at < shape.length; at++) {
            boolean same = at / Excitation.DIRECTIONS == housing;
            boolean part = scene.parts().housings().get(at / Excitation.DIRECTIONS).part()
                    .equals(scene.parts().housings().get(housing).part());
            shape[at] = draws.normal(0, same ? 0.15 : part ? 0.12 : 0.02);
        }
        shape[Excitation.DIRECTIONS * housing + direction] = 1;
        double ratio = draws.logUniform(0.7, 2.2);
        ratio = Math.abs(ratio - 1) < 0.08 ? 1.1 : ratio;
        scene.change(scene.structure().with(new Structure.Mode(ratio * scene.hertz(rotor), draws.logUniform(0.02, 0.08),
                draws.logUniform(0.15, 0.6), shape)));
    }

    /**
     * A pedestal or cap that lifts: the force of a {@link Joint} on its base. Half of the joints are softer where
     * open, the others have a gap with a stop. While weight and bolts press harder than the motion pulls, nothing but
     * 1× shows.
     */
    static String pedestal(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = RotorModels.measured(scene, draws);
        int housing = RotorModels.end(scene, rotor, draws);
        double r = draws.uniform(0.3, 2.6);
        double damping = draws.logUniform(0.015, 0.1);
        double swing = Rub.freeOrbit(r, damping);
        Joint joint = draws.chance(0.4) ? Joint.bilinear(r, damping, draws.uniform(0.1, 0.7), draws.uniform(0,
                1.3) * swing)
                : Joint.withGap(r, damping, draws.logUniform(0.05, 1) * swing, draws.logUniform(1, 20),
                draws.uniform(0, 1) * swing);
        TurnHarmonics harmonics = joint.harmonics(150);
        int direction = draws.chance(0.75) ? Excitation.VERTICAL : Excitation.HORIZONTAL;
        double aside = draws.uniform(0.05, 0.4);
        Cause cause = Cause.reaching(FaultModels.level(draws));
        for (int k = 1; k <= TurnHarmonics.TURNS * TurnHarmonics.HIGHEST; k++) {
            if (harmonics.stands(0, k, NEGLIGIBLE)) {
                Excitation forces = scene.forces(rotor.ratio() * k / TurnHarmonics.TURNS, 0);
                double size = harmonics.amplitude(0, k);
                forces.push(housing, direction, size, harmonics.phase(0, k));
                forces.push(housing, 1 - direction, aside * size, harmonics.phase(0, k) + Math.PI / 2);
                cause.with(forces);
            }
        }
        scene.addFault(cause.wandering(restless(harmonics.restlessness(0), draws)));
        return rotor.owner();
    }

    /** What never repeats makes the vectors wander. */
    private static Wander restless(double share, Draws draws) {
        return Wander.of(Math.min(0.5, 0.02 + share), 2, draws);
    }

    /** A part with play on the shaft, or a bearing with play on its seat: strikes of a {@link LoosePart}. */
    static String rotatingPart(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = RotorModels.measured(scene, draws);
        int housing = RotorModels.end(scene, rotor, draws);
        LoosePart part = new LoosePart(draws.logUniform(0.03, 0.8), draws.uniform(0.3, 0.8), draws.uniform(0.02, 0.25));
        TurnHarmonics harmonics = part.harmonics(draws);
        double plane = housing == rotor.second() ? draws.uniform(0.7, 1.2) : draws.uniform(-0.2, 0.3);
        Cause cause = Cause.reaching(FaultModels.level(draws));
        double largest = Math.max(harmonics.largest(0), harmonics.largest(1));
        for (int k = 1; k <= TurnHarmonics.TURNS * TurnHarmonics.HIGHEST; k++) {
            if (harmonics.stands(0, k, NEGLIGIBLE) || harmonics.stands(1, k, NEGLIGIBLE)) {
                Excitation forces = scene.forces(rotor.ratio() * k / TurnHarmonics.TURNS, 0);
                RotorForces.along(forces, rotor, plane, Math.PI / 2, harmonics.amplitude(0, k), harmonics.phase(0, k));
                RotorForces.along(forces, rotor, plane, 0, harmonics.amplitude(1, k), harmonics.phase(1, k));
                cause.with(forces);
            }
        }
        // The part's own mass beside the axis turns with it and changes from start to start.
        Excitation once = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(once, rotor, plane, largest * draws.logUniform(0.1, 3), draws.angle());
        double unrest = Math.max(harmonics.restlessness(0), harmonics.restlessness(1));
        cause.with(once).wandering(restless(0.5 * unrest + draws.uniform(0, 0.1), draws));
        double peak = draws.logUniform(0.3, 15);
        scene.addFault(cause.with(new Knocks(KnockTrain.turning(scene.hertz(rotor), draws, draws.uniform(0, 0.01)),
                housing,
                peak)));
        return rotor.owner();
    }

    /**
     * A foot out of plane strains the frame: the housing at that corner shakes once and twice a turn, a motor's at
     * twice the line frequency too since its air gap is no longer even (common practice, no source).
     */
    static String softFoot(Scene scene, Draws draws) {
        List<PlanParts.Rotor> rotors = scene.parts().rotors().stream().filter(scene.plan()::isMeasured).toList();
        PlanParts.Rotor rotor = draws.chance(0.6) ? rotors.get(0) : draws.pick(rotors);
        int housing = RotorModels.end(scene, rotor, draws);
        soften(scene, rotor, housing, draws.chance(0.7) ? Excitation.VERTICAL : Excitation.HORIZONTAL, draws);
        Cause cause = Cause.reaching(FaultModels.level(draws));
        double second = draws.logUniform(0.1, 2);
        for (int n = 1; n <= 3; n++) {
            double size = n == 1 ? 1 : second * (n == 2 ? 1 : draws.uniform(0, 0.3));
            Excitation forces = scene.forces(n * rotor.ratio(), 0);
            forces.along(housing, Math.PI / 2 + draws.normal(0, 0.4), size, draws.angle());
            cause.with(forces.push(housing, Excitation.AXIAL, size * draws.uniform(0, 0.4), draws.angle()));
        }
        if (rotor == scene.plan().motor()) {
            Excitation pull = scene.forces(0, 2 * scene.parts().supply().lineHertz());
            cause.with(pull.along(housing, Math.PI / 2 + draws.normal(0, 0.4), draws.logUniform(0.02, 3),
                    draws.angle()));
        }
        scene.addFault(cause);
        return rotor.owner();
    }

    /**
     * A rotor that touches at one side, see {@link Rub}: the shaft's force goes to both bearings, the wall's to the
     * housing beside it; heat may make the vector creep.
     */
    static String rub(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = RotorModels.measured(scene, draws);
        int housing = RotorModels.end(scene, rotor, draws);
        double r = draws.uniform(0.3, 2.8);
        double damping = draws.logUniform(0.015, 0.1);
        double clearance = Rub.freeOrbit(r, damping) / draws.uniform(1.05, 2.5);
        TurnHarmonics harmonics = new Rub(r, damping, clearance, draws.logUniform(0.5, 20), draws.uniform(0.05, 0.3))
                .harmonics(150);
        double angle = draws.angle();
        Cause cause = Cause.reaching(FaultModels.level(draws));
        for (int k = 1; k <= TurnHarmonics.TURNS * TurnHarmonics.HIGHEST; k++) {
            if (harmonics.stands(0, k, NEGLIGIBLE) || harmonics.stands(2, k, NEGLIGIBLE)) {
                Excitation forces = scene.forces(rotor.ratio() * k / TurnHarmonics.TURNS, 0);
                RotorForces.along(forces, rotor, 0.5, angle, harmonics.amplitude(0, k), harmonics.phase(0, k));
                RotorForces.along(forces, rotor, 0.5, angle + Math.PI / 2, harmonics.amplitude(1, k),
                        harmonics.phase(1, k));
                forces.along(housing, angle, harmonics.amplitude(2, k), harmonics.phase(2, k));
                cause.with(forces);
            }
        }
        double unrest = harmonics.restlessness(0) + (draws.chance(0.5) ? draws.uniform(0.05, 0.35) : 0);
        scene.addFault(cause.wandering(restless(unrest, draws)).with(new Knocks(KnockTrain.turning(scene.hertz(rotor),
                draws,
                0.002), housing, draws.logUniform(0.05, 5))));
        return rotor.owner();
    }
}
