package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.uncertainty.LevelUncertainty;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * One recording of 2.85 mm/s rms at 11.5 Hz, where the nominal response of ISO 2954:2012 is 1/√(1 + (10/11.5)⁶) =
 * 0.8356: 2.38 mm/s and zone B by the chain, 2.85 mm/s and zone C by whatever is flat to the end of the band.
 */
class LevelMethodTest {
    private static final Band BAND = Band.of(10, 1000);
    private static final Severity SEVERITY = Severity.of(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(37)
            .withSupport(Support.RIGID).withSpeed(RotationSpeed.ofRevolutionsPerMinute(690)));
    private static final Waveform WAVE = Synthesis.silence(Quantity.ACCELERATION, 12_800, 8 * 12_800)
            .tone(2.85e-3 * Math.sqrt(2) * 2 * Math.PI * 11.5, 11.5, 0).waveform();

    private static Criterion criterion() {
        return SEVERITY.criteria().get(0);
    }

    private static Level chain() {
        return WAVE.throughSeverityChain(Quantity.VELOCITY, BAND).rms();
    }

    @Test
    void aCriterionJudgesTheLevelThatTheStandardMeans() {
        assertEquals(0.8356 * 2.85, chain().in(Unit.MM_PER_S), 0.002);
        Judgement judgement = SEVERITY.judge(chain()).deciding();
        assertEquals(Zone.B, judgement.zone());
        assertEquals(LevelMethod.SEVERITY_CHAIN, judgement.level().method());
        assertTrue(judgement.describe().contains("\n  measured by  severity chain of ISO 2954"));
        Level stated = Level.of(2.85, Unit.MM_PER_S, Detector.RMS).within(BAND);
        assertEquals(Zone.C, SEVERITY.judge(stated).zone().orElseThrow());
        assertTrue(SEVERITY.judge(stated).describe().contains("\n  measured by  stated by the caller"));
    }

    @Test
    void anyOtherIsRefusedAndTheRightCallNamed() {
        Level flat = WAVE.velocity(BAND).rms();
        assertEquals(2.85, flat.in(Unit.MM_PER_S), 0.01);
        assertEquals("level must be measured by severity chain of ISO 2954 for ISO 20816-3:2022 group 2: zero-phase"
                + " band; take waveform.throughSeverityChain(Quantity.VELOCITY, Band.of(10, 1000)).rms(), or Level.of"
                + " for one from elsewhere", refusal(flat));
        Level lines = Spectrum.of(WAVE).velocity().bandLevel(BAND);
        assertTrue(refusal(lines).contains("lines of a spectrum, added; take waveform.throughSeverityChain("));
        assertTrue(refusal(chain().sineAs(Quantity.DISPLACEMENT, Detector.RMS, 11.5))
                .contains("converted as one sine"));
        assertEquals(Optional.of(refusal(flat)), criterion().objectionTo(flat));
        assertEquals(Optional.empty(), criterion().objectionTo(chain()));
    }

    private static String refusal(Level level) {
        return assertThrows(IllegalArgumentException.class, () -> SEVERITY.judge(level)).getMessage();
    }

    /** For a peak-to-peak limit the shape of the wave counts, which the phase of the chain would change. */
    @Test
    void aPeakToPeakLimitTakesTheBandWithoutPhaseShift() {
        Criterion shaft = CriterionTables.shipped().choose(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(500)
                .withSpeed(RotationSpeed.ofRevolutionsPerMinute(1500)), CriterionRequest.of("ISO 20816-3:2022")
                .withGroup("shaft relative")).criteria().get(0);
        Band band = shaft.band();
        Waveform probe = Synthesis.silence(Quantity.DISPLACEMENT, 4 * band.highestHertz(),
                (int) (40 * band.highestHertz())).tone(20e-6, 25, 0).waveform();
        assertEquals(Optional.empty(), shaft.objectionTo(probe.displacement(band).peakToPeak()));
        assertTrue(shaft.objectionTo(probe.peakToPeak()).orElseThrow().contains("take waveform.displacement(Band.of("));
    }

    /** 8 m/s² at 900 Hz: 5.66 m/s² rms, of which the chain passes 1/√(1 + 0.9⁶) = 0.8080. */
    @Test
    void anAccelerationLimitIsJudgedThroughTheChainToo() {
        Severity severity = Severity.of(Machine.of(MachineKind.ELECTRIC_MOTOR).withRatedPowerKilowatts(90)
                .withShaftHeightMillimetres(280).withSupport(Support.RIGID)
                .withSpeed(RotationSpeed.ofRevolutionsPerMinute(1500)), CriterionRequest.of("IEC 60034-14")
                .withGroup("grade A, rigid mounting"));
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).tone(8, 900, 0).waveform();
        Level level = wave.throughSeverityChain(Quantity.ACCELERATION, BAND).rms();
        assertEquals(0.8080 * 8 / Math.sqrt(2), level.si(), 0.005);
        Judgement judgement = severity.judge(Measurement.of(wave.throughSeverityChain(Quantity.ACCELERATION, BAND),
                LevelUncertainty.withDefaults())).deciding();
        assertEquals(Zone.C, judgement.zone(), judgement::toString);
    }
}
