package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.lines.EnvelopeBands;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.testing.Serial;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class BearingDiagnosisTest {
    private static final BearingGeometry GEOMETRY = BearingGeometry.of(9, 7.94, 39.04, 0);
    private static final KinematicFrequencies RATES =
            GEOMETRY.frequencies(RotatingRing.INNER, RotationSpeed.ofRevolutionsPerMinute(1480));
    private static final double SAMPLE_RATE = 25_600;
    private static final int LENGTH = 102_400;

    private static Waveform recording(BearingSignal signal) {
        return signal.waveform(SAMPLE_RATE, LENGTH, 20816);
    }

    private static BearingSignal machine() {
        return BearingSignal.of(RATES).withShaftTones(2);
    }

    @ParameterizedTest
    @EnumSource(names = {"OUTER_RACE", "INNER_RACE", "ROLLING_ELEMENT"})
    void findsTheElementWithTheDefectAndNoOther(BearingElement element) {
        BearingSignal signal = machine().withDefect(element, 15).withSlip(-0.008, 0.005);
        BearingDiagnosis diagnosis = BearingDiagnosis.of(recording(signal), RATES);
        ElementFinding finding = diagnosis.of(element);
        assertEquals(ElementVerdict.PRESENT, finding.verdict(), diagnosis::describe);
        assertEquals(signal.rateOf(element), finding.foundHertz().orElseThrow(), 1e-3 * signal.rateOf(element));
        assertEquals(RATES.of(element), finding.expectedHertz());
        assertTrue(finding.pulsation().orElseThrow().log10Probability() < -12);
        double depth = finding.pulsation().orElseThrow().depth();
        assertTrue(depth >= 1.0 / 3 && depth <= 2);
        assertTrue(finding.lines().size() >= 2);
        assertEquals(finding.pulsation().orElseThrow().band(), diagnosis.spectrum().orElseThrow().band());
        for (ElementFinding other : diagnosis.findings()) {
            assertTrue(other == finding || other.verdict() == ElementVerdict.NOT_DETERMINED, diagnosis::describe);
        }
    }

    @Test
    @DisplayName("the load zone shows: inner race ± shaft speed, rolling element ± cage")
    void sidebandsAreEvidence() {
        ElementFinding inner = BearingDiagnosis.of(recording(machine().withDefect(BearingElement.INNER_RACE, 15)),
                RATES)
                .of(BearingElement.INNER_RACE);
        EnvelopeLine below = inner.lines().stream().filter(l -> l.harmonic() == 1 && l.sideband() == -1).findFirst()
                .orElseThrow();
        assertEquals(RATES.innerRaceHertz() - RATES.innerRingHertz(), below.frequencyHertz(), 0.2);
        assertEquals("1f−m", below.label());
        ElementFinding ball = BearingDiagnosis.of(recording(machine().withDefect(BearingElement.ROLLING_ELEMENT, 15)),
                RATES).of(BearingElement.ROLLING_ELEMENT);
        EnvelopeLine above = ball.lines().stream().filter(l -> l.harmonic() == 1 && l.sideband() == 1).findFirst()
                .orElseThrow();
        assertEquals(RATES.rollingElementHertz() + RATES.cageHertz(), above.frequencyHertz(), 0.2);
        ElementFinding outer = BearingDiagnosis.of(recording(machine().withDefect(BearingElement.OUTER_RACE, 15)),
                RATES)
                .of(BearingElement.OUTER_RACE);
        assertFalse(outer.lines().stream().anyMatch(EnvelopeLine::isSideband), "a fixed ring has no modulation rate");
    }

    @Test
    void soundBearingIsAbsentThroughout() {
        BearingDiagnosis diagnosis = BearingDiagnosis.of(machine().waveform(SAMPLE_RATE, 6 * LENGTH, 1), RATES);
        for (ElementFinding finding : diagnosis.findings()) {
            assertEquals(ElementVerdict.ABSENT, finding.verdict(), diagnosis::describe);
            assertTrue(finding.detectableDepth().orElseThrow() <= 0.08);
            assertTrue(finding.foundHertz().isEmpty() && finding.lines().isEmpty() && finding.pulsation().isEmpty());
        }
        assertEquals("outer race absent, inner race absent, rolling element absent, cage absent", diagnosis.toString());
    }

    @Test
    @DisplayName("what is called detectable is detected: a defect that pulsates that deep is never called absent")
    void sensitivityIsHonest() {
        int missed = 0;
        for (double peak = 0.2; peak < 3; peak *= 1.15) {
            BearingDiagnosis diagnosis = BearingDiagnosis.of(
                    recording(machine().withDefect(BearingElement.OUTER_RACE, peak)), RATES,
                    DiagnosisSettings.withDefaults().withAbsentDepth(0.2));
            ElementFinding finding = diagnosis.of(BearingElement.OUTER_RACE);
            if (finding.verdict() == ElementVerdict.ABSENT) {
                double depth = trueDepth(peak);
                assertTrue(depth < 1.2 * finding.detectableDepth().orElseThrow(),
                        "peak " + peak + " pulsates " + depth + " deep, " + finding.reason());
                missed++;
            }
        }
        assertTrue(missed > 0, "weak defects are below the sensitivity");
    }

    /**
     * Depth at twice the rate in the deepest candidate band, measured where noise is averaged away: ten times the
     * length.
     */
    private static double trueDepth(double peak) {
        Waveform wave = machine().withSlip(0, 0).withDefect(BearingElement.OUTER_RACE, peak)
                .waveform(SAMPLE_RATE, 10 * LENGTH, 1);
        double deepest = 0;
        for (Band band : EnvelopeBands.candidates(SAMPLE_RATE, RATES.innerRaceHertz())) {
            EnvelopeSpectrum spectrum = EnvelopeSpectrum.of(wave, band);
            int line = (int) Math.rint(2 * RATES.outerRaceHertz() / spectrum.resolutionHertz());
            deepest = Math.max(deepest, Math.max(spectrum.depth(line),
                    Math.max(spectrum.depth(line - 1), spectrum.depth(line + 1))));
        }
        return deepest;
    }

    @Test
    void cageRateNeverConvictsTheCage() {
        BearingDiagnosis diagnosis = BearingDiagnosis.of(recording(machine().withDefect(BearingElement.CAGE, 30)),
                RATES);
        ElementFinding cage = diagnosis.of(BearingElement.CAGE);
        assertEquals(ElementVerdict.NOT_DETERMINED, cage.verdict());
        assertEquals(RATES.cageHertz(), cage.foundHertz().orElseThrow(), 0.05);
        assertTrue(cage.pulsation().orElseThrow().depth() > 1.0 / 3);
        assertTrue(cage.reason().endsWith("the cage or one rolling element, the envelope can't tell which"),
                cage.reason());
        assertEquals(ElementVerdict.NOT_DETERMINED, diagnosis.of(BearingElement.ROLLING_ELEMENT).verdict());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.93, 0.95, 1.05, 1.07})
    void wrongSpeedConvictsNothing(double factor) {
        for (BearingElement element : BearingElement.values()) {
            Waveform wave = recording(machine().withDefect(element, 15));
            KinematicFrequencies wrong = GEOMETRY.frequencies(RotatingRing.INNER,
                    RotationSpeed.ofHertz(factor * RATES.shaftHertz()));
            assertNothingPresent(BearingDiagnosis.of(wave, wrong));
        }
    }

    @Test
    void wrongBearingConvictsNothing() {
        KinematicFrequencies wrong = BearingGeometry.of(8, 6.746, 28.499, 0)
                .frequencies(RotatingRing.INNER, RotationSpeed.ofRevolutionsPerMinute(1480));
        for (BearingElement element : BearingElement.values()) {
            assertNothingPresent(BearingDiagnosis.of(recording(machine().withDefect(element, 15)), wrong));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 1.0 / 3, 0.5, 1})
    @DisplayName("impacts at the speed of rotation or a part of it, as of a loose machine, convict nothing")
    void loosenessConvictsNothing(double share) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).noise(1, 3)
                .impacts(ImpactTrain.of(share * RATES.shaftHertz(), 40, 3000, 0.05), 4).waveform();
        assertNothingPresent(BearingDiagnosis.of(wave, RATES));
    }

    @Test
    @DisplayName("a comb of impacts at a third of an element's rate hits all its harmonics, and convicts nothing")
    void finerCombConvictsNothing() {
        for (int part : new int[] {2, 3, 4, 5}) {
            Waveform wave = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).noise(1, 3)
                    .impacts(ImpactTrain.of(RATES.outerRaceHertz() / part, 40, 3000, 0.05), 4).waveform();
            BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, RATES);
            assertNothingPresent(diagnosis);
            assertNotEquals(ElementVerdict.ABSENT, diagnosis.of(BearingElement.OUTER_RACE).verdict());
        }
    }

    @Test
    @DisplayName("elements of the same rate within the tolerance are told apart by their sidebands, or not at all")
    void elementsOfOneRateAreToldApartBySidebands() {
        KinematicFrequencies twins = new KinematicFrequencies(90, 119, 59.75, 9, 24, 0);
        Waveform wave = recording(BearingSignal.of(twins).withDefect(BearingElement.INNER_RACE, 15));
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, twins);
        assertEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.INNER_RACE).verdict(), diagnosis::describe);
        assertEquals(ElementVerdict.NOT_DETERMINED, diagnosis.of(BearingElement.ROLLING_ELEMENT).verdict());
        KinematicFrequencies steady = new KinematicFrequencies(119, 150, 59.75, 9, 24, 0);
        BearingDiagnosis unmodulated = BearingDiagnosis.of(recording(BearingSignal.of(steady)
                .withDefect(BearingElement.OUTER_RACE, 15)), steady);
        assertNothingPresent(unmodulated);
        assertEquals("lines stand at this rate, but it may be the rolling element just as well, whose rate is 119.5 Hz",
                unmodulated.of(BearingElement.OUTER_RACE).reason());
    }

    @Test
    @DisplayName("a rate twice another element's is the faster element's: the fundamental of the slower one is missing")
    void twiceTheRateOfAnotherElement() {
        KinematicFrequencies octave = new KinematicFrequencies(107.9, 215.71, 59.95, 30.82, 46.23, 0);
        for (long seed = 1; seed <= 5; seed++) {
            Waveform wave = BearingSignal.of(octave).withDefect(BearingElement.INNER_RACE, 15).withSlip(0.01, 0.002)
                    .waveform(SAMPLE_RATE, LENGTH, seed);
            BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, octave);
            assertEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.INNER_RACE).verdict(),
                    diagnosis::describe);
            assertNotEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.OUTER_RACE).verdict());
        }
    }

    @Test
    void ratesOfOtherPartsCountForNothing() {
        Waveform wave = recording(machine().withDefect(BearingElement.OUTER_RACE, 15));
        DiagnosisSettings settings = DiagnosisSettings.withDefaults().withOtherRates(RATES.outerRaceHertz());
        ElementFinding outer = BearingDiagnosis.of(wave, RATES, settings).of(BearingElement.OUTER_RACE);
        assertEquals(ElementVerdict.NOT_DETERMINED, outer.verdict());
    }

    @Test
    void aGivenBandIsTakenAsGiven() {
        Band band = Band.of(2000, 4000);
        Waveform wave = recording(machine().withDefect(BearingElement.OUTER_RACE, 15));
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, RATES, DiagnosisSettings.withDefaults().withBand(band));
        assertEquals(java.util.List.of(band), diagnosis.bands());
        assertEquals("envelope of 2000–4000 Hz, as given", diagnosis.bandReason());
        assertEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.OUTER_RACE).verdict());
        assertThrows(IllegalArgumentException.class, () -> BearingDiagnosis.of(wave, RATES,
                DiagnosisSettings.withDefaults().withBand(Band.of(2000, 12_801))));
    }

    @Test
    void aBandWithoutTheResonanceDeterminesNothingMore() {
        Waveform wave = recording(machine().withDefect(BearingElement.OUTER_RACE, 15));
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, RATES,
                DiagnosisSettings.withDefaults().withBand(Band.of(500, 550)));
        assertNothingPresent(diagnosis);
        assertEquals(ElementVerdict.NOT_DETERMINED, diagnosis.of(BearingElement.INNER_RACE).verdict());
    }

    @Test
    void candidateBandsAreOctavesThatHoldFourHarmonics() {
        assertEquals(java.util.List.of(Band.of(2340, 4680), Band.of(1650, 3310), Band.of(1170, 2340),
                Band.of(828, 1650)), EnvelopeBands.candidates(12_000, 162));
        assertEquals(java.util.List.of(), EnvelopeBands.candidates(12_000, 1000 * 0.6));
    }

    @Test
    void tooShortTooSlowOrSilentIsNotDetermined() {
        Waveform wave = recording(machine());
        BearingDiagnosis brief = BearingDiagnosis.of(wave.part(0, 12_800), RATES);
        assertEquals("the recording holds 12.3 revolutions, 20 are needed", undetermined(brief));
        assertEquals("no envelope spectrum: the recording holds 12.3 revolutions, 20 are needed", brief.bandReason());
        Waveform slow = BearingSignal.of(RATES).withResonance(400, 0.1).waveform(1000, 10_000, 1);
        assertEquals("the sample rate of 1000 Hz leaves no band wide enough for four harmonics of 133.6 Hz",
                undetermined(BearingDiagnosis.of(slow, RATES)));
        Waveform nothing = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).waveform();
        assertEquals("the band 5000–10000 Hz is silent", undetermined(BearingDiagnosis.of(nothing, RATES)));
        Waveform tone = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).tone(1, 50, 0).waveform();
        assertEquals("the band 5000–10000 Hz is silent", undetermined(BearingDiagnosis.of(tone, RATES)));
    }

    private static String undetermined(BearingDiagnosis diagnosis) {
        assertTrue(diagnosis.spectrum().isEmpty() && diagnosis.bands().isEmpty());
        for (ElementFinding finding : diagnosis.findings()) {
            assertEquals(ElementVerdict.NOT_DETERMINED, finding.verdict());
            assertEquals(diagnosis.findings().get(0).reason(), finding.reason());
        }
        return diagnosis.findings().get(0).reason();
    }

    @Test
    void onlyAccelerationIsTaken() {
        Waveform velocity = Synthesis.silence(Quantity.VELOCITY, SAMPLE_RATE, LENGTH).noise(1, 1).waveform();
        assertEquals("wave must be acceleration, in which bearings ring: velocity",
                assertThrows(IllegalArgumentException.class, () -> BearingDiagnosis.of(velocity, RATES)).getMessage());
        assertThrows(NullPointerException.class, () -> BearingDiagnosis.of(recording(machine()), null));
    }

    @Test
    void bothRingsMayTurn() {
        KinematicFrequencies both = GEOMETRY.frequencies(30, -10);
        BearingSignal signal = BearingSignal.of(both).withDefect(BearingElement.INNER_RACE, 15);
        BearingDiagnosis diagnosis = BearingDiagnosis.of(recording(signal), both);
        assertEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.INNER_RACE).verdict(), diagnosis::describe);
    }

    @Test
    void printsAndTravels() {
        BearingDiagnosis diagnosis = BearingDiagnosis.of(recording(machine().withSlip(0, 0)
                .withDefect(BearingElement.OUTER_RACE, 15)), RATES);
        assertEquals("outer race present (88.4", diagnosis.of(BearingElement.OUTER_RACE).toString().substring(0, 24));
        assertTrue(diagnosis.toString().endsWith(
                " Hz), inner race not determined (no sign), rolling element not determined (no sign), cage not"
                + " determined (no sign)"));
        assertEquals(5, diagnosis.describe().split("\n").length);
        String evidence = diagnosis.of(BearingElement.OUTER_RACE).evidence();
        assertTrue(evidence.matches("pulsation at its rate, depth [0-9.]+ \\(limit 0\\.333\\); at least [0-9]+ % of the"
                + " power beats \\([0-9.]+ m/s² rms\\), [2-5] harmonics, 0 sidebands; 88\\.4[0-9]+ Hz found, "
                + "[-+0-9.e]+ % off the kinematic rate; envelope of [0-9.–]+ Hz; chance in noise below 1e-12; "
                + "1f 88\\.4[0-9]* Hz depth .*"), evidence);
        BearingDiagnosis copy = Serial.copy(diagnosis);
        assertEquals(diagnosis.describe(), copy.describe());
        assertEquals(diagnosis.spectrum(), copy.spectrum());
        assertThrows(UnsupportedOperationException.class, () -> diagnosis.findings().clear());
    }

    @Test
    void evidenceThatCannotBeIsRefused() {
        assertEquals("harmonic must be at least 1: 0", message(() -> new EnvelopeLine(0, 0, 10, 0.5, 3, -4)));
        assertEquals("depth must be finite and >= 0: NaN",
                message(() -> new EnvelopeLine(1, 0, 10, Double.NaN, 3, -4)));
        assertEquals("log10Probability must be finite and 0 or less: 1.0", message(() -> new EnvelopeLine(1, 0, 10, 0.5, 3, 1)));
        assertEquals("hertz must be finite and > 0 Hz: 0.0",
                message(() -> new Pulsation(Band.of(100, 200), 0, 0.5, -4, List.of())));
        assertEquals("107.6 Hz, depth 0.71, in 100\u2013200 Hz",
                new Pulsation(Band.of(100, 200), 107.6, 0.71, -4, List.of()).toString());
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }

    private static void assertNothingPresent(BearingDiagnosis diagnosis) {
        assertTrue(diagnosis.findings().stream().noneMatch(f -> f.verdict() == ElementVerdict.PRESENT),
                diagnosis::describe);
    }
}
