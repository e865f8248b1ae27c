package dev.vibra.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bounds of Clopper and Pearson against SciPy and the closed form. */
class ShareTest {
    /** SciPy 1.10.1: {@code scipy.stats.binomtest(k, n).proportion_ci(0.95, "exact")}. */
    @ParameterizedTest
    @CsvSource({"0, 1000, 0, 0.003682083896639526", "3, 14, 0.046579287889786686, 0.5079756770484717",
        "0, 20, 0, 0.16843347098308548", "20, 20, 0.8315665290169145, 1", "1, 1, 0.025, 1",
        "9, 13, 0.3857383382492947, 0.9090796054279034", "81, 263, 0.25273674558504283, 0.3676219226013475",
        "500, 1000, 0.46854917297179194, 0.531450827028208"})
    void boundsAreThoseOfSciPy(int count, int of, double lower, double upper) {
        Share share = new Share(count, of);
        assertEquals(lower, share.lower(), 1e-8);
        assertEquals(upper, share.upper(), 1e-8);
        assertEquals(count / (double) of, share.value().orElseThrow(), 1e-15);
    }

    /** None of n: the upper bound p makes none as improbable as one in forty, {@code (1 - p)^n = 0.025}. */
    @ParameterizedTest
    @CsvSource({"1", "7", "3000"})
    void noneAndAllHaveClosedForms(int of) {
        double bound = 1 - Math.pow(0.025, 1.0 / of);
        assertEquals(bound, new Share(0, of).upper(), 1e-8);
        assertEquals(1 - bound, new Share(of, of).lower(), 1e-8);
        assertEquals(0, new Share(0, of).lower());
        assertEquals(1, new Share(of, of).upper());
    }

    @Test
    void withoutCasesNothingIsKnown() {
        Share none = new Share(0, 0);
        assertEquals(OptionalDouble.empty(), none.value());
        assertEquals(0, none.lower());
        assertEquals(1, none.upper());
    }

    @Test
    void printsCountsAndBounds() {
        assertEquals("3 of 14 (4.7 to 50.8 %)", new Share(3, 14).toString());
    }

    @ParameterizedTest
    @CsvSource({"-1, 3", "4, 3", "0, -1"})
    void countsThatCannotBeAreRefused(int count, int of) {
        String message = assertThrows(IllegalArgumentException.class, () -> new Share(count, of)).getMessage();
        assertTrue(message.contains("count must be from 0 to of = " + of + ": " + count), message);
    }
}
