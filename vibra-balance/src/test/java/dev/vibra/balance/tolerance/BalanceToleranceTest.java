package dev.vibra.balance.tolerance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BalanceToleranceTest {
    private static RotationSpeed rpm(double value) {
        return RotationSpeed.ofRevolutionsPerMinute(value);
    }

    // ISO 21940-11:2016, e_per = G/Ω; the values are computed by hand as 9549.297·G/n in µm.
    @ParameterizedTest
    @CsvSource({"2.5,1500,15.92,0.005", "2.5,3000,7.96,0.005", "2.5,3600,6.63,0.005", "2.5,6000,3.98,0.005",
            "6.3,1500,40.11,0.005", "6.3,3000,20.05,0.006", "6.3,3600,16.71,0.005", "6.3,6000,10.03,0.005",
            "1,1500,6.37,0.005", "1,3000,3.18,0.005", "1,3600,2.65,0.005", "1,6000,1.59,0.005",
            "16,1500,101.9,0.05", "16,3000,50.9,0.05", "16,3600,42.4,0.05", "16,6000,25.5,0.05",
            "0.4,12000,0.318,0.0005"})
    void permissibleEccentricity(double grade, double rpm, double micrometres, double tolerance) {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(grade), 1, rpm(rpm));
        assertEquals(micrometres, t.eccentricityMicrometres(), tolerance);
        assertEquals(micrometres * 1e-6, BalanceGrade.of(grade).permissibleEccentricity(rpm(rpm)), tolerance * 1e-6);
    }

    // Turbine rotor of the annex of ISO 1940-1:2003; input recalled, results computed, published rounded to three
    // digits.
    @Test
    void turbineRotorOfTheAnnex() {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(2.5), 3600, rpm(3000))
                .allocated(Allocation.byLever(0, 2400, 1500));
        assertEquals(7.958, t.eccentricityMicrometres(), 5e-4);
        assertEquals(28_648, t.gramMillimetres(), 0.5);
        assertEquals(10_743, t.gramMillimetresOf(0), 0.5);
        assertEquals(17_905, t.gramMillimetresOf(1), 0.5);
        assertEquals(0.375, t.allocation().shares().get(0), 1e-15);
        assertFalse(t.allocation().limited());
        assertEquals(BalanceGrade.of(2.5), t.grade());
        assertEquals(3600, t.massKilograms());
        assertEquals(rpm(3000), t.speed());
        assertEquals("G6.3 for 64 kg at 1480 r/min (24.67 Hz): 2602 g·mm",
                BalanceTolerance.of(BalanceGrade.of(6.3), 64, rpm(1480)).toString());
    }

    @ParameterizedTest
    @CsvSource({"5000, 0.5, 0.5, false", "1000, 0.7, 0.3, true", "9000, 0.3, 0.7, true", "3500, 0.65, 0.35, false",
            "-2000, 1.2, 0.3, true", "-5000, 1.3, 0.5, true", "14000, 0.4, 1.3, true", "12500, 0.3, 1.25, true",
            "13000, 0.3, 1.3, false", "0, 0.7, 0.3, true", "10000, 0.3, 0.7, true"})
    void sharesByLever(double centre, double a, double b, boolean limited) {
        Allocation allocation = Allocation.byLever(0, 10_000, centre);
        assertEquals(a, allocation.shares().get(0), 1e-12);
        assertEquals(b, allocation.shares().get(1), 1e-12);
        assertEquals(limited, allocation.limited());
        assertEquals(limited ? Confidence.UNVERIFIED : Confidence.SECONDARY, allocation.confidence());
        Allocation mirrored = Allocation.byLever(10_000, 0, centre);
        assertEquals(List.of(allocation.shares().get(1), allocation.shares().get(0)), mirrored.shares());
    }

    @Test
    void allocationsInWords() {
        assertEquals("0.375 / 0.625 (centre of mass between the bearings, shares by its levers)",
                Allocation.byLever(0, 2.4, 1.5).toString());
        assertEquals("0.700 / 0.300 (centre of mass between the bearings, shares held within 0.3 and 0.7 (limits from"
                + " memory, unverified))", Allocation.byLever(0, 1, 0.1).toString());
        assertEquals("1.20 / 0.300 (centre of mass outside the bearings, shares held within 0.3 and 1.3 (limits from"
                + " memory, unverified))", Allocation.byLever(0, 1, -0.2).toString());
        assertEquals("one plane takes the whole", Allocation.equalShares(1).reason());
        assertEquals("centre of mass taken to be midway between the planes", Allocation.equalShares(2).reason());
        assertEquals(Confidence.FIRM, Allocation.equalShares(2).confidence());
        assertEquals(List.of(0.25, 0.25, 0.25, 0.25), Allocation.equalShares(4).shares());
        assertEquals(Confidence.UNVERIFIED, Allocation.equalShares(3).confidence());
        assertEquals("equal shares; the standard speaks of at most two planes", Allocation.equalShares(3).reason());
        message("planes must be at least 1: 0", () -> Allocation.equalShares(0));
        message("bearingB must be away from bearingA, 2.0: 2.0", () -> Allocation.byLever(2, 2, 1));
        message("centreOfMass must be at most one span outside the bearings, 2.0 and 3.0: 4.5",
                () -> Allocation.byLever(2, 3, 4.5));
        assertEquals(List.of(1.0, 1.3), Allocation.byLever(2, 3, 4).shares());
        message("centreOfMass must be finite: NaN", () -> Allocation.byLever(2, 3, Double.NaN));
        message("bearingA must be finite: NaN", () -> Allocation.byLever(Double.NaN, 3, 1));
        message("bearingB must be finite: Infinity", () -> Allocation.byLever(2, Double.POSITIVE_INFINITY, 1));
        message("count of shares must be at least 1: 0",
                () -> new Allocation(List.of(), false, "none", Confidence.UNVERIFIED));
        message("share of a plane must be finite and > 0: 0.0",
                () -> new Allocation(List.of(0.0), false, "none", Confidence.UNVERIFIED));
    }

    @Test
    void gradeReachedByResiduals() {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(50));
        double permissible = 6.3e-3 / (100 * Math.PI) * 10 * 1e6;
        assertEquals(permissible, t.gramMillimetres(), 1e-9);
        GradeReached half = t.reachedBy(permissible / 2);
        assertEquals(3.15, half.millimetresPerSecond(), 1e-12);
        assertTrue(half.held());
        assertEquals(Optional.of(BalanceGrade.of(6.3)), half.finestGrade());
        assertEquals("G6.3 reached (3.15 mm/s), G6.3 held: 100.3 of 200.5 g·mm; ISO 21940-11:2016, Table 1",
                half.toString());
        assertTrue(t.reachedBy(t.gramMillimetres()).held());
        assertFalse(t.reachedBy(t.gramMillimetres() * (1 + 1e-8)).held());
        assertEquals("G16 reached (6.93 mm/s), G6.3 not held: 220.6 of 200.5 g·mm; ISO 21940-11:2016, Table 1",
                t.reachedBy(permissible * 1.1).toString());
        assertEquals("no grade reached (6300 mm/s), G6.3 not held: 200500 of 200.5 g·mm; ISO 21940-11:2016, Table 1",
                t.reachedBy(permissible * 1000).toString());
        assertEquals(0, t.reachedBy(0).millimetresPerSecond());
        message("residual unbalance must be finite and >= 0 g·mm: NaN", () -> t.reachedBy(Double.NaN));
        message("residual unbalances must be one per plane of the allocation, 1: 2", () -> t.reachedBy(1, 2));
    }

    @Test
    void tolerancesAreComparedByTheirFacts() {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(50));
        assertEquals(t, BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(50)));
        assertEquals(t.hashCode(), BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(50)).hashCode());
        for (BalanceTolerance other : List.of(t.allocated(Allocation.equalShares(2)),
                BalanceTolerance.of(BalanceGrade.of(2.5), 10, RotationSpeed.ofHertz(50)),
                BalanceTolerance.of(BalanceGrade.of(6.3), 11, RotationSpeed.ofHertz(50)),
                BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(51)))) {
            assertNotEquals(t, other);
        }
        assertEquals(t.reachedBy(5), BalanceTolerance.of(BalanceGrade.of(6.3), 10, RotationSpeed.ofHertz(50))
                .reachedBy(5));
    }

    @Test
    void theWorstPlaneDecides() {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(2.5), 3600, rpm(3000))
                .allocated(Allocation.byLever(0, 2400, 1500));
        assertEquals(2.5, t.reachedBy(t.gramMillimetresOf(0), 1).millimetresPerSecond(), 1e-12);
        assertEquals(2.5, t.reachedBy(1, t.gramMillimetresOf(1)).millimetresPerSecond(), 1e-12);
        assertEquals(5, t.reachedBy(t.gramMillimetresOf(0), 2 * t.gramMillimetresOf(1)).millimetresPerSecond(), 1e-12);
    }

    @Test
    void onTheLimitOfAnyPlaneTheGradeIsHeldAndJustAboveItIsNot() {
        BalanceTolerance t = BalanceTolerance.of(BalanceGrade.of(2.5), 3600, rpm(3000))
                .allocated(Allocation.byLever(0, 2400, 1500));
        double first = t.gramMillimetresOf(0);
        double second = t.gramMillimetresOf(1);
        assertTrue(t.reachedBy(first, 0).held());
        assertTrue(t.reachedBy(0, second).held());
        assertTrue(t.reachedBy(first, second).held());
        assertEquals(Optional.of(BalanceGrade.of(2.5)), t.reachedBy(first, second).finestGrade());
        assertFalse(t.reachedBy(first * (1 + 1e-8), 0).held());
        assertFalse(t.reachedBy(0, second * (1 + 1e-8)).held());
        assertEquals(Optional.of(BalanceGrade.of(6.3)), t.reachedBy(0, second * (1 + 1e-8)).finestGrade());
        // What was worked out in another order of the factors differs in the last digits; verdict and grade agree.
        for (int i = 1; i < 2000; i++) {
            BalanceTolerance any = BalanceTolerance.of(BalanceGrade.of(630), i * 0.37, rpm(1000 + 7 * i))
                    .allocated(Allocation.byLever(0, 1, 0.3 + 0.0002 * i));
            double[] share = any.allocation().shares().stream().mapToDouble(Double::doubleValue).toArray();
            double whole = 0.63 / any.speed().radiansPerSecond() * i * 0.37 * 1e6;
            GradeReached reached = any.reachedBy(whole * share[0], whole * share[1]);
            assertTrue(reached.held(), reached.toString());
            assertEquals(Optional.of(BalanceGrade.of(630)), reached.finestGrade());
        }
        GradeReached over = t.reachedBy(0.5 * first, 1.2 * second);
        assertEquals(1, over.worstPlane());
        assertEquals(1.2 * second, over.gramMillimetres());
        assertEquals(second, over.permissibleGramMillimetres());
        assertEquals("G6.3 reached (3.00 mm/s), G2.5 not held: 21490 of 17900 g·mm in tolerance plane 2 of 2; ISO"
                + " 21940-11:2016, Table 1", over.toString());
    }

    @Test
    void gradesAreReadWrittenAndOrdered() {
        assertEquals(BalanceGrade.of(6.3), BalanceGrade.parse("G6.3"));
        assertEquals(BalanceGrade.of(16), BalanceGrade.parse("G 16"));
        assertEquals("G0.4", BalanceGrade.of(0.4).toString());
        assertEquals("G4000", BalanceGrade.parse("G4000").toString());
        assertTrue(BalanceGrade.of(1).compareTo(BalanceGrade.of(2.5)) < 0);
        assertEquals(0, BalanceGrade.of(1).compareTo(BalanceGrade.of(1)));
        for (String bad : new String[] {"6.3", "g6.3", "G", "G6,3", "G-1", "G6.3x", ""}) {
            message("balance grade must be G and a number of mm/s, as in G6.3: " + bad, () -> BalanceGrade.parse(bad));
        }
        message("balance grade must be finite and > 0 mm/s: 0.0", () -> BalanceGrade.parse("G0"));
        message("rotor mass must be finite and > 0 kg: NaN",
                () -> BalanceTolerance.of(BalanceGrade.of(1), Double.NaN, rpm(1)));
    }

    // ISO 21940-11:2016, Table 1: eleven grades, each 2.5 times the one before (rounded to preferred numbers).
    @Test
    void tableOfGrades() {
        List<GradeRow> table = GradeRow.table();
        double[] grades = {0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000};
        assertEquals(grades.length, table.size());
        for (int i = 0; i < grades.length; i++) {
            assertEquals(grades[i], table.get(i).grade().millimetresPerSecond());
            assertEquals(Optional.of(BalanceGrade.of(grades[i])), GradeRow.finestHolding(grades[i]));
            assertEquals(i + 1 < grades.length ? Optional.of(BalanceGrade.of(grades[i + 1])) : Optional.empty(),
                    GradeRow.finestHolding(grades[i] * (1 + 1e-8)));
            assertEquals(2.5, i == 0 ? 2.5 : grades[i] / grades[i - 1], 0.05);
        }
        assertEquals(Optional.empty(), GradeRow.finestHolding(Double.NaN));
        assertEquals("G1: audio and video drives; grinding-machine drives (firm)", table.get(1).toString());
        assertEquals("from memory, unverified", table.get(7).confidence().toString());
        assertTrue(table.get(3).machines().contains("fans") && table.get(3).machines().contains("pumps"));
        assertTrue(table.get(2).machines().contains("turbines"));
    }

    private static void message(String expected, Executable code) {
        assertEquals(expected, assertThrows(IllegalArgumentException.class, code).getMessage());
    }
}
