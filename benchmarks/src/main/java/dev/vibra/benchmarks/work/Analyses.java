package dev.vibra.benchmarks.work;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.SpeedEstimate;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.PeakList;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;

/** What is concluded from a recording. */
public final class Analyses {
    private static final KinematicFrequencies RATES = BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(30, 0);

    private static final double FLOOR_HERTZ = 20;

    private final Waveform wave = RouteRecord.waveform();
    private final Spectrum spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(0.5));
    private final Waveform sound = BearingSignal.of(RATES).withShaftTones(1).waveform(12_000, 120_000, 1);
    private final Waveform defective = BearingSignal.of(RATES).withShaftTones(1)
            .withDefect(BearingElement.INNER_RACE, 10).waveform(12_000, 120_000, 1);

    /** Whether a route record may be judged by. */
    public RecordingQuality quality() {
        return RecordingCheck.of(wave);
    }

    /** Verdicts on a sound bearing, ten seconds at 12 kHz, 300 turns. */
    public BearingDiagnosis soundBearing() {
        return BearingDiagnosis.of(sound, RATES);
    }

    /** Verdicts on a bearing with a defect of its inner race. */
    public BearingDiagnosis defectiveBearing() {
        return BearingDiagnosis.of(defective, RATES);
    }

    /** Proportions of a bearing that isn't described. */
    public UnknownBearing unknownBearing() {
        return UnknownBearing.of(defective, RotationSpeed.ofHertz(30));
    }

    /** Level of the noise at each of 25,601 lines. */
    public NoiseFloor noiseFloor() {
        return NoiseFloor.of(spectrum, FLOOR_HERTZ);
    }

    /** The 20 highest of the peaks of as many lines. */
    public PeakList peaks() {
        return spectrum.peaks(RouteRecord.PEAKS);
    }

    /** Speed of rotation without a tachometer. */
    public SpeedEstimate speed() {
        return SpeedEstimate.of(wave);
    }
}
