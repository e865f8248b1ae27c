package dev.vibra.simulation;

/**
 * Magnetic forces of induction motors. They follow the line frequency {@code f1} and the slip {@code s}; the slip
 * speed times the number of poles is {@code 2·s·f1}.
 *
 * @see "P. L. Timar, Noise and Vibration of Electrical Machines (1989); D. G. Dorrell et al., IEEE Trans. Ind. Appl. 33
 *     (1997): force waves of air gaps (both from memory)"
 */
final class MotorModels {
    private MotorModels() {}

    /** Twice the line frequency at both housings of the motor, along a line that stands still. */
    static Cause twiceLine(Scene scene, Draws draws, double level) {
        PlanParts.Rotor motor = scene.plan().motor();
        double line = scene.parts().supply().lineHertz();
        Cause cause = Cause.reaching(level).from(Cause.Origin.MAGNETISM);
        double angle = draws.angle();
        for (int n = 1; n <= 2; n++) {
            Excitation forces = scene.forces(0, 2 * n * line);
            double size = n == 1 ? 1 : draws.uniform(0, 0.15);
            RotorForces.along(forces, motor, draws.uniform(0.2, 0.8), angle, size, draws.angle());
            RotorForces.axial(forces, motor, size * draws.uniform(0, 0.25), size * draws.uniform(0, 0.25),
                    draws.angle());
            cause.with(forces);
        }
        return cause;
    }

    /**
     * Uneven air gap, loose core or uneven phases: twice the line frequency grows; where the gap turns as well, lines
     * stand beside it at the speed, and 1× grows a little.
     */
    static String twiceLineHigh(Scene scene, Draws draws) {
        Cause cause = twiceLine(scene, draws, FaultModels.lineLevel(draws));
        boolean turns = draws.chance(0.4);
        double part = turns ? draws.logUniform(0.03, 0.3) : draws.logUniform(0.002, 0.03);
        turningGap(draws, cause, part);
        if (turns) {
            Excitation once = scene.forces(1, 0);
            RotorForces.rotating(once, scene.plan().motor(), draws.uniform(0.35, 0.65), part * draws.uniform(0.1, 0.7),
                    draws.angle());
            cause.with(once);
        }
        scene.addFault(cause);
        return "motor";
    }

    /** A narrow place of the gap that turns leaves lines at the speed beside twice the line frequency. */
    static void turningGap(Draws draws, Cause cause, double part) {
        Excitation line = cause.excitations().get(0);
        for (int sense = -1; sense <= 1; sense += 2) {
            cause.with(line.at(sense, line.offsetHertz(), part * draws.uniform(0.5, 1), draws.angle()));
        }
    }

    /** Torque that sways with the slip leaves pairs of lines beside a line of the motor's shaft. */
    static void sway(Scene scene, Draws draws, Excitation once, Cause cause, double depth, int pairs) {
        double hertz = scene.parts().supply().polePassHertz();
        double lag = draws.angle();
        double size = depth / 2;
        for (int k = 1; k <= pairs; k++) {
            cause.with(once.at(1, k * hertz, size, k * lag));
            cause.with(once.at(1, -k * hertz, size * draws.uniform(0.5, 1), -k * lag));
            size *= draws.uniform(0.2, 0.7);
        }
    }

    /**
     * A rotor eccentric in its bore pulls towards its narrow gap: 1×, turning, swaying with the slip at {@code
     * 2·s·f1} since the field that pulls slips past; and {@code 2·f1 ± 1×}. How much of either there is depends on
     * windings and saturation, so that it is drawn over two decades.
     *
     * @see "P. V. Jover Rodriguez et al., Electr. Eng. 90 (2008) (abstract read)"
     */
    static String eccentricRotor(Scene scene, Draws draws) {
        PlanParts.Rotor motor = scene.plan().motor();
        PlanParts.Supply supply = scene.parts().supply();
        Excitation once = scene.forces(1, 0);
        RotorForces.rotating(once, motor, draws.uniform(0.35, 0.65), 1, draws.angle());
        Cause cause = Cause.reaching(FaultModels.level(draws)).from(Cause.Origin.MAGNETISM).with(once);
        double depth = draws.logUniform(0.004, 0.6);
        double lag = draws.angle();
        cause.with(once.at(1, supply.polePassHertz(), depth / 2, lag));
        cause.with(once.at(1, -supply.polePassHertz(), depth / 2 * draws.uniform(0.3, 1), -lag));
        double beside = draws.logUniform(0.002, 0.4);
        cause.with(once.at(1, 2 * supply.lineHertz(), beside, draws.angle()));
        cause.with(once.at(-1, 2 * supply.lineHertz(), beside * draws.uniform(0.5, 1), draws.angle()));
        // A rotor that isn't round seldom lies in the middle of a round bore.
        Excitation twice = scene.forces(0, 2 * supply.lineHertz());
        RotorForces.along(twice, motor, draws.uniform(0.35, 0.65), draws.angle(), draws.logUniform(0.02, 3),
                draws.angle());
        cause.with(twice);
        scene.addFault(cause);
        return "motor";
    }

    /**
     * Broken bars sway torque and speed at {@code 2·s·f1}: what of unbalance there is at the motor gets pairs of
     * lines at that rate, the more the higher the load.
     *
     * @see "slip arithmetic; W. T. Thomson, P. Orpin, Turbomachinery Symp. (2002) (opening read)"
     */
    static String brokenBars(Scene scene, Draws draws) {
        PlanParts.Supply supply = scene.parts().supply();
        Cause unbalance = scene.sound("unbalance 0").orElseThrow();
        Excitation once = unbalance.excitations().get(0);
        double depth = draws.logUniform(0.1, 0.9) * supply.load();
        Cause cause = Cause.scaledBy(scene.factorOfSound(unbalance));
        sway(scene, draws, once, cause, depth, 4);
        Cause line = scene.sound("twice line").orElseThrow();
        Cause beside = Cause.scaledBy(scene.factorOfSound(line)).from(Cause.Origin.MAGNETISM);
        beside.with(line.excitations().get(0).at(0, 2 * supply.lineHertz() - supply.polePassHertz(), depth / 4,
                draws.angle()));
        scene.addFault(cause);
        scene.addFault(beside);
        return "motor";
    }
}
