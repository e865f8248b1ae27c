package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.uncertainty.DecisionRule;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What stands behind a verdict: probability of each zone, decision rule, what the recording can show, plain export. */
class EvidenceTest {
    private static final Machine BLOWER = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
            .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final Severity SEVERITY = Severity.of(BLOWER);
    private static final Band BAND = Band.of(10, 1000);

    private static Measurement measured(double millimetresPerSecond, double relativeStandard) {
        return Measurement.of(Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(BAND))
                .withUncertainty(UncertaintyBudget.empty().withStandard("all", relativeStandard));
    }

    /** Normal distribution function of published tables: 0.5 at the limit, 0.841345 one and 0.977250 two sd above. */
    @Test
    void probabilitiesAreThoseOfTheNormalTable() {
        Judgement on = SEVERITY.judge(measured(2.8, 0.05)).deciding();
        assertEquals(0.5, on.probabilityOf(Zone.B), 1e-12);
        assertEquals(0.5, on.probabilityOf(Zone.C), 1e-12);
        double value = 4.5 / 1.1;
        Judgement below = SEVERITY.judge(measured(value, 0.1)).deciding();
        assertEquals(1 - 0.841345, below.probabilityOf(Zone.D), 1e-6);
        double twoAbove = 4.5 / 0.8;
        Judgement above = SEVERITY.judge(measured(twoAbove, 0.1)).deciding();
        assertEquals(0.977250, above.probabilityOf(Zone.D), 1e-6);
        // 2.8 mm/s lies 5.0222 standard deviations below; SciPy 1.10, stats.norm.cdf, gives 2.5544e-7 there.
        assertEquals(1, above.probabilityOf(Zone.B) / 2.5544e-7, 1e-3);
        double sum = 0;
        for (Zone zone : Zone.values()) {
            sum += above.probabilityOf(zone);
        }
        assertEquals(1, sum, 1e-14);
        assertEquals(List.of(Zone.A, Zone.B, Zone.C, Zone.D), List.copyOf(above.probabilities().keySet()));
    }

    @Test
    void withoutSpreadTheZoneIsCertain() {
        Judgement still = SEVERITY.judge(measured(2.8, 0)).deciding();
        assertEquals(1, still.probabilityOf(Zone.B));
        assertEquals(0, still.probabilityOf(Zone.C));
        Judgement silent = SEVERITY.judge(measured(0, 0.1)).deciding();
        assertEquals(1, silent.probabilityOf(Zone.A));
    }

    @Test
    void zoneThatTheCriterionLacksHasNoProbability() {
        Machine fan = Machine.of(MachineKind.FAN).withRatedPowerKilowatts(3).withSupport(Support.RIGID);
        Severity severity = Severity.of(fan, CriterionRequest.of("ISO 14694").withGroup("BV-1, in situ"));
        Judgement judgement = severity.judge(measured(12, 0.05)).deciding();
        assertEquals(0, judgement.probabilityOf(Zone.D));
        assertEquals(List.of(Zone.A, Zone.B, Zone.C), judgement.criterion().zones());
        assertEquals("above alarm", judgement.values().get("rating"));
        assertEquals("shutdown is to be set from history; the band is from memory, unverified",
                judgement.values().get("note"));
        assertEquals(List.of("A", "B", "C"),
                List.copyOf(((Map<?, ?>) judgement.values().get("zoneProbabilities")).keySet()));
    }

    /** 2.75 with U = 4.9 %, 0.1347: 2.885 lies above 2.8, 2.615 below; 2.9: 3.042 and 2.758. */
    @Test
    void guardBandMovesTheVerdictToTheSafeOrTheCheapSide() {
        Judgement below = SEVERITY.judge(measured(2.75, 0.025)).deciding();
        assertEquals(Zone.B, below.zoneBy(DecisionRule.simple()));
        assertEquals(Zone.C, below.zoneBy(DecisionRule.guardedAcceptance()));
        assertEquals(Zone.B, below.zoneBy(DecisionRule.guardedRejection()));
        assertEquals(Zone.B, below.zoneBy(new DecisionRule(0.3)));
        Verdict above = SEVERITY.judge(measured(2.9, 0.025));
        assertEquals(Optional.of(Zone.C), above.zoneBy(DecisionRule.simple()));
        assertEquals(Optional.of(Zone.B), above.zoneBy(DecisionRule.guardedRejection()));
    }

    @Test
    void worstZoneByTheRuleAmongAllJudgements() {
        Level displacement = Level.of(21, Unit.UM, Detector.RMS).within(BAND);
        UncertaintyBudget ten = UncertaintyBudget.empty().withStandard("all", 0.05);
        Verdict verdict = SEVERITY.judge(measured(1.0, 0.05), Measurement.of(displacement).withUncertainty(ten));
        assertEquals(Zone.A, verdict.zone().orElseThrow());
        assertEquals(Optional.of(Zone.B), verdict.zoneBy(DecisionRule.guardedAcceptance()));
    }

