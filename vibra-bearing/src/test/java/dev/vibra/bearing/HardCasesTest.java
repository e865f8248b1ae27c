package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Rates that lie awkwardly, short recordings, faint and foreign pulsations; each by the forward model. */
class HardCasesTest {
    private static final double SAMPLE_RATE = 12_800;
    private static final int LENGTH = 128_000;

    private static KinematicFrequencies rates(int elements, double ball, double pitch) {
        return BearingGeometry.of(elements, ball, pitch, 0).frequencies(29.5, 0);
    }

    private static Waveform recording(BearingSignal signal, int length, long seed) {
        return signal.withResonance(3000, 0.05).withShaftTones(1).waveform(SAMPLE_RATE, length, seed);
    }

    private static void assertOnly(BearingElement element, BearingDiagnosis diagnosis) {
        for (ElementFinding finding : diagnosis.findings()) {
            assertEquals(finding.element() == element, finding.verdict() == ElementVerdict.PRESENT,
                    diagnosis::describe);
        }
    }

    @Test
    @DisplayName("where the inner race less one turn falls on the rate of the rolling element, each is told right")
    void sidebandsOfTheInnerRaceAreNoRollingElement() {
        KinematicFrequencies rates = rates(9, 8.552, 40);
        assertEquals(rates.rollingElementHertz(), rates.innerRaceHertz() - rates.shaftHertz(), 0.1);
        for (long seed = 1; seed <= 6; seed++) {
            for (BearingElement element : new BearingElement[] {BearingElement.INNER_RACE,
                BearingElement.ROLLING_ELEMENT}) {
                BearingSignal signal = BearingSignal.of(rates).withDefect(element, 12).withSlip(0.001 * seed, 0.005);
                assertOnly(element, BearingDiagnosis.of(recording(signal, LENGTH, seed), rates));
            }
        }
    }

