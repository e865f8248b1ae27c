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
import dev.vibra.uncertainty.UncertaintyBudget;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is printed agrees with what was decided, however near to a limit: 1.4 / 2.8 / 4.5 mm/s, 15 kW and 300 kW. */
class EdgesInPrintTest {
    private static final Machine BLOWER = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
            .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final Severity SEVERITY = Severity.of(BLOWER);

    private static Level level(double millimetresPerSecond) {
        return Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
    }

    private static Measurement uncertain(double expanded) {
        return Measurement.of(level(2.75)).withUncertainty(UncertaintyBudget.empty().withExpanded("sensor", expanded));
    }

    private static String reason(Machine machine) {
        return Severity.of(machine).choice().reason();
    }

    @Test
    void aFactJustBeyondABoundIsPrintedBeyondIt() {
        assertEquals("ISO 20816-3:2022 group 1: rated power 300.0001 kW (above 300 kW)",
                reason(BLOWER.withRatedPowerKilowatts(300.0001)));
        assertFalse(reason(BLOWER.withRatedPowerKilowatts(Math.nextUp(300.0))).contains("rated power 300 kW"));
        assertTrue(reason(BLOWER.withSpeed(RotationSpeed.ofRevolutionsPerMinute(119.9999999)))
                .contains("from 120 r/min up to 30000 r/min, not 119.9999999 r/min"));
        assertEquals("ISO 20816-3:2022 group 2: rated power 300 kW (above 15 kW up to 300 kW)",
                reason(BLOWER.withRatedPowerKilowatts(300)));
        assertTrue(BLOWER.withRatedPowerKilowatts(12345.6).toString().startsWith("blower, 12345.6 kW"));
    }

    @Test
    void theNextNumberAboveALimitIsPrintedAboveIt() {
        assertTrue(SEVERITY.judge(level(Math.nextUp(2.8))).toString().startsWith("zone C: 2.8000000000000003 ± 0.27"));
        assertEquals("zone B: 2.80 ± 0.27 mm/s rms (10\u20131000 Hz)",
                SEVERITY.judge(level(2.8)).toString().split(";")[0]);
    }

    @Test
    void aBandThatDiffersByLittleIsPrintedInFull() {
        Level nearly = Level.of(2, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000.0000001));
        assertEquals("level must be limited to the band 10\u20131000 Hz for ISO 20816-3:2022 group 2: 10.0 Hz to"
                + " 1000.0000001 Hz",
                assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(nearly)).getMessage());
    }

    @Test
    void aChainThatFallsShortByLittleIsPrintedShort() {
        assertEquals(List.of("sample rate 1999.999 Hz reaches up to 999.9995 Hz",
                "magnet is usable at 10.00001 Hz to 1000.0 Hz only"), MeasuringChain.of(1999.999, 4)
                .withPart("magnet", Band.of(10.00001, 1000)).refusals(Band.of(10, 1000)));
    }

    @Test
    void aPowerThatOverflowsIsRefused() {
        assertEquals("rated power must be finite and > 0 W: Infinity", assertThrows(IllegalArgumentException.class,
                () -> BLOWER.withRatedPowerKilowatts(Double.MAX_VALUE)).getMessage());
    }

    @Test
    void aReadingOfZeroIsDoubted() {
        String doubt = "  doubt        a running machine doesn't read zero: see to sensor and cable";
        assertTrue(SEVERITY.judge(level(0)).describe().contains(doubt));
        assertFalse(SEVERITY.judge(level(0.001)).describe().contains(doubt));
    }

    /** 5 instead of 0.05: half of the normal distribution about 2.75 lies above it, so every zone is likely. */
    @Test
    void anUncertaintyAboveTheValueIsDoubted() {
        String doubt = "  doubt        the uncertainty is larger than the value (5 % is stated as 0.05)";
        assertTrue(SEVERITY.judge(uncertain(5)).describe().contains(doubt));
        assertFalse(SEVERITY.judge(uncertain(0.05)).describe().contains(doubt));
        assertEquals("relative uncertainty (sensor) must be at most 1.0E100: 8.988465674311579E307",
                assertThrows(IllegalArgumentException.class, () -> uncertain(Double.MAX_VALUE)).getMessage());
        Level large = Level.of(1e6, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
        assertTrue(SEVERITY.judge(Measurement.of(large).withUncertainty(
                UncertaintyBudget.empty().withExpanded("sensor", 100))).toString()
                .startsWith("zone D: 1000000 ± 9.8e+07 mm/s rms"));
    }

    /** The zones cover the whole axis: their probabilities add up to one, with any width of the interval. */
    @Test
    void probabilitiesAddUpHoweverWideTheInterval() {
        for (double expanded : new double[] {0, 1e-12, 0.05, 1, 2, 50, 1000}) {
            Judgement judgement = SEVERITY.judge(uncertain(expanded)).deciding();
            double sum = 0;
            for (Zone zone : Zone.values()) {
                sum += judgement.probabilityOf(zone);
            }
            assertEquals(1, sum, 1e-12, () -> "U = " + expanded);
        }
    }
}
