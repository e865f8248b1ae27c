package dev.vibra.simulation;

/**
 * Misalignment. The published record conflicts on which lines it makes (P. Pennacchi et al., Mech. Syst. Signal
 * Process. 30 (2012); P. N. Saavedra, D. E. Ramirez, Proc. IMechE C 218 (2004); openings read), so the ratio of 2× to
 * 1× is drawn evenly by its logarithm from 0.1 to 5. What is certain is kept: the coupling pushes the parts at its
 * two sides apart.
 */
final class CouplingModels {
    private CouplingModels() {}

    /**
     * An offset: radial forces lead, the line of the offset stands still in space or turns with a half of the
     * coupling.
     */
    static String parallel(Scene scene, Draws draws) {
        return added(scene, draws, draws.uniform(0, 0.3));
    }

    /** An angle: bending moments and forces along the shaft lead. */
    static String angular(Scene scene, Draws draws) {
        return added(scene, draws, draws.logUniform(0.8, 4));
    }

    private static String added(Scene scene, Draws draws, double axial) {
        PlanParts.Link link = scene.plan().coupling().orElseThrow();
        scene.addFault(reaction(scene, link, draws, axial).reachingInstead(FaultModels.level(draws)));
        return link.owner();
    }

    /** Reaction with a share of forces along the shaft; the far bearings take a part of the moment the other way. */
    static Cause reaction(Scene scene, PlanParts.Link link, Draws draws, double axial) {
        Cause cause = Cause.reaching(1);
        double second = draws.logUniform(0.1, 5);
        // Of a joint that swings, 4× is to 2× as 2·tan²(β/2) in torque; of other couplings nothing is known.
        double fourth = draws.chance(0.2) ? 2 * jointSwing(draws.uniform(2, 15)) : draws.uniform(0, 0.15);
        double[] sizes = {1, second, draws.uniform(0, 0.3) * Math.max(1, second), fourth * second};
        double angle = draws.angle();
        double turning = draws.uniform(0, 1);
        double far = draws.uniform(0.1, 0.5);
        for (int n = 1; n <= sizes.length; n++) {
            double phase = draws.angle();
            // What turns with the shaft loses in velocity what it gains in force: sizes are those of the forces.
            Excitation forces = scene.forces(n, 0);
            across(forces, link.before(), link.behind(), angle, turning, sizes[n - 1], phase);
            across(forces, other(scene, link.driving(), link.before()), other(scene, link.driven(), link.behind()),
                    angle,
                    turning, -far * sizes[n - 1], phase);
            double along = axial * sizes[n - 1] * (n == 1 ? 1 : draws.uniform(0.2, 0.8));
            double lag = draws.angle();
            forces.push(link.before(), Excitation.AXIAL, along, lag);
            forces.push(link.behind(), Excitation.AXIAL, -along, lag);
            cause.with(forces);
        }
        return cause;
    }

    private static int other(Scene scene, int rotor, int housing) {
        PlanParts.Rotor one = scene.parts().rotors().get(rotor);
        return one.first() == housing ? one.second() : one.first();
    }

    /** One part along a line that stands still, the rest turning. */
    private static void across(Excitation forces, int before, int behind, double angle, double turning, double size,
            double phase) {
        forces.along(before, angle, (1 - turning) * size, phase).along(behind, angle, -(1 - turning) * size, phase);
        forces.rotating(before, turning * size, phase).rotating(behind, -turning * size, phase);
    }

    /**
     * A bearing ring that stands askew in its housing shakes it along the shaft once and twice a turn (common
     * practice, no source; the ring's tilt as a path that the elements climb twice a turn is kinematics).
     */
    static String bearing(Scene scene, Draws draws) {
        PlanParts.Rotor rotor = RotorModels.measured(scene, draws);
        int housing = RotorModels.end(scene, rotor, draws);
        Cause cause = Cause.reaching(FaultModels.level(draws));
        double second = draws.logUniform(0.1, 3);
        for (int n = 1; n <= 3; n++) {
            double size = n == 1 ? 1 : n == 2 ? second : draws.uniform(0, 0.2);
            Excitation forces = scene.forces(n * rotor.ratio(), 0);
            forces.push(housing, Excitation.AXIAL, size, draws.angle());
            forces.along(housing, draws.angle(), size * draws.logUniform(0.1, 2), draws.angle());
            cause.with(forces);
        }
        scene.addFault(cause);
        return rotor.owner();
    }

    /**
     * Amplitude in rad at twice a turn of the angle by which a universal joint swings: {@code tan²(β/2)}; at four times
     * it is {@code tan⁴(β/2)/2}.
     *
     * @see "kinematics of the universal joint: ω2/ω1 = cos β/(1 - sin²β·cos²θ)"
     */
    static double jointSwing(double degrees) {
        double tangent = StrictMath.tan(StrictMath.toRadians(degrees) / 2);
        return tangent * tangent;
    }
}
