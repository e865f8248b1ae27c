package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a verdict says, with the example of the documentation: 4.31 mm/s on a group 2 machine on rigid support. */
class VerdictTest {
    private static final Machine BLOWER = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
            .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final Severity SEVERITY = Severity.of(BLOWER);
    private static final UncertaintyBudget FIVE_PERCENT =
            UncertaintyBudget.empty().withExpanded("sensor and mounting", 0.05);

    private static Level velocity(double millimetresPerSecond) {
        return Level.of(millimetresPerSecond, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
    }

    private static Level displacement(double micrometres) {
        return Level.of(micrometres, Unit.UM, Detector.RMS).within(Band.of(10, 1000));
    }

    private static Measurement measured(double millimetresPerSecond) {
        return Measurement.of(velocity(millimetresPerSecond)).withUncertainty(FIVE_PERCENT);
    }

    @Test
    void oneLine() {
        assertEquals("zone C: 4.31 ± 0.42 mm/s rms (10\u20131000 Hz); zone C or D within uncertainty; limits 1.4 / 2.8"
                + " / 4.5; ISO 20816-3:2022 Table A.2, group 2, rigid", SEVERITY.judge(velocity(4.31)).toString());
        assertEquals("zone C: 3.61 ± 0.18 mm/s rms (10\u20131000 Hz); limits 1.4 / 2.8 / 4.5; ISO 20816-3:2022 Table"
                + " A.2, group 2, rigid", SEVERITY.judge(measured(3.61)).toString());
        assertEquals("zone C: 4.31 ± 0.21 mm/s rms (10\u20131000 Hz); zone C or D within uncertainty; limits 1.4 / 2.8"
                + " / 4.5; ISO 20816-3:2022 Table A.2, group 2, rigid", SEVERITY.judge(measured(4.31)).toString());
    }

    @Test
    void flaggedLimitsAndTheWorstOfTwoAreSaid() {
        Verdict verdict = SEVERITY.judge(velocity(1.0), displacement(46));
        assertEquals(Zone.C, verdict.zone().orElseThrow());
        assertEquals("zone C: 46.0 ± 4.5 µm rms (10\u20131000 Hz); zone B or C within uncertainty; limits 22 /"
                + " 45 / 71 (secondary source, verify); ISO 20816-3:2022 Table A.2, group 2, rigid; worst of 2"
                + " judgements", verdict.toString());
        assertEquals(Zone.A, verdict.judgements().get(0).zone());
        assertEquals(Confidence.SECONDARY, verdict.deciding().criterion().confidence());
    }

    @Test
    void amongEqualZonesTheLargerAgainstItsLimitDecides() {
        // 2.9 / 4.5 = 0.644 against 50 / 71 = 0.704.
        assertEquals(50, SEVERITY.judge(velocity(2.9), displacement(50)).deciding().value(), 1e-9);
        assertEquals(4.4, SEVERITY.judge(velocity(4.4), displacement(50)).deciding().value(), 1e-9);
    }

    @Test
    void unknownSupportIsJudgedBothWays() {
        Machine machine = Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
                .withSpeed(RotationSpeed.ofHertz(25));
        Verdict verdict = Severity.of(machine).judge(velocity(2.5));
        assertEquals(2, verdict.judgements().size());
        assertEquals(List.of(Support.RIGID, Support.FLEXIBLE), List.of(
                verdict.judgements().get(0).criterion().support().orElseThrow(),
                verdict.judgements().get(1).criterion().support().orElseThrow()));
        assertEquals(List.of(Zone.B, Zone.B), verdict.judgements().stream().map(Judgement::zone).toList());
        assertEquals(Zone.C, Severity.of(machine).judge(velocity(3)).zone().orElseThrow());
        assertEquals(Zone.B, Severity.of(machine.withSupport(Support.FLEXIBLE)).judge(velocity(3)).zone().orElseThrow());
    }

    @Test
    void printedValueNeverContradictsItsZone() {
        assertEquals("2.80", printed(2.8));
        assertEquals("2.801", printed(2.801));
        assertEquals("2.8001", printed(2.8001));
        assertEquals("2.80", printed(2.7999));
        assertEquals("3.61", printed(3.61));
        assertEquals("0.00", printed(0));
        assertEquals("1234", printed(1234.4));
        assertTrue(SEVERITY.judge(measured(2.8001)).toString().startsWith("zone C: 2.8001 ± 0.1372 mm/s"));
    }

    /** Certain, so that the value alone says how many digits it takes. */
    private static String printed(double value) {
        UncertaintyBudget none = UncertaintyBudget.empty().withStandard("none", 0);
        String line = SEVERITY.judge(Measurement.of(velocity(value)).withUncertainty(none)).toString();
        return line.substring("zone C: ".length(), line.indexOf(" mm/s"));
    }

    @Test
    void zonesWithinUncertainty() {
        assertEquals(List.of(Zone.C), SEVERITY.judge(measured(3.61)).deciding().zonesWithinUncertainty());
        assertEquals(List.of(Zone.C, Zone.D), SEVERITY.judge(measured(4.31)).deciding().zonesWithinUncertainty());
        assertEquals(List.of(Zone.B, Zone.C), SEVERITY.judge(measured(2.9)).deciding().zonesWithinUncertainty());
        UncertaintyBudget huge = UncertaintyBudget.empty().withStandard("guess", 2);
        assertEquals(List.of(Zone.values()),
                SEVERITY.judge(Measurement.of(velocity(2)).withUncertainty(huge)).deciding().zonesWithinUncertainty());
        Judgement silent = SEVERITY.judge(velocity(4.49)).deciding();
        assertEquals(List.of(Zone.C, Zone.D), silent.zonesWithinUncertainty(), "an instrument of 10 % is assumed");
        assertEquals(0.098 * 4.49, silent.expandedUncertainty(), 1e-4);
    }

    @Test
    void describesInFull() {
        assertEquals("""
                zone C: not acceptable for long continuous operation; a remedy is to be planned
                  value        4.31 ± 0.21 mm/s rms (10\u20131000 Hz), velocity
                  uncertainty  ± 0.21 mm/s: 4.9 % (k = 1.96), of standard uncertainties sensor and mounting 2.5 %; \
                zone C or D within uncertainty
                  probability  zone A < 0.1 %, zone B < 0.1 %, zone C 96.1 %, zone D 3.89 %
                  limits       A/B 1.4, B/C 2.8, C/D 4.5 mm/s; a value on a limit counts to the better zone \
                (common use, the standard fixes no rule)
                  criterion    ISO 20816-3:2022 Table A.2, group 2, rigid
                  confidence   firm
                  measured by  stated by the caller
                  caution      Whether, how and how long the machine may run on is not decided by this number: ask the \
                maker's limits and the persons responsible for it, under the local codes and with licensed practice.
                also zone A: 20.0 ± 2.0 µm rms (10\u20131000 Hz); limits 22 / 45 / 71 (secondary source, verify); \
                ISO 20816-3:2022 Table A.2, group 2, rigid
                chosen: ISO 20816-3:2022 group 2: rated power 37 kW (above 15 kW up to 300 kW)
                on request: ISO 20816-3:2022, shaft relative""",
                SEVERITY.judge(measured(4.31), Measurement.of(displacement(20))).describe());
    }

    @Test
    void everyZoneButTheGoodOnesCarriesTheCaution() {
        for (Zone zone : Zone.values()) {
            Verdict verdict = SEVERITY.judge(SEVERITY.criteria().get(0).levelIn(zone, 0.5));
            assertEquals(zone.isWorseThan(Zone.B), verdict.describe().contains("licensed practice"), zone::toString);
            assertTrue(verdict.describe().startsWith("zone " + zone + ": " + zone.meaning()));
            assertTrue(verdict.describe().contains("9.8 % (k = 1.96), of standard uncertainties sensor 5 % (assumed)"));
            assertTrue(verdict.describe().contains(
                    "doubt        not told, so the uncertainty rests on a default: sensor"));
            assertTrue(verdict.describe().contains("measured by  stated by the caller"));
            assertTrue(verdict.describe().contains("not judged, no level given: displacement 22 / 45 / 71"));
        }
    }

    @Test
    void exportsPlainValues() {
        Map<String, Object> values = SEVERITY.judge(measured(4.31)).deciding().values();
        assertEquals(List.of("standard", "clause", "group", "support", "quantity", "detector", "bandLowestHertz",
                "bandHighestHertz", "value", "unit", "limits", "zone", "confidence", "expandedUncertainty",
                "coverageFactor", "zonesWithinUncertainty", "zoneProbabilities", "method"),
                List.copyOf(values.keySet()));
        assertEquals("ISO 20816-3:2022", values.get("standard"));
        assertEquals("Table A.2", values.get("clause"));
        assertEquals("2", values.get("group"));
        assertEquals("rigid", values.get("support"));
        assertEquals("velocity", values.get("quantity"));
        assertEquals("rms", values.get("detector"));
        assertEquals(10.0, values.get("bandLowestHertz"));
        assertEquals(1000.0, values.get("bandHighestHertz"));
        assertEquals(4.31, (double) values.get("value"), 1e-12);
        assertEquals("mm/s", values.get("unit"));
        assertEquals(List.of(1.4, 2.8, 4.5), values.get("limits"));
        assertEquals("C", values.get("zone"));
        assertEquals("firm", values.get("confidence"));
        assertEquals(0.2112, (double) values.get("expandedUncertainty"), 1e-4);
        assertEquals(1.96, (double) values.get("coverageFactor"), 1e-4);
        assertEquals(List.of("C", "D"), values.get("zonesWithinUncertainty"));
        assertEquals("stated by the caller", values.get("method"));
        assertThrows(UnsupportedOperationException.class, values::clear);
    }

    @Test
    void exportsOnlyWhatWasStated() {
        Verdict verdict = Severity.of(BLOWER.withRatedPowerKilowatts(11)).judge(velocity(1));
        Map<String, Object> values = verdict.values();
        assertEquals(List.of("zone", "zonesPossible", "undecidedBy", "rating", "reason", "remarks", "alternatives",
                "judgements"), List.copyOf(values.keySet()));
        assertEquals("B", values.get("zone"));
        assertEquals(List.of(verdict.deciding().values()), values.get("judgements"));
        assertEquals("any", verdict.deciding().values().get("support"));
        assertFalse(verdict.deciding().values().containsKey("rating"));
        assertFalse(verdict.deciding().values().containsKey("chain"));
    }

    @Test
    void whatCannotBeJudgedIsRefused() {
        assertEquals("level must measure one of velocity, displacement: acceleration",
                assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(
                        Level.of(3, Unit.G, Detector.RMS).within(Band.of(10, 1000)))).getMessage());
        assertEquals("levels must be of different quantities: velocity twice",
                assertThrows(IllegalArgumentException.class,
                        () -> SEVERITY.judge(velocity(1), velocity(2))).getMessage());
        assertEquals("levels must not be empty",
                assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(new Level[0])).getMessage());
        assertEquals("level must have the detector rms for ISO 20816-3:2022 group 2: peak-peak",
                assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(
                        Level.of(3, Unit.MM_PER_S, Detector.PEAK_TO_PEAK).within(Band.of(10, 1000)))).getMessage());
        assertEquals("no criterion to judge by: " + Severity.of(Machine.unknown()).choice().reason(),
                assertThrows(IllegalStateException.class,
                        () -> Severity.of(Machine.unknown()).judge(velocity(1))).getMessage());
        assertEquals("budget must have a contribution: no contribution", assertThrows(IllegalArgumentException.class,
                () -> Measurement.of(velocity(1)).withUncertainty(UncertaintyBudget.empty())).getMessage());
    }

    @Test
    void notANumberNeverBecomesAVerdict() {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1}) {
            assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(velocity(bad)));
        }
    }

    @Test
    void measurementPrints() {
        assertEquals("4.31 mm/s rms (10\u20131000 Hz) ± 4.9 %", measured(4.31).toString());
        assertEquals("4.31 mm/s rms (10\u20131000 Hz) ± 9.8 %",
                Measurement.of(velocity(4.31)).toString());
    }

    @Test
    void survivesTheJourneyBetweenMachines() throws IOException, ClassNotFoundException {
        Verdict verdict = SEVERITY.judge(measured(4.31), Measurement.of(displacement(20)));
        assertEquals(verdict, copy(verdict));
        assertEquals(verdict.hashCode(), copy(verdict).hashCode());
        assertEquals(verdict.describe(), copy(verdict).describe());
        assertEquals(SEVERITY, copy(SEVERITY));
        assertEquals(BLOWER, copy(BLOWER));
        CriterionRequest request = CriterionRequest.of("ISO 20816-3:2022").withGroup("2");
        assertEquals(request, copy(request));
    }

    private static <T> T copy(T value) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(value);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            @SuppressWarnings("unchecked")
            T copied = (T) in.readObject();
            return copied;
        }
    }
}
