package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;

/**
 * The vibration of a sound machine: what is left of unbalance and misalignment, blades, teeth, magnetism, belts,
 * bearings and now and then a neighbour. Sizes are parts of the boundary B/C, log-normal, so that nineteen of twenty
 * sound machines are in zone A or B (an assumption; no published counts).
 */
final class Health {
    private final Scene scene;
    private final Draws draws;

    private Health(Scene scene, Draws draws) {
        this.scene = scene;
        this.draws = draws;
    }

    static void addTo(Scene scene, Draws draws) {
        Health health = new Health(scene, draws);
        PlanParts parts = scene.parts();
        for (int i = 0; i < parts.rotors().size(); i++) {
            health.addRotor(i, parts.rotors().get(i), i == 0 ? 1 : 0.8);
        }
        parts.links().forEach(health::addCoupling);
        health.addMotor();
        if (parts.blades() != null) {
            health.addBlades(parts.blades());
        }
        for (int i = 0; i < parts.stages().size(); i++) {
            health.addStage(i);
        }
        if (parts.belt() != null) {
            scene.addSound("belt", FlowModels.belt(scene, draws, Cause.reaching(draws.logNormal(0.03, 0.6)))
                    .wandering(Wander.of(draws.uniform(0.02, 0.15), 1, draws)));
        }
        parts.bearings().forEach(health::addBearing);
        if (draws.chance(0.15)) {
            scene.addSound("neighbour", FlowModels.neighbour(scene, draws, Cause.reaching(draws.logNormal(0.05, 0.6))));
        }
    }

    /** Residual unbalance, and a few multiples that any machine with clearances has. */
    private void addRotor(int index, PlanParts.Rotor rotor, double part) {
        Excitation first = scene.forces(rotor.ratio(), 0);
        double phase = draws.angle();
        RotorForces.rotating(first, rotor, rotor.plane(), 1, phase);
        RotorForces.couple(first, rotor, draws.uniform(0, 0.5), draws.angle());
        RotorForces.axial(first, rotor, draws.uniform(0, 0.15), draws.uniform(0, 0.15), draws.angle());
        scene.addSound("unbalance " + index, Cause.reaching(part * draws.logNormal(0.27, 0.52)).with(first));
        for (int n = 2; n <= 4; n++) {
            Excitation multiple = scene.forces(n * rotor.ratio(), 0);
            RotorForces.along(multiple, rotor, draws.uniform(0.2, 0.8), draws.angle(), 1, draws.angle());
            RotorForces.axial(multiple, rotor, draws.uniform(0, 0.2), draws.uniform(0, 0.2), draws.angle());
            scene.addSound(n + " times " + index, Cause.reaching(draws.logNormal(0.045 / (n - 1), 0.8)).with(multiple));
        }
    }

    private void addCoupling(PlanParts.Link link) {
        scene.addSound("coupling", CouplingModels.reaction(scene, link, draws, draws.uniform(0, 0.6))
                .reachingInstead(draws.logNormal(0.08, 0.7)));
    }

    /** Twice the line frequency: always there, strongest with two poles. */
    private void addMotor() {
        double median = scene.parts().supply().mainHertz() > 0.85 * scene.parts().supply().lineHertz() ? 0.09 : 0.04;
        Cause cause = MotorModels.twiceLine(scene, draws, draws.logNormal(median, 0.6));
        MotorModels.turningGap(draws, cause, draws.logUniform(0.003, 0.15));
        scene.addSound("twice line", cause);
        Cause unbalance = scene.sound("unbalance 0").orElseThrow();
        Cause sway = Cause.scaledBy(scene.factorOfSound(unbalance));
        MotorModels.sway(scene, draws, unbalance.excitations().get(0), sway, draws.logUniform(0.001, 0.05), 1);
        scene.addSound("slip", sway);
    }

    private void addBlades(PlanParts.Blades blades) {
        scene.addSound("blades", FlowModels.passing(scene, draws, draws.logNormal(0.06, 0.7), draws.uniform(0, 0.12)));
    }

    private void addStage(int index) {
        PlanParts.Stage stage = scene.parts().stages().get(index);
        scene.addSound("mesh " + index, GearModels.mesh(scene, stage, draws, GearModels.sound(draws))
                .reachingInstead(draws.logNormal(0.09, 0.6)));
    }

    /**
     * Varying compliance: rolling elements pass the load at the rate of the outer race.
     *
     * @see "C. S. Sunnersjö, J. Sound Vib. 58 (1978) 363-373 (from memory, unverified)"
     */
    private void addBearing(int housing, BearingGeometry geometry) {
        PlanParts.Rotor rotor = BearingModels.rotorAt(scene.plan(), housing);
        KinematicFrequencies orders = geometry.multiples(RotatingRing.INNER);
        Excitation pass = scene.forces(orders.outerRaceHertz() * rotor.ratio() * draws.normal(1, 0.004), 0);
        pass.push(housing, Excitation.VERTICAL, 1, draws.angle()).push(housing, Excitation.HORIZONTAL, 0.4,
                draws.angle());
        scene.addSound("compliance " + housing, Cause.reaching(draws.logNormal(0.006, 0.6)).with(pass));
    }
}