    @Test
    void recordingThatCannotCoverTheBandIsRefused() {
        Measurement measurement = measured(3, 0.05);
        assertEquals("recording must cover the band 10\u20131000 Hz for ISO 20816-3:2022 group 2: sample rate 1999 Hz"
                + " reaches up to 999.5 Hz; duration 0.09 s is less than one period of 10 Hz; magnet is usable at"
                + " 0.5\u2013900 Hz only; sensor is usable at 11\u201310000 Hz only",
                refusal(measurement.withChain(MeasuringChain.of(1999, 0.09).withPart("magnet", Band.of(0.5, 900))
                        .withPart("sensor", Band.of(11, 10_000)))));
        MeasuringChain least = MeasuringChain.of(2000, 0.1).withPart("sensor", Band.of(10, 1000));
        assertEquals(List.of(), least.refusals(BAND));
        assertEquals(List.of("less than 2.56 samples a period of 1000 Hz: make sure of the filter against aliasing",
                "less than ten periods of 10 Hz recorded"), least.cautions(BAND));
        assertEquals(List.of(), MeasuringChain.of(2560, 1).cautions(BAND));
        String text = SEVERITY.judge(measurement.withChain(least)).describe();
        assertTrue(text.contains("\n  recording    0.1 s at 2000 Hz, sensor 10\u20131000 Hz"), text);
        assertTrue(text.contains("\n  doubt        less than 2.56"), text);
        assertEquals("0.1 s at 2000 Hz, sensor 10\u20131000 Hz",
                SEVERITY.judge(measurement.withChain(least)).deciding().values().get("chain"));
        assertEquals(least, measurement.withChain(least).chain().orElseThrow());
        assertFalse(least.equals(MeasuringChain.of(2000, 0.1)));
    }

    private static String refusal(Measurement measurement) {
        return assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(measurement)).getMessage();
    }

    /** The band goes down to 2 Hz for a slow machine, so that the same recording may no longer do. */
    @Test
    void bandFollowsTheCriterion() {
        Severity slow = Severity.of(BLOWER.withSpeed(RotationSpeed.ofRevolutionsPerMinute(600)));
        MeasuringChain chain = MeasuringChain.of(25_600, 0.4);
        assertEquals(List.of(), chain.refusals(SEVERITY.criteria().get(0).band()));
        assertEquals(List.of("duration 0.4 s is less than one period of 2 Hz"),
                chain.refusals(slow.criteria().get(0).band()));
    }

    @Test
    void chainNamesBadInput() {
        assertEquals("sample rate must be finite and > 0 Hz: NaN", assertThrows(IllegalArgumentException.class,
                () -> MeasuringChain.of(Double.NaN, 1)).getMessage());
        assertEquals("duration must be finite and > 0 s: 0.0", assertThrows(IllegalArgumentException.class,
                () -> MeasuringChain.of(1, 0)).getMessage());
        assertEquals("name must not be blank", assertThrows(IllegalArgumentException.class,
                () -> MeasuringChain.of(1, 1).withPart(" ", BAND)).getMessage());
        assertThrows(UnsupportedOperationException.class, () -> MeasuringChain.of(1, 1).parts().put("a", BAND));
    }

    @Test
    void plainValuesAreNumbersAndStringsOnly() {
        Machine unsupported = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37);
        Map<String, Object> plain = Severity.of(unsupported).judge(measured(2.9, 0.025)).plainValues();
        assertTrue(plain.values().stream().allMatch(value -> value instanceof String || value instanceof Double));
        assertEquals("C", plain.get("zone"));
        assertEquals("C", plain.get("velocity.rigid.zone"));
        assertEquals("B", plain.get("velocity.flexible.zone"));
        assertEquals(2.8, plain.get("velocity.rigid.limit-B/C"));
        assertEquals("B or C", plain.get("velocity.rigid.zonesWithinUncertainty"));
        assertEquals(0.9161, (double) plain.get("velocity.rigid.probability-C"), 1e-4); // z = 0.1 / 0.0725 = 1.379
        assertEquals("B; C", plain.get("zonesPossible"));
        assertEquals("support", plain.get("undecidedBy"));
        Map<String, Object> one = SEVERITY.judge(measured(2.9, 0.025).level()).plainValues();
        assertEquals(2.9, (double) one.get("velocity.value"), 1e-12);
        assertEquals("ISO 20816-3:2022, shaft relative", one.get("alternatives"));
        assertEquals("B or C", one.get("velocity.zonesWithinUncertainty"), "10 % assumed");
        assertEquals("stated by the caller", one.get("velocity.method"));
    }

    @Test
    void ratingsTellInWordsWhichOfTheirOwnLieWithinUncertainty() {
        Machine fan = Machine.of(MachineKind.FAN).withRatedPowerKilowatts(55).withSupport(Support.RIGID);
        Severity severity = Severity.of(fan, CriterionRequest.of("ISO 14694").withGroup("BV-3, in situ"));
        assertTrue(severity.judge(measured(7.0, 0.025)).toString().contains(
                "; above start-up or above alarm within uncertainty; "));
    }

    @Test
    void decisionRulePrints() {
        assertEquals("simple acceptance", DecisionRule.simple().toString());
        assertEquals("guarded acceptance (value + U)", DecisionRule.guardedAcceptance().toString());
        assertEquals("guarded rejection (value - 0.5·U)", new DecisionRule(-0.5).toString());
        assertEquals("guardFactor must be within -1.0 to 1.0: NaN", assertThrows(IllegalArgumentException.class,
                () -> new DecisionRule(Double.NaN)).getMessage());
        assertEquals(0, DecisionRule.guardedRejection().moved(1, 2), "never below zero");
    }
}
