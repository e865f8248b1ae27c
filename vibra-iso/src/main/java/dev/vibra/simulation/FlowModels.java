package dev.vibra.simulation;

/** Blades, belts and neighbours. */
final class FlowModels {
    private static final int BELT_LINES = 5;

    private FlowModels() {}

    /**
     * Blades that pass a tongue or guide vanes push radially at number times speed and its multiples; uneven blades
     * leave lines at the speed beside it.
     *
     * @see "C. E. Brennen, Hydrodynamics of Pumps (1994) (opening read); kinematics"
     */
    static Cause passing(Scene scene, Draws draws, double level, double uneven) {
        PlanParts.Blades blades = scene.parts().blades();
        PlanParts.Rotor rotor = scene.parts().rotors().get(blades.rotor());
        Cause cause = Cause.reaching(level);
        double angle = draws.angle();
        for (int n = 1; n <= 2; n++) {
            Excitation forces = scene.forces(n * blades.number() * rotor.ratio(), 0);
            double size = n == 1 ? 1 : draws.logUniform(0.05, 0.8);
            RotorForces.along(forces, rotor, rotor.plane(), angle, size, draws.angle());
            RotorForces.axial(forces, rotor, size * draws.uniform(0, 0.4), size * draws.uniform(0, 0.4), draws.angle());
            cause.with(forces);
            for (int sense = -1; sense <= 1; sense += 2) {
                cause.with(forces.at(forces.order() + sense * rotor.ratio(), 0, uneven * draws.uniform(0.3, 1),
                        draws.angle()));
            }
        }
        return cause;
    }

    static String passingHigh(Scene scene, Draws draws) {
        Cause cause = passing(scene, draws, FaultModels.lineLevel(draws), draws.chance(0.4) ? draws.uniform(0.1, 0.6)
                : draws.uniform(0, 0.1));
        scene.addFault(cause.wandering(Wander.of(draws.uniform(0.01, 0.2), 2, draws)));
        return "blades";
    }

    /**
     * A bad place of a belt passes two pulleys in each turn of the belt, not half a turn apart: multiples k of its
     * rate have the size {@code |1 + q·e^(-2πikp)|}, p the way between the passes. It pulls the shafts along the
     * belt, towards each other.
     *
     * @see "kinematics; that the lines are unsteady is common practice, no source"
     */
    static Cause belt(Scene scene, Draws draws, Cause cause) {
        PlanParts.Drive belt = scene.parts().belt();
        double way = draws.uniform(0.35, 0.5);
        double second = draws.uniform(0.5, 1);
        double fall = draws.uniform(0.45, 0.9);
        double phase = draws.angle();
        for (int k = 1; k <= BELT_LINES; k++) {
            double size = StrictMath.pow(fall, k - 1) * passes(second, way, k);
            Excitation forces = scene.forces(k * belt.order(), 0);
            RotorModels.pull(forces, scene.parts().rotors().get(belt.driving()), belt.drivingHousing(), belt.angle(),
                    size,
                    k * phase, draws);
            RotorModels.pull(forces, scene.parts().rotors().get(belt.driven()), belt.drivenHousing(), belt.angle(),
                    -size,
                    k * phase, draws);
            cause.with(forces);
        }
        return cause;
    }

    /** Size of the multiple k of two pulses in a turn, the second of size q a part p of the turn later. */
    static double passes(double q, double p, int k) {
        double turned = 2 * Math.PI * k * p;
        return Math.hypot(1 + q * StrictMath.cos(turned), q * StrictMath.sin(turned));
    }

    static String beltWorn(Scene scene, Draws draws) {
        scene.addFault(belt(scene, draws, Cause.reaching(FaultModels.lineLevel(draws)))
                .wandering(Wander.of(draws.uniform(0.1, 0.5), 1.5, draws)));
        return scene.parts().belt().owner();
    }

    /**
     * A neighbour's 1×, and sometimes its 2×, comes through the base: every housing shakes, the bearings' pattern
     * is none.
     */
    static Cause neighbour(Scene scene, Draws draws, Cause cause) {
        cause.from(Cause.Origin.OUTSIDE);
        double main = scene.mainHertz();
        double hertz = draws.chance(0.35) ? main * (1 + draws.sign() * draws.logUniform(0.006, 0.1))
                : draws.logUniform(11, 90);
        for (int n = 1; n <= (draws.chance(0.3) ? 2 : 1); n++) {
            Excitation forces = scene.forces(0, n * hertz);
            double size = n == 1 ? 1 : draws.uniform(0.1, 0.6);
            for (int housing = 0; housing < scene.plan().housings(); housing++) {
                for (int direction = 0; direction < Excitation.DIRECTIONS; direction++) {
                    forces.push(housing, direction, size * draws.normal(0, 1), draws.normal(0, 0.4));
                }
            }
            cause.with(forces);
        }
        return cause;
    }

    static String foreign(Scene scene, Draws draws) {
        Cause cause = neighbour(scene, draws, Cause.reaching(FaultModels.lineLevel(draws)));
        scene.addFault(draws.chance(0.3) ? cause.wandering(Wander.of(draws.uniform(0.02, 0.3), 0.5, draws)) : cause);
        return "machine";
    }
}
