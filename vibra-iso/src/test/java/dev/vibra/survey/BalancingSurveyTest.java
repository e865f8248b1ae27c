package dev.vibra.survey;

import static dev.vibra.balance.Balancing.mass;
import static dev.vibra.balance.Balancing.v;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.Reading;
import dev.vibra.balance.Verification;
import dev.vibra.balance.tolerance.Allocation;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.uncertainty.ReadingScatter;
import dev.vibra.balance.vector.Convention;
import dev.vibra.machine.Arrangement;
import dev.vibra.machine.RotorData;
import dev.vibra.point.Omission;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The balancing job of a description, worked out and held against its rotor. */
class BalancingSurveyTest {
    private static final RotationSpeed SPEED = RotationSpeed.ofRevolutionsPerMinute(600);

    /**
     * S. S. Rao, Mechanical Vibrations, two-plane balancing of a turbine rotor; inputs and answers recalled from the
     * textbook, reproduced to all printed digits by computation. Ounces are entered as grams: masses only scale.
     */
    private static BalancingJob raoSetUp(double kilograms, double grade) {
        return Balancing.inPlanes("L", "R").measuredAt("A", "B").in(Unit.MIL, Detector.ZERO_TO_PEAK)
                .with(Convention.LEAD_WITH_ROTATION).at(SPEED).radius("L", 100).radius("R", 100).rotor(kilograms)
                .toTolerance(BalanceTolerance.of(BalanceGrade.of(grade), kilograms, SPEED)
                        .allocated(Allocation.equalShares(2)));
    }

    private static BalancingJob raoRuns(BalancingJob job) {
        return job.initial(v(8.5, 60), v(6.5, 205)).trial("L", mass(10, 270), v(6, 125), v(4.5, 230))
                .trial("R", mass(12, 180), v(6, 35), v(10.5, 160));
    }

    private static BalancingJob rao() {
        return raoRuns(raoSetUp(100, 6.3));
    }

    private static BalancingSurvey survey(BalancingJob job) {
        return survey(job, RotorData.unknown(), 600);
    }

    private static BalancingSurvey survey(BalancingJob job, RotorData rotor, double revolutionsPerMinute) {
        return BalancingSurvey.of(job, rotor, Optional.of(RotationSpeed.ofRevolutionsPerMinute(revolutionsPerMinute)));
    }

    private static List<String> parts(BalancingSurvey balancing) {
        return balancing.omissions().stream().map(Omission::part).toList();
    }

    @Test
    void withoutFinalRunTheResidualIsNotDetermined() {
        BalancingSurvey balancing = survey(rao());
        assertEquals(10.0561, balancing.corrections().orElseThrow().in("L").mass().grams(), 5e-5);
        assertEquals(0.80711, balancing.influence().orElseThrow().perGram(0, 0), 5e-6);
        assertTrue(balancing.verification().isEmpty() && balancing.trim().isEmpty());
        assertTrue(balancing.influenceErrors().isEmpty());
        assertEquals("[residual unbalance: not determined, there is no final run]", balancing.omissions().toString());
        // ISO 21940-11: U_per = 1000·G·m/Ω = 6.3e3·100/(2π·10) g·mm.
        assertEquals(6.3e3 * 100 / (2 * Math.PI * 10), balancing.tolerance().orElseThrow().gramMillimetres(), 0.01);
    }

    @Test
    void aFinalRunIsHeldAgainstTheGrade() {
        BalancingSurvey balancing = survey(rao().finalRun(v(0.1, 10), v(0.1, 20)));
        Verification verification = balancing.verification().orElseThrow();
        assertEquals(2, verification.residualUnbalance().size());
        assertTrue(verification.gradeReached().orElseThrow().held());
        assertEquals(List.of(), balancing.omissions());
        assertEquals(4, balancing.toRecord().orElseThrow().runs().size());
        assertEquals(survey(rao()).toString(), balancing.toString()); // the corrections that the final run is for
        // What comes next cancels the final run: α·m = −V, checked with the coefficients themselves.
        Corrections trim = balancing.trim().orElseThrow();
        trim.predicted().forEach(left -> assertEquals(0, left.amplitude(), 1e-9));
        assertTrue(trim.addedTo().contains("its corrections left on and the trial masses off"), trim.addedTo());
    }

