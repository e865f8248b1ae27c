package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingElement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Predicate;

/** The forward models by the ids of the table of faults: which machines can have a fault, and what it then does. */
final class FaultModels {
    private static final Map<String, Model> MODELS = models();

    private FaultModels() {}

    /**
     * A model.
     *
     * @param needs what a machine must have
     * @param apply adds the causes to a scene and tells what has the fault
     */
    record Model(Predicate<MachinePlan> needs, BiFunction<Scene, Draws, String> apply) {
        boolean fits(MachinePlan plan) {
            return needs.test(plan);
        }
    }

    static Model of(String fault) {
        Model model = MODELS.get(Objects.requireNonNull(fault, "fault"));
        if (model == null) {
            throw new IllegalArgumentException("fault must be one of faultIds(): " + fault);
        }
        return model;
    }

    static TreeSet<String> ids() {
        return new TreeSet<>(MODELS.keySet());
    }

    /** How large the vibration of a fault is, as part of the boundary B/C: from visible to far into zone D. */
    static double level(Draws draws) {
        return draws.logUniform(0.5, 3);
    }

    /**
     * The same where a line of its own grows, which is seen long before it is the largest: from several times what it
     * is in health.
     */
    static double lineLevel(Draws draws) {
        return draws.logUniform(0.15, 2.5);
    }

    private static Map<String, Model> models() {
        Map<String, Model> models = new LinkedHashMap<>();
        addRotors(models);
        addJoints(models);
        addDrives(models);
        return Map.copyOf(models);
    }

    private static void addRotors(Map<String, Model> models) {
        Predicate<MachinePlan> any = plan -> true;
        Predicate<MachinePlan> coupled = plan -> plan.coupling().isPresent();
        models.put("unbalance/static", new Model(plan -> plan.parts().rotors().stream().anyMatch(rotor ->
                !rotor.isOverhung() && plan.isMeasured(rotor)), RotorModels::unbalanceStatic));
        models.put("unbalance/couple", new Model(plan -> plan.parts().rotors().stream().anyMatch(plan::showsBothEnds),
                RotorModels::unbalanceCouple));
        models.put("unbalance/overhung", new Model(plan -> plan.parts().rotors().stream().anyMatch(rotor ->
                rotor.isOverhung() && plan.isMeasured(rotor)), RotorModels::unbalanceOverhung));
        models.put("bent-shaft", new Model(any, RotorModels::bow));
        models.put("resonance", new Model(any, RotorModels::resonance));
        models.put("misalignment/parallel", new Model(coupled, CouplingModels::parallel));
        models.put("misalignment/angular", new Model(coupled, CouplingModels::angular));
        models.put("misalignment/bearing", new Model(any, CouplingModels::bearing));
    }

    private static void addJoints(Map<String, Model> models) {
        Predicate<MachinePlan> any = plan -> true;
        models.put("looseness/foot", new Model(any, LooseModels::foot));
        models.put("looseness/pedestal", new Model(any, LooseModels::pedestal));
        models.put("looseness/rotating-part", new Model(any, LooseModels::rotatingPart));
        models.put("soft-foot", new Model(any, LooseModels::softFoot));
        models.put("rub", new Model(any, LooseModels::rub));
    }

    private static void addDrives(Map<String, Model> models) {
        Predicate<MachinePlan> motor = MachinePlan::hasMotorSite;
        Predicate<MachinePlan> geared = plan -> !plan.parts().stages().isEmpty();
        Predicate<MachinePlan> belted = plan -> plan.belt().isPresent();
        models.put("eccentric-pulley", new Model(belted, RotorModels::eccentricPulley));
        models.put("eccentric-rotor", new Model(motor, MotorModels::eccentricRotor));
        models.put("twice-line-frequency", new Model(motor, MotorModels::twiceLineHigh));
        models.put("broken-rotor-bars", new Model(motor, MotorModels::brokenBars));
        models.put("gear-mesh", new Model(geared, GearModels::worn));
        models.put("gear-tooth", new Model(geared, GearModels::tooth));
        models.put("vane-passing", new Model(plan -> plan.parts().blades() != null, FlowModels::passingHigh));
        models.put("belt", new Model(belted, FlowModels::beltWorn));
        models.put("foreign-line", new Model(plan -> true, FlowModels::foreign));
        for (BearingElement element : BearingElement.values()) {
            models.put("rolling-bearing-" + element.toString().replace(' ', '-'), new Model(plan ->
                    !plan.parts().bearings().isEmpty(), (scene, draws) -> BearingModels.element(scene, draws,
                    element)));
        }
    }
}
