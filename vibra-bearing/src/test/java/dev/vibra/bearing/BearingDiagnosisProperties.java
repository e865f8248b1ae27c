package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.RotationSpeed;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/**
 * Closes the loop: what the forward model puts into a bearing, the diagnosis finds, and nothing else. The seeds are
 * fixed: the diagnosis has a stated false alarm probability of 0.001, which random seeds would meet now and then.
 */
class BearingDiagnosisProperties {
    private static final double SAMPLE_RATE = 25_600;

    @Provide
    Arbitrary<KinematicFrequencies> bearings() {
        return Combinators.combine(Arbitraries.integers().between(7, 16), Arbitraries.doubles().between(0.5, 0.85),
                Arbitraries.doubles().between(0, 40), Arbitraries.doubles().between(15, 50),
                Arbitraries.of(RotatingRing.values()))
                .as((count, filling, angle, speed, ring) -> BearingGeometry
                        .of(count, 50 * filling * Math.sin(Math.PI / count), 50, angle)
                        .frequencies(ring, RotationSpeed.ofHertz(speed)));
    }

    /** 120 revolutions or a little more, a length with a fast transform. */
    private static int length(KinematicFrequencies bearing) {
        return 8192 * (int) Math.ceil(SAMPLE_RATE * 120 / bearing.shaftHertz() / 8192);
    }

    /**
     * The documented limit: multiples, halves, thirds and quarters of the speed of rotation belong to the shaft, with
     * sidebands of their own that come within the tolerance of its speed.
     */
    private static boolean tellsFromTheShaft(double order) {
        if (Math.abs(order - Math.rint(order)) < 0.05) {
            return false;
        }
        for (int parts = 2; parts <= 4; parts++) {
            if (Math.abs(order * parts - Math.rint(order * parts)) / parts < 0.03) {
                return false;
            }
        }
        return true;
    }

    private static boolean tellsFromOtherElements(KinematicFrequencies bearing, BearingElement element, double rate) {
        for (BearingElement other : BearingElement.values()) {
            if (other != element && Math.abs(rate / bearing.of(other) - 1) < 0.025) {
                return false;
            }
        }
        return true;
    }

    @Property(tries = 60, seed = "1984", edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
    void findsWhatTheModelPutIn(@ForAll("bearings") KinematicFrequencies bearing, @ForAll BearingElement element,
            @ForAll @Scale(4) @DoubleRange(min = -0.012, max = 0.012) double slip,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 0.01) double jitter,
            @ForAll @DoubleRange(min = 2500, max = 7000) double resonance,
            @ForAll @DoubleRange(min = 0.04, max = 0.1) double damping, @ForAll long seed) {
        BearingSignal signal = BearingSignal.of(bearing).withDefect(element, 40).withSlip(slip, jitter)
                .withResonance(resonance, damping).withShaftTones(3);
        Assume.that(tellsFromTheShaft(signal.rateOf(element) / bearing.shaftHertz()));
        Assume.that(tellsFromOtherElements(bearing, element, signal.rateOf(element)));
        BearingDiagnosis diagnosis = BearingDiagnosis.of(signal.waveform(SAMPLE_RATE, length(bearing), seed), bearing,
                DiagnosisSettings.withDefaults().withSpeedTolerance(1e-3));
        ElementFinding finding = diagnosis.of(element);
        // The mean of n intervals that vary independently strays by jitter/√n; the blocks weigh some of them only.
        double impacts = signal.rateOf(element) * length(bearing) / SAMPLE_RATE;
        double share = 2e-3 + 6 * jitter / Math.sqrt(impacts);
        assertEquals(signal.rateOf(element), finding.foundHertz().orElse(0), share * signal.rateOf(element),
                diagnosis::describe);
        assertEquals(element == BearingElement.CAGE ? ElementVerdict.NOT_DETERMINED : ElementVerdict.PRESENT,
                finding.verdict(), diagnosis::describe);
        for (ElementFinding other : diagnosis.findings()) {
            assertTrue(other == finding || other.verdict() == ElementVerdict.NOT_DETERMINED, diagnosis::describe);
        }
    }

    @Property(tries = 30, seed = "1984", edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
    void soundBearingHasNothingPresent(@ForAll("bearings") KinematicFrequencies bearing,
            @ForAll @DoubleRange(min = 0, max = 20) double tones, @ForAll long seed) {
        BearingSignal signal = BearingSignal.of(bearing).withShaftTones(tones);
        BearingDiagnosis diagnosis = BearingDiagnosis.of(signal.waveform(SAMPLE_RATE, length(bearing), seed), bearing);
        for (ElementFinding finding : diagnosis.findings()) {
            assertNotEquals(ElementVerdict.PRESENT, finding.verdict(), diagnosis::describe);
        }
    }

    @Property(tries = 15, seed = "1984", edgeCases = EdgeCasesMode.NONE, shrinking = ShrinkingMode.OFF)
    void levelDoesNotChangeTheVerdict(@ForAll("bearings") KinematicFrequencies bearing, @ForAll BearingElement element,
            @ForAll @Scale(3) @DoubleRange(min = 1e-3, max = 1e3) double gain, @ForAll long seed) {
        int length = length(bearing);
        BearingSignal signal = BearingSignal.of(bearing).withDefect(element, 5);
        BearingSignal scaled = BearingSignal.of(bearing).withNoise(gain).withDefect(element, 5 * gain);
        assertEquals(BearingDiagnosis.of(signal.waveform(SAMPLE_RATE, length, seed), bearing).toString(),
                BearingDiagnosis.of(scaled.waveform(SAMPLE_RATE, length, seed), bearing).toString());
    }
}
