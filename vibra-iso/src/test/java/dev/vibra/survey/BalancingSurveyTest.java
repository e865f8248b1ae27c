package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.Corrections;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.RotorData;
import dev.vibra.survey.machine.TrialRun;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The balancing job of a description against a published example. */
class BalancingSurveyTest {
    /**
     * S. S. Rao, Mechanical Vibrations, two-plane balancing of a turbine rotor; inputs and answers recalled from the
     * textbook, reproduced to all printed digits by computation. Ounces are entered as grams: masses only scale.
     */
    private static BalancingSheet rao(List<Phasor> finalRun) {
        return new BalancingSheet(600, Unit.MIL, Detector.ZERO_TO_PEAK, false, List.of("A", "B"), List.of("L", "R"),
                List.of(new Phasor(8.5, 60), new Phasor(6.5, 205)),
                List.of(new TrialRun("L", 10, 270, 100, List.of(new Phasor(6, 125), new Phasor(4.5, 230))),
                        new TrialRun("R", 12, 180, 100, List.of(new Phasor(6, 35), new Phasor(10.5, 160)))),
                finalRun, Map.of(), Map.of());
    }

    private static MachineDescription machine(BalancingSheet sheet) {
        return MachineDescription.named("turbine").speed(RotationSpeed.ofRevolutionsPerMinute(600))
                .rotor(new RotorData(100.0, "G6.3", 2, null)).balancing(sheet).build();
    }

    @Test
    void reproducesThePublishedBalanceWeights() {
        Corrections corrections = BalancingSurvey.of(machine(rao(List.of()))).corrections().orElseThrow();
        assertEquals(10.0561, corrections.in("L").mass().grams(), 5e-5);
        assertEquals(325.5548, corrections.in("L").mass().angleDegrees(), 5e-5);
        assertEquals(5.8774, corrections.in("R").mass().grams(), 5e-5);
        assertEquals(68.2559, corrections.in("R").mass().angleDegrees(), 5e-5);
        corrections.predicted().forEach(residual -> assertEquals(0, residual.amplitude(), 1e-9));
    }

    @Test
    void withoutFinalRunTheResidualIsNotDetermined() {
        BalancingSurvey balancing = BalancingSurvey.of(machine(rao(List.of())));
        assertTrue(balancing.verification().isEmpty());
        assertEquals("[residual unbalance: not determined, there is no final run]", balancing.omissions().toString());
        // ISO 21940-11: U_per = 1000·G·m/Ω = 6.3e3·100/(2π·10) g·mm.
        assertEquals(6.3e3 * 100 / (2 * Math.PI * 10), balancing.tolerance().orElseThrow().gramMillimetres(), 0.01);
    }

    @Test
    void aFinalRunIsHeldAgainstTheGrade() {
        BalancingSurvey balancing =
                BalancingSurvey.of(machine(rao(List.of(new Phasor(0.1, 10), new Phasor(0.1, 20)))));
        var verification = balancing.verification().orElseThrow();
        assertEquals(2, verification.residualUnbalance().size());
        assertTrue(verification.gradeReached().orElseThrow().held());
        assertEquals(List.of(), balancing.omissions());
    }

    @Test
    void readingsThatTellNothingAreNotDeterminedWithTheReason() {
        List<Phasor> initial = List.of(new Phasor(5, 30), new Phasor(4, 80));
        List<Phasor> trial = List.of(new Phasor(3, 70), new Phasor(2, 10));
        BalancingSheet sheet = new BalancingSheet(Double.NaN, Unit.MM_PER_S, Detector.RMS, true, List.of("A", "B"),
                List.of("P", "Q"), initial, List.of(new TrialRun("P", 10, 0, Double.NaN, trial),
                new TrialRun("Q", 10, 0, Double.NaN, trial)), List.of(), Map.of(), Map.of());
        BalancingSurvey balancing = BalancingSurvey.of(MachineDescription.named("m").balancing(sheet).build());
        assertTrue(balancing.corrections().isEmpty(), balancing::toString);
        assertEquals("balancing", balancing.omissions().get(0).part());
    }
}
