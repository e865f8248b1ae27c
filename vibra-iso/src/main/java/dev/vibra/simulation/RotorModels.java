package dev.vibra.simulation;

import java.util.List;
import java.util.stream.IntStream;

/** Faults of what turns once a turn: unbalance, bow, eccentric pulleys, and resonance that makes it large. */
final class RotorModels {
    private RotorModels() {}

    /** A rotor at which a point lies. */
    static PlanParts.Rotor measured(Scene scene, Draws draws) {
        return draws.pick(scene.parts().rotors().stream().filter(scene.plan()::isMeasured).toList());
    }

    /** An end of it at which a point lies. */
    static int end(Scene scene, PlanParts.Rotor rotor, Draws draws) {
        return draws.pick(List.of(rotor.first(), rotor.second()).stream().filter(scene.plan()::isMeasured).toList());
    }

    /**
     * Mass beside the axis in the middle of the rotor: a force {@code m·e·ω²} that turns, shared by both bearings.
     *
     * @see "M. I. Friswell, J. E. T. Penny, S. D. Garvey, A. W. Lees, Dynamics of Rotating Machines, 2010 (from
     *     memory)"
     */
    static String unbalanceStatic(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = draws.pick(scene.parts().rotors().stream().filter(one -> !one.isOverhung()
                && scene.plan().isMeasured(one)).toList());
        double phase = draws.angle();
        Excitation forces = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(forces, rotor, rotor.plane(), 1, phase);
        RotorForces.couple(forces, rotor, draws.uniform(0, 0.25), draws.angle());
        scene.addFault(Cause.reaching(FaultModels.level(draws)).with(forces));
        return rotor.owner();
    }

    /** Masses opposite each other at the two ends: a moment that turns; the tilting shakes a little along the shaft. */
    static String unbalanceCouple(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = draws.pick(scene.parts().rotors().stream().filter(scene.plan()::showsBothEnds)
                .toList());
        double phase = draws.angle();
        Excitation forces = scene.forces(rotor.ratio(), 0);
        RotorForces.couple(forces, rotor, 1, phase);
        RotorForces.rotating(forces, rotor, 0.5, draws.uniform(0, 0.5), draws.angle());
        double along = draws.uniform(0, 0.2);
        RotorForces.axial(forces, rotor, along, along * draws.uniform(-1, 1), phase);
        scene.addFault(Cause.reaching(FaultModels.level(draws)).with(forces));
        return rotor.owner();
    }

    /**
     * The same at a wheel beyond its bearings: the far bearing is pulled the other way, and the wheel's tilt pulls
     * along.
     */
    static String unbalanceOverhung(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = scene.parts().rotors().stream().filter(PlanParts.Rotor::isOverhung).findFirst()
                .orElseThrow();
        double phase = draws.angle();
        Excitation forces = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(forces, rotor, rotor.plane(), 1, phase);
        double along = draws.uniform(0.1, 0.8);
        RotorForces.axial(forces, rotor, along * draws.uniform(0.5, 1), along, phase + draws.normal(0, 0.5));
        scene.addFault(Cause.reaching(FaultModels.level(draws)).with(forces));
        return rotor.owner();
    }

    /**
     * A bow turns with the shaft: the bearings feel {@link #bowForce}. In the middle of the span both ends feel it
     * alike; near an end it tilts the journals, which shakes along the shaft, opposed at the ends (tilt: kinematics;
     * the rest common practice, no source).
     */
    static String bow(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = measured(scene, draws);
        double[] force = bowForce(draws.uniform(0.2, 0.8), draws.logUniform(0.01, 0.1));
        double phase = draws.angle() + StrictMath.atan2(force[1], force[0]);
        boolean middle = draws.chance(0.5);
        Excitation once = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(once, rotor, middle ? 0.5 : draws.uniform(-0.3, 1.3), 1, phase);
        double along = middle ? draws.uniform(0, 0.2) : draws.uniform(0.4, 1.5);
        RotorForces.axial(once, rotor, along, -along * draws.uniform(0.5, 1), phase + draws.normal(0, 0.4));
        Excitation twice = scene.forces(2 * rotor.ratio(), 0);
        double small = middle ? draws.uniform(0, 0.1) : draws.uniform(0, 0.6);
        RotorForces.along(twice, rotor, draws.uniform(0, 1), draws.angle(), small, draws.angle());
        RotorForces.axial(twice, rotor, small * along, -small * along, draws.angle());
        scene.addFault(Cause.reaching(FaultModels.level(draws)).with(once).with(twice));
        return rotor.owner();
    }

