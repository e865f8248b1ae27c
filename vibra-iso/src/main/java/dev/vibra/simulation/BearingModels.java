package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import java.util.TreeSet;

/** Damage of rolling bearings, by the model of {@link dev.vibra.bearing.synthesis.BearingSignal}. */
final class BearingModels {
    private BearingModels() {}

    static PlanParts.Rotor rotorAt(MachinePlan plan, int housing) {
        return plan.parts().rotors().stream().filter(one -> one.first() == housing
                || one.second() == housing).findFirst()
                .orElseThrow();
    }

    /** A spot on an element knocks; from hardly heard to far above the noise. */
    static String element(Scene scene, Draws draws, BearingElement element) {
        int housing = draws.pick(List.copyOf(new TreeSet<>(scene.parts().bearings().keySet())));
        RotationSpeed speed = RotationSpeed.ofHertz(scene.hertz(rotorAt(scene.plan(), housing)));
        KinematicFrequencies rates = scene.parts().bearings().get(housing).frequencies(RotatingRing.INNER, speed);
        scene.addFault(Cause.scaledBy(1).with(new Knocks(KnockTrain.bearing(rates, element, draws), housing,
                draws.logUniform(1.5, 60))));
        return scene.parts().housings().get(housing).id();
    }
}
