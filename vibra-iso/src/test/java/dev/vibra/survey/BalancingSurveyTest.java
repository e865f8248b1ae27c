package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.Corrections;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.machine.Arrangement;
import dev.vibra.survey.machine.AxialSheet;
import dev.vibra.survey.machine.BalancingSheet;
import dev.vibra.survey.machine.MachineDescription;
import dev.vibra.survey.machine.Phasor;
import dev.vibra.survey.machine.RotorData;
import dev.vibra.survey.machine.SheetCoefficient;
import dev.vibra.survey.machine.SheetGeometry;
import dev.vibra.survey.machine.SheetMass;
import dev.vibra.survey.machine.SheetReading;
import dev.vibra.survey.machine.SheetRuns;
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
    private static BalancingSheet rao(SheetRuns runs, SheetGeometry geometry) {
        return new BalancingSheet(600, new SheetReading(Unit.MIL, Detector.ZERO_TO_PEAK, false, null),
                List.of("A", "B"), List.of("L", "R"), runs, geometry);
    }

    private static SheetRuns raoRuns() {
        return SheetRuns.of(List.of(new Phasor(8.5, 60), new Phasor(6.5, 205)),
                List.of(new TrialRun("L", 10, 270, 100, List.of(new Phasor(6, 125), new Phasor(4.5, 230))),
                        new TrialRun("R", 12, 180, 100, List.of(new Phasor(6, 35), new Phasor(10.5, 160)))));
    }

    private static BalancingSheet rao(List<Phasor> finalRun) {
        return rao(raoRuns().withFinal(finalRun), SheetGeometry.unknown());
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
        assertTrue(balancing.toRecord().orElseThrow().toString().contains("G6.3 held"));
        // What comes next cancels the final run: α·m = −V, checked with the coefficients themselves.
        Corrections trim = balancing.trim().orElseThrow();
        trim.predicted().forEach(left -> assertEquals(0, left.amplitude(), 1e-9));
        assertTrue(trim.addedTo().contains("its corrections left on and the trial masses off"), trim.addedTo());
        assertTrue(BalancingSurvey.of(machine(rao(List.of()))).trim().isEmpty());
    }

    /** The published influence coefficients (mil/oz, lead) instead of the trial runs give the published weights. */
    @Test
    void knownCoefficientsNeedNoTrialRuns() {
        List<List<SheetCoefficient>> influence = influence(Double.NaN);
        SheetRuns runs = new SheetRuns(List.of(), raoRuns().initial(), List.of(), false, influence, null,
                List.of(), List.of());
        Corrections corrections = BalancingSurvey.of(machine(rao(runs, SheetGeometry.unknown()))).corrections()
                .orElseThrow();
        assertEquals(10.0561, corrections.in("L").mass().grams(), 5e-4);
        assertEquals(325.5548, corrections.in("L").mass().angleDegrees(), 5e-3);
        assertEquals(5.8774, corrections.in("R").mass().grams(), 5e-4);
        assertTrue(corrections.remarks().stream().noneMatch(r -> r.code().startsWith("trial")));
        // With the scatter of the coefficients the ellipse grows; what a job with scatter tells can be told to the
        // next.
        SheetRuns aged = new SheetRuns(List.of(), raoRuns().initial(), List.of(), false, influence,
                ReadingScatter.of(0.05, 3), List.of(), List.of());
        double major = ellipse(aged);
        assertTrue(major > 1.5 * ellipse(runs), major + " and " + ellipse(runs));
        BalancingSurvey first = BalancingSurvey.of(machine(new BalancingSheet(600, new SheetReading(Unit.MIL,
                Detector.ZERO_TO_PEAK, false, ReadingScatter.of(0.03, 2)), List.of("A", "B"), List.of("L", "R"),
                raoRuns(), SheetGeometry.unknown())));
        assertTrue(first.influenceErrors().orElseThrow().perGram(0, 0) > 0.01);
        assertTrue(BalancingSurvey.of(machine(rao(List.of()))).influenceErrors().isEmpty());
        SheetRuns each = new SheetRuns(List.of(), raoRuns().initial(), List.of(), false, influence(0.05), null,
                List.of(),
                List.of());
        assertTrue(ellipse(each) > 1.5 * ellipse(runs), ellipse(each) + " and " + ellipse(runs));
        assertEquals("0.8071 ± 0.05 at 287.6°", each.influence().get(0).get(0).toString());
        assertEquals("0.8071 at 287.6°", influence.get(0).get(0).toString());
    }

    private static List<List<SheetCoefficient>> influence(double scatter) {
        return List.of(List.of(new SheetCoefficient(0.80711, 287.644, scatter),
                new SheetCoefficient(0.33131, 99.627, scatter)), List.of(new SheetCoefficient(0.30791, 76.856, scatter),
                new SheetCoefficient(0.62350, 302.099, scatter)));
    }

    private static double ellipse(SheetRuns runs) {
        return BalancingSurvey.of(machine(new BalancingSheet(600, new SheetReading(Unit.MIL, Detector.ZERO_TO_PEAK,
                false, ReadingScatter.of(0.03, 2)), List.of("A", "B"), List.of("L", "R"), runs,
                SheetGeometry.unknown()))).corrections().orElseThrow().uncertainty().orElseThrow().ofCorrection("L")
                .major();
    }

    /** With half the left weight really on, the reading is predicted for that, and half of it comes next. */
    @Test
    void massesThatReallyWentOnAreCounted() {
        Corrections planned = BalancingSurvey.of(machine(rao(List.of()))).corrections().orElseThrow();
        SheetRuns first = raoRuns();
        List<SheetMass> fitted = List.of(new SheetMass("L", 10.0561 / 2, 325.5548, Double.NaN),
                new SheetMass("R", 5.8774 * 2, 68.2559, 50));
        // Half of L's unbalance stays: half of α·U of the left plane, 10.0561 at 145.5548° with 0.80711 and 0.30791.
        List<Phasor> left = List.of(new Phasor(10.0561 / 2 * 0.80711, 145.5548 + 287.644 - 360),
                new Phasor(10.0561 / 2 * 0.30791, 145.5548 + 76.856));
        SheetRuns runs = new SheetRuns(List.of(), first.initial(), first.trials(), false, List.of(), null, fitted,
                left);
        BalancingSurvey balancing = BalancingSurvey.of(machine(rao(runs, SheetGeometry.unknown())));
        assertEquals(left.get(0).amplitude(), balancing.verification().orElseThrow().predicted().get(0).amplitude(),
                1e-3);
        assertEquals(List.of(), balancing.verification().orElseThrow().remarks());
        assertEquals(planned.in("L").mass().grams() / 2, balancing.trim().orElseThrow().in("L").mass().grams(), 1e-3);
        assertEquals(0, balancing.trim().orElseThrow().in("R").mass().grams(), 1e-3);
        SheetGeometry open = new SheetGeometry(Map.of(), Map.of(), Map.of(), null);
        List<TrialRun> bare = first.trials().stream().map(t -> new TrialRun(t.plane(), t.massGrams(), t.angleDegrees(),
                Double.NaN, t.readings())).toList();
        SheetRuns needy = new SheetRuns(List.of(), first.initial(), bare, false, List.of(), null, fitted, left);
        assertTrue(BalancingSurvey.of(machine(rao(needy, open))).corrections().isPresent());
        assertTrue(BalancingSurvey.of(machine(rao(needy, open))).verification().isEmpty());
        List<Omission> omissions = BalancingSurvey.of(machine(rao(needy, open))).omissions();
        assertEquals("final run: not determined, radiusMillimetres of plane \"R\" must be given to use a fitted mass"
                + " with a radius: R, 11.75 g at 68.26°", omissions.get(omissions.size() - 1).toString());
    }

    @Test
    void scatterPositionsAndPlacesReachTheJob() {
        SheetGeometry geometry = new SheetGeometry(Map.of("L", 100.0, "R", 100.0), Map.of("L", 12),
                Map.of("L", 25.5548), new AxialSheet(0, 1000, 400, Map.of("L", 200.0, "R", 700.0)));
        BalancingSheet sheet = new BalancingSheet(600, new SheetReading(Unit.MIL, Detector.ZERO_TO_PEAK, false,
                ReadingScatter.of(0.01, 1)), List.of("A", "B"), List.of("L", "R"),
                raoRuns().withFinal(List.of(new Phasor(0.1, 10), new Phasor(0.1, 20))), geometry);
        BalancingSurvey balancing = BalancingSurvey.of(machine(sheet));
        // Position 11 of twelve is at 25.5548 + 300°: the whole of L's weight.
        assertEquals(11, balancing.corrections().orElseThrow().in("L").split().get(0).position());
        assertTrue(balancing.corrections().orElseThrow().uncertainty().isPresent());
        assertTrue(balancing.verification().orElseThrow().gradeProbability().isPresent());
        // Levers of the centre of mass: 0.6 and 0.4.
        assertEquals(List.of(0.6, 0.4), balancing.tolerance().orElseThrow().allocation().shares());
        assertEquals(2, balancing.verification().orElseThrow().bearingUnbalance().size());
        assertEquals("[0.5, 0.5]", BalancingSurvey.of(machine(new BalancingSheet(600, sheet.reading(), sheet.sensors(),
                sheet.planes(), sheet.runs(), new SheetGeometry(Map.of(), Map.of(), Map.of(),
                new AxialSheet(0, 1000, Double.NaN, Map.of("L", 200.0, "R", 700.0)))))).tolerance().orElseThrow()
                .allocation().shares().toString());
    }

    /** 100 kg at 600 r/min in G6.3: 10027 g·mm permissible; Rao's rotor has 1006 and 588 g·mm at 100 mm. */
    @Test
    void theJobAdvisesWhatComesNext() {
        assertEquals(List.of("The rotor holds G6.3 before any correction: look for another cause of the vibration"
                + " before metal goes on."), advice(100, "G6.3", null, List.of()));
        List<Phasor> left = List.of(new Phasor(1, 10), new Phasor(1, 20));
        assertEquals(List.of("Balance grade G0.01 was not reached: the job names the masses that would come next."),
                advice(100, "G0.01", null, left));
        assertEquals(List.of(), advice(100, "G6.3", ReadingScatter.of(0.03, 2), left));
        List<String> near = advice(100, "G0.2", ReadingScatter.of(0.2, 20), left);
        assertTrue(near.get(near.size() - 1).matches("Read the final state \\d+ more time\\(s\\) to settle .*|Whether"
                + " the balance grade was reached can't be settled by more readings of this state: .*"),
                near.toString());
        // 10 g at 100 mm throw 3.9 N, far more than 10 % of the weight of 1 kg per bearing.
        assertEquals("Clear the doubts of the balancing job before metal goes on the rotor.",
                advice(1, "G6.3", null, left).get(0));
    }

    private static List<String> advice(double kilograms, String grade, ReadingScatter scatter, List<Phasor> finalRun) {
        BalancingSheet sheet = rao(finalRun);
        BalancingSheet told = new BalancingSheet(600, new SheetReading(Unit.MIL, Detector.ZERO_TO_PEAK, false, scatter),
                sheet.sensors(), sheet.planes(), sheet.runs(), sheet.geometry());
        return BalancingAdvice.of(BalancingSurvey.of(MachineDescription.named("turbine")
                .speed(RotationSpeed.ofRevolutionsPerMinute(600)).rotor(new RotorData(kilograms, grade, 2, null))
                .balancing(told).build()));
    }

    @Test
    void whatTheJobLeavesOpenForThisRotorIsSaid() {
        MachineDescription overhung = MachineDescription.named("fan").speed(RotationSpeed.ofRevolutionsPerMinute(1480))
                .rotor(new RotorData(100.0, "G6.3", 3, Arrangement.OVERHUNG)).balancing(rao(List.of())).build();
        assertEquals(List.of("shares of the tolerance", "couple unbalance", "vibration at service speed",
                "residual unbalance"), BalancingSurvey.of(overhung).omissions().stream().map(Omission::part).toList());
        assertEquals("the job was read at 600 r/min and the machine runs at 1480 r/min: a rotor that bends between them"
                + " needs readings at both", BalancingSurvey.of(overhung).omissions().get(2).reason());
        MachineDescription near = MachineDescription.named("fan").speed(RotationSpeed.ofRevolutionsPerMinute(629))
                .rotor(new RotorData(100.0, "G6.3", 2, Arrangement.BETWEEN_BEARINGS)).balancing(rao(List.of())).build();
        assertEquals(1, BalancingSurvey.of(near).omissions().size());
    }

    @Test
    void runoutAndTrialsLeftOnReachTheJob() {
        SheetRuns first = raoRuns();
        SheetRuns leftOn = new SheetRuns(List.of(new Phasor(1, 0), new Phasor(1, 0)), first.initial(), first.trials(),
                true, List.of(), null, List.of(), List.of());
        BalancingSurvey balancing = BalancingSurvey.of(machine(rao(leftOn, SheetGeometry.unknown())));
        assertEquals("to the rotor as it is now, with all masses of the earlier runs left on",
                balancing.corrections().orElseThrow().addedTo());
        // 8.5 at 60° less 1 at 0°, by the law of cosines.
        assertEquals(Math.sqrt(8.5 * 8.5 + 1 - 2 * 8.5 * 0.5),
                balancing.toRecord().orElseThrow().runs().get(0).readings().get(0).amplitude(), 1e-9);
        assertEquals("initial run, 2 trial run(s)", leftOn.toString());
        assertEquals("initial run, known coefficients, final run", new SheetRuns(List.of(), first.initial(), List.of(),
                false, List.of(List.of(new SheetCoefficient(1, 0, 0))), null, List.of(), first.initial()).toString());
    }

    @Test
    void readingsThatTellNothingAreNotDeterminedWithTheReason() {
        List<Phasor> initial = List.of(new Phasor(5, 30), new Phasor(4, 80));
        List<Phasor> trial = List.of(new Phasor(3, 70), new Phasor(2, 10));
        BalancingSheet sheet = new BalancingSheet(Double.NaN, new SheetReading(Unit.MM_PER_S, Detector.RMS, true, null),
                List.of("A", "B"), List.of("P", "Q"), SheetRuns.of(initial, List.of(
                new TrialRun("P", 10, 0, Double.NaN, trial), new TrialRun("Q", 10, 0, Double.NaN, trial))),
                SheetGeometry.unknown());
        BalancingSurvey balancing = BalancingSurvey.of(MachineDescription.named("m").balancing(sheet).build());
        assertTrue(balancing.corrections().isEmpty(), balancing::toString);
        assertEquals("balancing", balancing.omissions().get(0).part());
    }
}
