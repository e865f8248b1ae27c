package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.bearing.proportion.ObservedRate;
import dev.vibra.bearing.proportion.Proportions;
import dev.vibra.bearing.proportion.UnknownBearingSettings;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.synthesis.Resonance;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Numbers that no bearing has are refused by name, or give a number. */
class BearingLimitsTest {
    private static final KinematicFrequencies RATES = BearingGeometry.of(9, 7.94, 38.5, 0).frequencies(25, 0);

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void silenceHasLinesToo() {
        Waveform silence = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[1000]);
        SearchLines lines = SearchLines.ofVibration(silence, 25, 100);
        assertEquals(10 * lines.resolutionHertz(), lines.interpolated(10));
    }

    private static void assertNamed(String argument, Executable call) {
        assertEquals(argument, assertThrows(NullPointerException.class, call).getMessage());
    }

    @Test
    void nullsInListsAreNamed() {
        assertNamed("rung[1]", () -> BearingSignal.of(RATES).withResonances(new Resonance(3000, 0.05, 1), null));
        assertNamed("rates[0]", () -> Proportions.of(Arrays.asList((ObservedRate) null), RotatingRing.OUTER));
        assertNamed("turning[0]", () -> UnknownBearingSettings.withDefaults().withTurning((RotatingRing) null));
    }

    @Test
    void sizesStayFiniteInMillimetres() {
        assertRefused("pitchDiameter must be within 0.0 to 1000000.0 m: 1.0E306",
                () -> new BearingGeometry(9, 1, 1e306, 0));
    }

    @Test
    void searchesEnd() {
        Waveform silence = Waveform.ofSi(Quantity.ACCELERATION, 1000, new double[1000]);
        SearchField field = SearchField.of(SearchLines.ofVibration(silence, 25, 100), LineMask.nothing());
        assertRefused("harmonics must be from 2 to 100: 101", () -> RateFamily.best(field, 10, 1e300, 101));
        assertEquals(0, RateFamily.best(field, 10, Double.MAX_VALUE, 100).logProbability());
    }

    @Test
    void ringingEnds() {
        assertRefused("energy of the ringing must be finite and >= 0 s: Infinity",
                () -> new Resonance(25, Double.MIN_VALUE, 1));
    }

    @Test
    void signalsAreAsLongAsRecordings() {
        assertRefused("length must be from 1 to 67108864: 2147483647",
                () -> BearingSignal.of(RATES).waveform(10_000, Integer.MAX_VALUE, 1));
    }
}
