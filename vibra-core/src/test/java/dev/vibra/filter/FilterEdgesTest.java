package dev.vibra.filter;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Ranges, rows of coefficients and the order of sections. */
class FilterEdgesTest {
    /** What filters have in common. */
    private interface Process {
        void process(double[] in, int inOffset, double[] out, int outOffset, int length);
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    private static SectionCascade gainOfTwo() {
        return SectionCascade.of(new double[] {2, 0, 0, 1, 0, 0});
    }

    @Test
    void rangesMustLieInTheirArrays() {
        for (Process filter : List.<Process>of(gainOfTwo().newFilter()::process, FirFilter.of(2)::process)) {
            double[] three = {1, 2, 3};
            double[] five = {0, 0, 0, 0, 0};
            assertRefused("in must lie inside the array of length 3: offset 1, length 3",
                    () -> filter.process(three, 1, five, 0, 3));
            assertRefused("in must lie inside the array of length 3: offset -1, length 2",
                    () -> filter.process(three, -1, five, 0, 2));
            assertRefused("in must lie inside the array of length 3: offset 0, length -1",
                    () -> filter.process(three, 0, five, 0, -1));
            assertRefused("out must lie inside the array of length 5: offset 3, length 3",
                    () -> filter.process(three, 0, five, 3, 3));
            assertRefused("out must lie inside the array of length 5: offset -1, length 3",
                    () -> filter.process(three, 0, five, -1, 3));
            assertArrayEquals(new double[5], five);
            filter.process(three, 0, five, 2, 3);
            filter.process(three, 3, five, 5, 0);
            filter.process(three, 1, five, 0, 1);
            assertArrayEquals(new double[] {4, 0, 2, 4, 6}, five);
            filter.process(five, 2, five, 1, 2); // another place of the same array, overlapping
            assertArrayEquals(new double[] {4, 4, 8, 4, 6}, five);
            filter.process(three, 0, three, 0, 3);
            assertArrayEquals(new double[] {2, 4, 6}, three);
        }
    }

    @Test
    void rowsAreCheckedCopiedAndScaled() {
        double[] row = {2, 4, 6, 2, 1, 0.5};
        SectionCascade cascade = SectionCascade.of(row, new double[] {1, 0, 0, 1, 0, 0});
        row[0] = 99;
        assertArrayEquals(new double[] {1, 2, 3, 1, 0.5, 0.25}, cascade.section(0));
        cascade.section(0)[0] = 99;
        assertEquals(1, cascade.section(0)[0]);
        assertEquals("2 second-order sections", cascade.toString());
        assertEquals("1 second-order section", gainOfTwo().toString());
        assertEquals("filter of 2 second-order section(s)", cascade.newFilter().toString());
        assertEquals("non-recursive filter of 2 taps", FirFilter.of(1, 2).toString());
        assertRefused("index must be from 0 to 1: -1", () -> cascade.section(-1));
        assertRefused("section[1][4] must be finite: NaN",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, 0, 0}, new double[] {1, 0, 0, 1, Double.NaN, 0}));
        assertRefused("section[1] must have 6 coefficients: 7",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, 0, 0}, new double[7]));
        assertRefused("section[0] must be stable: a1 0.0, a2 -1.0",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, 0, -1}));
        assertRefused("section[0] must be stable: a1 1.5, a2 0.5",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, 1.5, 0.5}));
        assertRefused("section[0] must be stable: a1 -1.5, a2 0.5",
                () -> SectionCascade.of(new double[] {1, 0, 0, 1, -1.5, 0.5}));
        assertRefused("number of taps must be at least 1: 0", FirFilter::of);
        assertRefused("taps[1] must be finite: Infinity", () -> FirFilter.of(1, Double.POSITIVE_INFINITY));
    }

    /** Poles at radius 0.9 and 0.5, zeros near each: the sharper pair takes its own zeros and runs last. */
    @Test
    void sharpestResonanceTakesItsZerosAndRunsLast() {
        Complex sharp = Complex.valueOf(0.9).multiply(new Complex(Math.cos(1), Math.sin(1)));
        Complex blunt = Complex.valueOf(0.5).multiply(new Complex(Math.cos(2), Math.sin(2)));
        Complex nearSharp = new Complex(Math.cos(1.1), Math.sin(1.1));
        Complex nearBlunt = new Complex(Math.cos(2.1), Math.sin(2.1));
        SectionCascade cascade = SectionPairing.pair(
                List.of(nearBlunt, nearBlunt.conjugate(), nearSharp, nearSharp.conjugate()),
                List.of(sharp, sharp.conjugate(), blunt.conjugate(), blunt), 3);
        double[] first = {3, -6 * Math.cos(2.1), 3, 1, -Math.cos(2), 0.25};
        double[] last = {1, -2 * Math.cos(1.1), 1, 1, -1.8 * Math.cos(1), 0.81};
        assertArrayEquals(first, cascade.section(0), 1e-12);
        assertArrayEquals(last, cascade.section(1), 1e-12);
    }

    /** An odd order: the lone real pole runs first with the lone zero, whatever its radius. */
    @Test
    void theLonePoleRunsFirst() {
        Complex pole = new Complex(0.2, 0.3);
        SectionCascade cascade = SectionPairing.pair(List.of(new Complex(-1), new Complex(-0.5), new Complex(0.3)),
                List.of(pole, new Complex(0.95), pole.conjugate()), 1);
        assertEquals(2, cascade.size());
        assertArrayEquals(new double[] {1, -0.3, 0, 1, -0.95, 0}, cascade.section(0), 1e-12);
        // The outermost real zeros go together: -1 and -0.5.
        assertArrayEquals(new double[] {1, 1.5, 0.5, 1, -0.4, 0.13}, cascade.section(1), 1e-12);
    }

    /** Poles without zeros (an all-pole filter), and real poles two by two. */
    @Test
    void polesMayOutnumberZeros() {
        SectionCascade cascade = SectionPairing.pair(List.of(new Complex(-1)),
                List.of(new Complex(0.5), new Complex(-0.25), new Complex(0.75), new Complex(0.1)), 2);
        assertArrayEquals(new double[] {2, 0, 0, 1, 0.15, -0.025}, cascade.section(0), 1e-12);
        assertArrayEquals(new double[] {1, 1, 0, 1, -1.25, 0.375}, cascade.section(1), 1e-12);
    }
}