    /**
     * Force of a bowed shaft on rigid bearings over stiffness times bow: {@code (r² - 2iζr)/(1 - r² + 2iζr)}, which
     * is how far the rotor moves away from its bow. Below the critical speed it grows as the square of the speed.
     *
     * @param r speed over critical speed
     * @param damping damping ratio
     * @return real and imaginary part
     * @see "J. C. Nicholas, E. J. Gunter, P. E. Allaire, J. Eng. Power 98 (1976): response of a bowed rotor (from
     *     memory)"
     */
    static double[] bowForce(double r, double damping) {
        double re = r * r;
        double im = -2 * damping * r;
        double denRe = 1 - r * r;
        double denIm = 2 * damping * r;
        double square = denRe * denRe + denIm * denIm;
        return new double[] {(re * denRe + im * denIm) / square, (im * denRe - re * denIm) / square};
    }

    /**
     * The belt pulls more where the pulley stands out: a force along the belt once a turn, at the pulley beside a
     * bearing.
     */
    static String eccentricPulley(Scene scene, Draws draws) {
        PlanParts.Drive belt = scene.plan().belt().orElseThrow();
        boolean driving = draws.chance(0.5) && scene.plan().isMeasured(belt.drivingHousing())
                || !scene.plan().isMeasured(belt.drivenHousing());
        PlanParts.Rotor eccentric = scene.parts().rotors().get(driving ? belt.driving() : belt.driven());
        Cause cause = Cause.reaching(FaultModels.level(draws));
        for (int n = 1; n <= 2; n++) {
            Excitation forces = scene.forces(n * eccentric.ratio(), 0);
            double size = n == 1 ? 1 : draws.uniform(0, 0.3);
            double phase = draws.angle();
            pull(forces, scene.parts().rotors().get(belt.driving()), belt.drivingHousing(), belt.angle(), size, phase,
                    draws);
            pull(forces, scene.parts().rotors().get(belt.driven()), belt.drivenHousing(), belt.angle(), -size, phase,
                    draws);
            cause.with(forces);
        }
        scene.addFault(cause);
        return eccentric.owner();
    }

    /** The pulley sits beyond the bearing, so that the far bearing is pulled the other way. */
    static void pull(Excitation forces, PlanParts.Rotor rotor, int near, double angle, double size, double phase,
            Draws draws) {
        double beyond = draws.uniform(1.1, 1.3);
        RotorForces.along(forces, rotor, near == rotor.second() ? beyond : 1 - beyond, angle, size, phase);
    }

    /**
     * A mode of the casing comes close to the speed, as its support softens or the speed was changed: what is left of
     * unbalance is then large there. One degree of freedom: {@code 1/(1 - r² + 2iζr)}.
     */
    static String resonance(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = measured(scene, draws);
        int housing = end(scene, rotor, draws);
        int at = Excitation.DIRECTIONS * housing + (draws.chance(0.6) ? Excitation.HORIZONTAL : Excitation.VERTICAL);
        List<Structure.Mode> modes = scene.structure().modes();
        int moved = IntStream.range(0, modes.size()).filter(i -> modes.get(i).hertz() < 8 * scene.hertz(rotor)).boxed()
                .max((one, other) -> Double.compare(Math.abs(modes.get(one).shape()[at]),
                        Math.abs(modes.get(other).shape()[at]))).orElse(0);
        scene.change(scene.structure().with(moved, modes.get(moved).at(scene.hertz(rotor) * draws.normal(1, 0.025),
                draws.logUniform(0.008, 0.03))));
        Excitation forces = scene.forces(rotor.ratio(), 0);
        RotorForces.rotating(forces, rotor, rotor.plane(), 1, draws.angle());
        RotorForces.couple(forces, rotor, draws.uniform(0, 0.4), draws.angle());
        scene.addFault(Cause.reaching(FaultModels.level(draws)).with(forces));
        return rotor.owner();
    }
}