    @Test
    @DisplayName("twelve times the cage, four thirds of the outer race of nine elements, is no rolling element")
    void partsOfAFoundRateAreNoOtherElement() {
        KinematicFrequencies rates = rates(9, 8, 40);
        assertEquals(rates.rollingElementHertz(), 4 * rates.outerRaceHertz() / 3, 0.01);
        for (long seed = 1; seed <= 6; seed++) {
            Waveform wave = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).noise(1, seed)
                    .impacts(ImpactTrain.of(rates.outerRaceHertz(), 15, 3000, 0.05), seed)
                    .impacts(ImpactTrain.of(rates.outerRaceHertz() / 3, 10, 3000, 0.05), seed).waveform();
            BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, rates);
            assertNotEquals(ElementVerdict.PRESENT, diagnosis.of(BearingElement.ROLLING_ELEMENT).verdict(),
                    diagnosis::describe);
        }
    }

    @Test
    @DisplayName("rates beside a multiple, a half or a quarter of the speed are named where no such line stands")
    void ratesBesidePartsOfTheSpeedAreNamed() {
        for (long seed = 1; seed <= 3; seed++) {
            KinematicFrequencies half = rates(9, 17.5, 77.5);
            assertEquals(5.516, half.innerRaceHertz() / half.shaftHertz(), 0.001);
            assertOnly(BearingElement.INNER_RACE, BearingDiagnosis.of(recording(BearingSignal.of(half)
                    .withDefect(BearingElement.INNER_RACE, 20), LENGTH, seed), half));
            KinematicFrequencies quarter = rates(8, 7.5, 40);
            assertEquals(3.25, quarter.outerRaceHertz() / quarter.shaftHertz(), 0.001);
            assertOnly(BearingElement.OUTER_RACE, BearingDiagnosis.of(recording(BearingSignal.of(quarter)
                    .withDefect(BearingElement.OUTER_RACE, 20), LENGTH, seed), quarter));
            KinematicFrequencies beside = rates(8, 9.5, 40);
            assertEquals(3.05, beside.outerRaceHertz() / beside.shaftHertz(), 0.001);
            assertOnly(BearingElement.OUTER_RACE, BearingDiagnosis.of(recording(BearingSignal.of(beside)
                    .withDefect(BearingElement.OUTER_RACE, 20).withSlip(-0.008, 0.002), LENGTH, seed), beside));
        }
    }

    @Test
    @DisplayName("a quarter of the speed explains a rate where other odd quarters stand too")
    void quartersThatStandExplain() {
        KinematicFrequencies quarter = rates(8, 7.5, 40);
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).noise(1, 1)
                .impacts(ImpactTrain.of(0.25 * quarter.shaftHertz(), 60, 3000, 0.05), 2).waveform();
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, quarter);
        assertOnly(null, diagnosis);
        assertEquals(ElementVerdict.NOT_DETERMINED, diagnosis.of(BearingElement.OUTER_RACE).verdict());
    }

    @Test
    @DisplayName("a significant family is never called absent, however faint")
    void faintIsNotAbsent() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        int faint = 0;
        for (int seed = 1; seed <= 20; seed++) {
            BearingSignal signal = BearingSignal.of(rates).withDefect(BearingElement.OUTER_RACE, 0.8 + 0.1 * seed);
            ElementFinding finding = BearingDiagnosis.of(recording(signal, LENGTH, seed), rates)
                    .of(BearingElement.OUTER_RACE);
            if (finding.pulsation().isPresent()) {
                assertNotEquals(ElementVerdict.ABSENT, finding.verdict(), finding::evidence);
                faint += finding.pulsation().get().depth() < 0.1 ? 1 : 0;
            }
        }
        assertTrue(faint > 0, "none was fainter than a sign");
    }

    @Test
    @DisplayName("one second at 1770 r/min, 30 revolutions, names clear defects")
    void oneSecondIsEnoughForClearDefects() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        for (long seed = 1; seed <= 4; seed++) {
            for (BearingElement element : new BearingElement[] {BearingElement.OUTER_RACE,
                BearingElement.INNER_RACE}) {
                BearingSignal signal = BearingSignal.of(rates).withDefect(element, 25).withSlip(-0.005, 0.005);
                assertOnly(element, BearingDiagnosis.of(recording(signal, 12_800, seed), rates));
            }
        }
    }

    @Test
    @DisplayName("a deep pulsation of the cage and nothing else is a rolling element or the cage")
    void aPulsationOfTheCageAloneIsAFinding() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        BearingDiagnosis cage = BearingDiagnosis.of(recording(BearingSignal.of(rates)
                .withDefect(BearingElement.CAGE, 30), LENGTH, 1), rates);
        assertEquals(rates.cageHertz(), cage.rollingElementOrCage().orElseThrow().hertz(), 0.05);
        BearingDiagnosis outer = BearingDiagnosis.of(recording(BearingSignal.of(rates)
                .withDefect(BearingElement.OUTER_RACE, 30), LENGTH, 1), rates);
        assertTrue(outer.rollingElementOrCage().isEmpty());
        assertTrue(BearingDiagnosis.of(recording(BearingSignal.of(rates), LENGTH, 1), rates).rollingElementOrCage()
                .isEmpty());
    }

    @Test
    @DisplayName("a foreign pulsation is told, and leaves elements absent whose rates lie elsewhere")
    void aForeignPulsationHidesOnlyWhatIsNear() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, SAMPLE_RATE, LENGTH).noise(1, 3)
                .impacts(ImpactTrain.of(1.83 * rates.shaftHertz(), 20, 3000, 0.05), 4).waveform();
        BearingDiagnosis diagnosis = BearingDiagnosis.of(wave, rates);
        double foreign = diagnosis.unexplained().orElseThrow().hertz() / (1.83 * rates.shaftHertz());
        assertEquals(Math.rint(foreign), foreign, 0.01);
        assertEquals(ElementVerdict.ABSENT, diagnosis.of(BearingElement.CAGE).verdict(), diagnosis::describe);
        assertOnly(null, diagnosis);
    }

    @Test
    @DisplayName("a slow drift, which makes the ends of a recording differ, changes no verdict")
    void driftChangesNoVerdict() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        Waveform wave = recording(BearingSignal.of(rates).withDefect(BearingElement.OUTER_RACE, 6), LENGTH, 1);
        double[] drifting = wave.samples();
        for (int i = 0; i < drifting.length; i++) {
            drifting[i] += 400.0 * i / drifting.length;
        }
        assertEquals(BearingDiagnosis.of(wave, rates).toString(), BearingDiagnosis.of(
                Waveform.ofSi(Quantity.ACCELERATION, SAMPLE_RATE, drifting), rates).toString());
        assertOnly(BearingElement.OUTER_RACE, BearingDiagnosis.of(wave, rates));
    }

    /** Twice the knocks are twice the beating rms, whatever the depth does, which noise dilutes. */
    @Test
    @DisplayName("the extent of a defect grows with its knocks, and is told only of what is present")
    void extentFollowsTheKnocks() {
        KinematicFrequencies rates = rates(9, 7.94, 39.04);
        BearingSignal signal = BearingSignal.of(rates).withSlip(0, 0);
        DefectExtent small = extent(signal.withDefect(BearingElement.OUTER_RACE, 10), rates);
        DefectExtent large = extent(signal.withDefect(BearingElement.OUTER_RACE, 20), rates);
        assertEquals(2, large.timesThatOf(small), 0.1);
        assertTrue(small.harmonics() >= 4, small::toString);
        assertEquals(0, small.sidebands());
        assertTrue(extent(signal.withDefect(BearingElement.INNER_RACE, 20), rates).sidebands() >= 2);
        assertTrue(BearingDiagnosis.of(recording(signal, LENGTH, 1), rates).of(BearingElement.OUTER_RACE).extent()
                .isEmpty());
    }

    private static DefectExtent extent(BearingSignal signal, KinematicFrequencies rates) {
        return BearingDiagnosis.of(recording(signal, LENGTH, 1), rates).findings().stream()
                .flatMap(finding -> finding.extent().stream()).findFirst().orElseThrow();
    }
}
