package dev.vibra.simulation;

/**
 * Teeth in mesh: {@code Σ A_m·(1 + a_m(t))·cos(2π·m·z·f·t + φ_m + b_m(t))} with {@code a} and {@code b} repeating
 * with a wheel; to first order a Fourier term of {@code a + i·b} is a line beside the mesh.
 *
 * @see "P. D. McFadden, J. Vib. Acoust. 108 (1986): amplitude and phase of the mesh at a cracked tooth (from memory);
 *     W. Wang, Mech. Syst. Signal Process. 15 (2001): resonance at a crack (abstract read)"
 */
final class GearModels {
    private static final int MULTIPLES = 3;
    private static final int PAIRS = 3;

    private GearModels() {}

    /**
     * How a stage meshes.
     *
     * @param sizes force of the mesh and its multiples
     * @param pinion first-order modulation by the driving wheel, amplitude part
     * @param wheel the same by the driven wheel
     * @param fall modulation at a multiple of a wheel's speed over that at the multiple before
     */
    record Meshing(double[] sizes, double pinion, double wheel, double fall) {}

    /** Multiples fall, wheels run out a little. */
    static Meshing sound(Draws draws) {
        return new Meshing(new double[] {1, draws.logUniform(0.1, 0.7), draws.logUniform(0.05, 0.4)},
                draws.logUniform(0.003, 0.12), draws.logUniform(0.003, 0.12), draws.uniform(0.2, 0.5));
    }

    /**
     * Mesh with pairs of lines at each wheel's speed; amplitude and phase modulation together make pairs
     * unequal.
     */
    static Cause mesh(Scene scene, PlanParts.Stage stage, Draws draws, Meshing meshing) {
        Cause cause = Cause.reaching(1);
        double angle = draws.angle();
        for (int m = 1; m <= MULTIPLES; m++) {
            Excitation carrier = carrier(scene, stage, m, angle, meshing.sizes[m - 1], draws);
            cause.with(carrier);
            double pinion = scene.parts().rotors().get(stage.pinion()).ratio();
            double wheel = scene.parts().rotors().get(stage.wheel()).ratio();
            rows(cause, carrier, pinion, meshing.pinion, meshing.fall, draws);
            rows(cause, carrier, wheel, meshing.wheel, meshing.fall, draws);
        }
        return cause;
    }

    /** Along the line of action, opposed at the two wheels; helical teeth push along the shafts too. */
    private static Excitation carrier(Scene scene, PlanParts.Stage stage, int multiple, double angle, double size,
            Draws draws) {
        PlanParts.Rotor pinion = scene.parts().rotors().get(stage.pinion());
        PlanParts.Rotor wheel = scene.parts().rotors().get(stage.wheel());
        Excitation forces = scene.forces(multiple * stage.pinionTeeth() * pinion.ratio(), 0);
        double phase = draws.angle();
        RotorForces.along(forces, pinion, pinion.plane(), angle, size, phase);
        RotorForces.along(forces, wheel, wheel.plane(), angle, -size, phase);
        double along = size * draws.uniform(0, 0.5);
        RotorForces.axial(forces, pinion, along, along, phase);
        return RotorForces.axial(forces, wheel, -along, -along, phase);
    }

    /** Teeth that differ modulate at multiples of the wheel's speed too. */
    private static void rows(Cause cause, Excitation carrier, double ratio, double depth, double fall, Draws draws) {
        for (int k = 1; k <= PAIRS; k++) {
            beside(cause, carrier, k * ratio, depth * StrictMath.pow(fall, k - 1) * draws.uniform(0.5, 1), draws);
        }
    }

    private static void beside(Cause cause, Excitation carrier, double ratio, double depth, Draws draws) {
        double lag = draws.angle();
        double swing = depth * draws.uniform(0.2, 1);
        double quarter = draws.angle();
        for (int sense = -1; sense <= 1; sense += 2) {
            // (a + i·b·e^(iq))/2 above the carrier, (a - ...)/2 below: amplitude part a, phase part b.
            double re = depth + sense * swing * StrictMath.cos(quarter);
            double im = sense * swing * StrictMath.sin(quarter);
            cause.with(carrier.at(carrier.order() + sense * ratio, 0, 0.5 * Math.hypot(re, im),
                    StrictMath.atan2(im, re) + sense * lag));
        }
    }

    /** Worn or misaligned teeth: the mesh grows, its multiples too, and the lines at the wheels' speeds beside them. */
    static String worn(Scene scene, Draws draws) {
        PlanParts.Stage stage = draws.pick(scene.parts().stages());
        Meshing meshing = new Meshing(new double[] {1, draws.logUniform(0.3, 3), draws.logUniform(0.15, 2)},
                draws.logUniform(0.02, 0.5), draws.logUniform(0.02, 0.5), draws.uniform(0.3, 0.9));
        Cause cause = mesh(scene, stage, draws, meshing).reachingInstead(FaultModels.lineLevel(draws));
        if (draws.chance(0.5)) {
            cause.wandering(Wander.of(draws.uniform(0.02, 0.15), 1, draws));
        }
        scene.addFault(cause);
        return stage.owner();
    }

    /**
     * One tooth gives way: amplitude and phase of the mesh dip over one or two teeth once a turn, {@code
     * exp(-(θ/w)²)} with Fourier terms {@code w/(2√π)·exp(-(k·w/2)²)}, and a knock rings the unit.
     */
    static String tooth(Scene scene, Draws draws) {
        int index = draws.between(0, scene.parts().stages().size() - 1);
        PlanParts.Stage stage = scene.parts().stages().get(index);
        boolean onPinion = draws.chance(0.6);
        PlanParts.Rotor rotor = scene.parts().rotors().get(onPinion ? stage.pinion() : stage.wheel());
        int teeth = onPinion ? stage.pinionTeeth() : stage.wheelTeeth();
        double width = 2 * Math.PI / teeth * draws.uniform(0.8, 2);
        double depth = draws.logUniform(0.3, 3);
        double turn = draws.uniform(0, 1.2);
        Cause mesh = scene.sound("mesh " + index).orElseThrow();
        Cause cause = Cause.scaledBy(scene.factorOfSound(mesh));
        for (Excitation carrier : mesh.excitations().stream().filter(one -> isCarrier(one, scene, stage)).toList()) {
            for (int k = -12; k <= 12; k++) {
                double size = depth * dip(width, k);
                cause.with(carrier.at(carrier.order() + k * rotor.ratio(), 0, k == 0 ? 1e-3 * size : size,
                        Math.PI - turn + k * 0.7));
            }
        }
        int housing = scene.plan().isMeasured(rotor.first()) ? rotor.first() : rotor.second();
        scene.addFault(cause.with(new Knocks(KnockTrain.turning(scene.hertz(rotor), draws, 0.0005), housing,
                draws.logUniform(0.5, 40))));
        return stage.owner();
    }

    /** Fourier term of order k of a dip of Gaussian shape once a turn. */
    static double dip(double width, int k) {
        return width / (2 * Math.sqrt(Math.PI)) * StrictMath.exp(-0.25 * k * k * width * width);
    }

    private static boolean isCarrier(Excitation one, Scene scene, PlanParts.Stage stage) {
        double multiple = one.order() / (stage.pinionTeeth() * scene.parts().rotors().get(stage.pinion()).ratio());
        return Math.abs(multiple - Math.rint(multiple)) < 1e-9;
    }
}