    @Test
    void withScatterTheErrorsOfTheCoefficientsAreTold() {
        BalancingSurvey balancing = survey(raoRuns(raoSetUp(100, 6.3).scatter(ReadingScatter.of(0.03, 2))));
        assertTrue(balancing.influenceErrors().orElseThrow().perGram(0, 0) > 0.01);
    }

    /** 100 kg at 600 r/min in G6.3: 10027 g·mm permissible; Rao's rotor has 1006 and 588 g·mm at 100 mm. */
    @Test
    void theJobAdvisesWhatComesNext() {
        assertEquals(List.of("The rotor holds G6.3 before any correction: look for another cause of the vibration"
                + " before metal goes on."), BalancingAdvice.of(survey(rao())));
        Reading[] left = {v(1, 10), v(1, 20)};
        assertEquals(List.of("Balance grade G0.01 was not reached: the job names the masses that would come next."),
                BalancingAdvice.of(survey(raoRuns(raoSetUp(100, 0.01)).finalRun(left))));
        assertEquals(List.of(), BalancingAdvice.of(survey(raoRuns(raoSetUp(100, 6.3)
                .scatter(ReadingScatter.of(0.03, 2))).finalRun(left))));
        List<String> near = BalancingAdvice.of(survey(raoRuns(raoSetUp(100, 0.2).scatter(ReadingScatter.of(0.2, 20)))
                .finalRun(left)));
        assertTrue(near.get(near.size() - 1).matches("Read the final state \\d+ more time\\(s\\) to settle .*|Whether"
                + " the balance grade was reached can't be settled by more readings of this state: .*"),
                near.toString());
        // 10 g at 100 mm throw 3.9 N, far more than 10 % of the weight of 1 kg per bearing.
        assertEquals("Clear the doubts of the balancing job before metal goes on the rotor.",
                BalancingAdvice.of(survey(raoRuns(raoSetUp(1, 6.3)).finalRun(left))).get(0));
    }

    @Test
    void whatTheJobLeavesOpenForThisRotorIsSaid() {
        RotorData overhung = RotorData.unknown().withPlanes(3).withArrangement(Arrangement.OVERHUNG);
        BalancingSurvey far = survey(rao(), overhung, 1480);
        assertEquals(List.of("shares of the tolerance", "couple unbalance", "vibration at service speed",
                "residual unbalance"), parts(far));
        assertEquals("the job was read at 600 r/min and the machine runs at 1480 r/min: a rotor that bends between them"
                + " needs readings at both", far.omissions().get(2).reason());
        RotorData between = RotorData.unknown().withPlanes(2).withArrangement(Arrangement.BETWEEN_BEARINGS);
        assertEquals(List.of("residual unbalance"), parts(survey(rao(), between, 629)));
        BalancingJob bare = Balancing.inPlanes("P").measuredAt("A").initial(v(5, 0)).trial("P", mass(1, 0), v(8, 40));
        assertEquals(List.of("balance grade", "residual unbalance"), parts(survey(bare, overhung.withPlanes(1), 600)));
        assertEquals("it needs the radius of each plane, and planes that can be told apart",
                survey(bare.finalRun(v(1, 0))).omissions().get(1).reason());
        // Of several speeds the nearest counts.
        BalancingJob two = Balancing.inPlanes("P").measuredAt("A").at(SPEED, RotationSpeed.ofRevolutionsPerMinute(900))
                .initial(v(5, 0), v(5, 0)).trial("P", mass(1, 0), v(8, 40), v(8, 40));
        assertTrue(!parts(survey(two, overhung.withPlanes(1), 900)).contains("vibration at service speed"));
        assertTrue(survey(two, overhung.withPlanes(1), 1480).omissions().get(0).reason().contains("read at 900 r/min"));
    }

    @Test
    void readingsThatTellNothingAreNotDeterminedWithTheReason() {
        BalancingJob job = Balancing.inPlanes("P", "Q").measuredAt("A", "B").initial(v(5, 30), v(4, 80))
                .trial("P", mass(10, 0), v(3, 70), v(2, 10)).trial("Q", mass(10, 0), v(3, 70), v(2, 10));
        BalancingSurvey balancing = survey(job);
        assertTrue(balancing.corrections().isEmpty() && balancing.influence().isEmpty()
                && balancing.toRecord().isEmpty() && balancing.tolerance().isEmpty(), balancing::toString);
        assertEquals(List.of(Omission.of(Omission.Subject.BALANCING, job.obstacle().orElseThrow())),
                balancing.omissions());
    }
}
