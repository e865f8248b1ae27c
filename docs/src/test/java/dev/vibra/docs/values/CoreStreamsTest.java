package dev.vibra.docs.values;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.EnvelopeLine;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.proportion.ObservedRate;
import dev.vibra.bearing.proportion.Proportion;
import dev.vibra.bearing.proportion.Proportions;
import dev.vibra.bearing.proportion.RateElsewhere;
import dev.vibra.bearing.proportion.SeenPulsation;
import dev.vibra.bearing.proportion.SidebandSpacing;
import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.bearing.proportion.UnknownBearingSettings;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.synthesis.GearMesh;
import dev.vibra.bearing.synthesis.Resonance;
import dev.vibra.bearing.synthesis.SensorResponse;
import dev.vibra.bearing.synthesis.Surroundings;
import dev.vibra.cepstrum.Cepstrum;
import dev.vibra.cyclic.SpectralCoherence;
import dev.vibra.envelope.Demodulation;
import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.evidence.Remark;
import dev.vibra.evidence.Share;
import dev.vibra.filter.CascadeFilter;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.level.Moments;
import dev.vibra.level.PeakHold;
import dev.vibra.level.Percentiles;
import dev.vibra.level.RunningMoments;
import dev.vibra.level.RunningRms;
import dev.vibra.lines.FamilyMember;
import dev.vibra.lines.HarmonicFamily;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.lines.SidebandFamily;
import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.octave.OctaveBand;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.Steadiness;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.record.WholeRecord;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.FullSpectrum;
import dev.vibra.rotation.Orbit;
import dev.vibra.rotation.OrderSpectrum;
import dev.vibra.rotation.OrderTrack;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.ShaftCentreLine;
import dev.vibra.rotation.SpeedEstimate;
import dev.vibra.rotation.SpeedKnowledge;
import dev.vibra.rotation.SynchronousAverage;
import dev.vibra.rotation.SynchronousResidual;
import dev.vibra.rotation.Tachometer;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.CountConversion;
import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Averaging;
import dev.vibra.spectrum.ConfidenceInterval;
import dev.vibra.spectrum.Spectrogram;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.spectrum.ZoomSpectrum;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transfer.FrequencyResponse;
import dev.vibra.transfer.ImpactTest;
import dev.vibra.transfer.Mode;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Values of vibra-core and vibra-bearing. */
class CoreStreamsTest extends ValueStreamChecks {
    private static final double RATE = 2048;
    private static final RotationSpeed SPEED = RotationSpeed.ofHertz(24.7);
    private static final SpectrumSettings SETTINGS = SpectrumSettings.withDefaults().withResolution(4);
    private static final Waveform WAVE = Synthesis.silence(Quantity.ACCELERATION, RATE, 4096)
            .harmonics(24.7, new double[] {1, 0.6, 0.4, 0.2}, new double[4]).noise(0.1, 7)
            .impacts(ImpactTrain.of(88.3, 3, 700, 0.05), 5).waveform();
    private static final Waveform OTHER = Synthesis.silence(Quantity.ACCELERATION, RATE, 4096)
            .tone(1, 24.7, 1.5).noise(0.1, 8).waveform();
    private static final KinematicFrequencies KINEMATICS =
            BearingGeometry.of(9, 7.94, 39.04, 0).frequencies(RotatingRing.INNER, SPEED);

    @Override
    Set<String> modules() {
        return Set.of("vibra-core", "vibra-bearing");
    }

    @Override
    Set<String> mayBeNegative() {
        return Set.of("OctaveBand.index", "FamilyMember.number", "EnvelopeLine.sideband");
    }

    @Override
    List<Serializable> samples() {
        List<Serializable> all = new ArrayList<>();
        all.addAll(signalsAndLevels());
        all.addAll(spectra());
        all.addAll(linesAndTransfer());
        all.addAll(rotation());
        all.addAll(settings());
        all.addAll(bearing());
        all.addAll(proportions());
        all.addAll(streams());
        return all;
    }

    private static List<Serializable> signalsAndLevels() {
        return List.of(WAVE, WAVE.velocity(Band.of(10, 400)), Moments.of(WAVE.samples()),
                Percentiles.of(WAVE.samples()), Steadiness.ofLevel(WAVE).orElseThrow(),
                RecordingCheck.withDefaults(), RecordingCheck.withDefaults().withSpeed(SPEED).withMains(50)
                .withUsableTo(900), RecordingCheck.of(WAVE), WAVE.rms(), WAVE.velocity(Band.of(10, 400)).peak(),
                Band.of(10, 400), SPEED, Remark.note("code", "text", 3, 2), new Share(3, 14),
                WholeRecord.of(WAVE).rms(Quantity.VELOCITY, Band.of(10, 400)));
    }

    private static List<Serializable> spectra() {
        SpectralCoherence coherence = SpectralCoherence.of(WAVE, 128, 200);
        return List.of(Spectrum.of(WAVE, SETTINGS), Spectrum.of(WAVE, SETTINGS).peaks(3),
                Spectrum.of(WAVE, SETTINGS).peaks(3).get(0), ZoomSpectrum.of(WAVE, Band.of(50, 150), SETTINGS),
                Spectrogram.of(WAVE, SETTINGS), Cepstrum.of(WAVE.part(0, 512)), Envelope.squared(WAVE,
                Band.of(500, 900)), EnvelopeSpectrum.of(WAVE, Band.of(500, 900), 4), Demodulation.of(WAVE.part(0, 1024),
                300, 100), coherence, coherence.improvedEnvelopeSpectrum(Band.of(400, 900)),
                coherence.bestBand(88.3, 3).orElseThrow(), BandMap.of(WAVE, BandCriterion.SPECTRAL_KURTOSIS, 128),
                BandMap.of(WAVE, BandCriterion.SPECTRAL_KURTOSIS, 128).best(), new ConfidenceInterval(1, 2));
    }

    private static List<Serializable> linesAndTransfer() {
        Spectrum spectrum = Spectrum.of(WAVE, SpectrumSettings.withDefaults().withResolution(1));
        NoiseFloor floor = NoiseFloor.of(spectrum, 40);
        HarmonicFamily family = HarmonicFamily.of(spectrum, floor, 24.7, 4, 0.01, 0.01);
        FamilyMember member = family.members().get(0);
        ImpactTest impact = ImpactTest.withDefaults().withHit(OTHER.part(0, 256), WAVE.part(0, 256));
        return List.of(floor, LineNoise.of(4), family, member, SidebandFamily.of(spectrum, floor, 88.3, 24.7, 2, 0.01,
                0.01), FrequencyResponse.of(OTHER, WAVE, SETTINGS), impact, ImpactTest.withDefaults()
                .withWindows(Window.force(0.2), Window.exponential(0.1)), new Mode(40, 0.02));
    }

    private static List<Serializable> rotation() {
        SpeedProfile profile = new SpeedProfile(SPEED, RotationSpeed.ofHertz(25.5), 2);
        Waveform signal = profile.tachometer(RATE, 1);
        Tachometer tachometer = Tachometer.fitting(signal);
        ShaftAngle angle = ShaftAngle.of(tachometer.pulses(signal), 1);
        AngularWaveform even = AngularWaveform.of(WAVE, angle, 32);
        OrderTrack track = OrderTrack.of(even, 1, 8);
        SpeedEstimate estimate = SpeedEstimate.of(WAVE);
        SynchronousResidual residual = SynchronousResidual.of(WAVE, angle);
        return List.of(profile, tachometer, tachometer.pulses(signal), angle, even, track, track.points().get(0),
                track.points().get(0).vector(), Orbit.of(track.points().get(0).vector(),
                track.points().get(1).vector()), OrderSpectrum.of(even, 8, Window.hann()), SynchronousAverage.of(even),
                residual, FullSpectrum.of(WAVE, OTHER, SETTINGS), ShaftCentreLine.of(WAVE, OTHER, 0, 0, 4),
                ShaftCentreLine.of(WAVE, OTHER, 0, 0, 4).points().get(0), estimate, estimate.candidates().get(0),
                SpeedKnowledge.none(), SpeedKnowledge.none().withNominal(SPEED).withMains(50).withInductionMotor(),
                SpeedKnowledge.none().withRange(Band.of(10, 30)), TrackedAngle.of(WAVE, SPEED));
    }

    private static List<Serializable> settings() {
        return List.of(SETTINGS, Averaging.rms(), Averaging.exponential(0.1), Window.hann(), Window.triangular(),
                Window.kaiser(8), Window.tukey(0.5), Window.exponential(0.1), Window.force(0.2),
                FilterDesign.butterworth(4), FilterDesign.chebyshev1(3, 1), FilterDesign.chebyshev2(3, 40),
                FilterDesign.butterworth(4).lowPass(300, RATE), new OctaveBand(3, -5),
                ImpactTrain.of(88.3, 3, 700, 0.05).withJitter(0.01).withModulation(20, 0.5).withAlternate(0.8));
    }

    private static List<Serializable> bearing() {
        BearingSignal signal = BearingSignal.of(KINEMATICS).withDefect(BearingElement.OUTER_RACE, 12)
                .withResonance(3200, 0.05).withSensor(SensorResponse.secondOrder(9000, 0.03))
                .withSurroundings(Surroundings.ofNoise(0.5).withGear(new GearMesh(430, 1, 24.7, 0.3)));
        BearingDiagnosis diagnosis = BearingDiagnosis.of(signal.waveform(12_800, 51_200, 3), KINEMATICS);
        BearingDiagnosis none = BearingDiagnosis.of(WAVE.part(0, 300), KINEMATICS);
        return List.of(BearingGeometry.of(9, 7.94, 39.04, 0), KINEMATICS, signal, BearingSignal.of(KINEMATICS),
                new Resonance(3000, 0.05, 1), SensorResponse.firstOrder(4000), new GearMesh(430, 1, 24.7, 0.3),
                Surroundings.ofNoise(1), DiagnosisSettings.withDefaults().withOtherRates(12, 13)
                .withBand(Band.of(2000, 4000)), diagnosis, none, diagnosis.of(BearingElement.OUTER_RACE),
                diagnosis.of(BearingElement.INNER_RACE), none.of(BearingElement.CAGE),
                diagnosis.of(BearingElement.OUTER_RACE).extent().orElseThrow(),
                diagnosis.of(BearingElement.OUTER_RACE).pulsation().orElseThrow(),
                new EnvelopeLine(1, -1, 88.3, 0.5, 8, -9));
    }

    private static List<Serializable> proportions() {
        Waveform wave = BearingSignal.of(KINEMATICS).withDefect(BearingElement.OUTER_RACE, 12)
                .withResonance(3200, 0.05).waveform(12_800, 51_200, 3);
        ObservedRate rate = ObservedRate.of(3.585).withSidebands(1, 0.3);
        List<Proportion> proportions = Proportions.of(List.of(rate), RotatingRing.INNER);
        SeenPulsation seen = new SeenPulsation(Band.of(2000, 4000), 88.3, 0.5, -12, rate);
        return List.of(rate, new SidebandSpacing(1, 0.3), seen, new RateElsewhere(seen, "twice the mains"),
                proportions.get(0), UnknownBearing.of(wave, SPEED), UnknownBearing.of(WAVE, SPEED),
                UnknownBearingSettings.withDefaults().withLineFrequencies(50).withOtherRates(12, 13));
    }

    /** States of what takes a stream block by block. */
    private static List<Serializable> streams() {
        LevelMeter.Settings settings = LevelMeter.withDefaults().withBand(Band.of(10, 400))
                .and(Quantity.DISPLACEMENT, Band.of(10, 100));
        LevelMeter levels = settings.at(RATE);
        levels.push(0, WAVE.samples(), 0, 300);
        EnvelopeMeter envelope = EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(500, 900), 128, RATE);
        envelope.push(0, WAVE.samples(), 0, 300);
        SpectrumMeter spectrum = SpectrumMeter.of(Quantity.ACCELERATION, RATE, SETTINGS.withResolution(32));
        spectrum.push(0, WAVE.samples(), 0, 300);
        RunningRms rms = RunningRms.linear(0.01, RATE);
        rms.push(WAVE.samples(), 0, 300);
        PeakHold peak = PeakHold.of(1, RATE);
        peak.push(WAVE.samples(), 0, 300);
        RunningMoments moments = new RunningMoments();
        moments.push(WAVE.samples(), 0, 300);
        double[] out = new double[300];
        CascadeFilter cascade = FilterDesign.butterworth(4).lowPass(300, RATE).newFilter();
        cascade.process(WAVE.samples(), 0, out, 0, 300);
        FirFilter fir = FirFilter.of(0.25, 0.5, 0.25);
        fir.process(WAVE.samples(), 0, out, 0, 300);
        BandLimitingChain chain = BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, Band.of(10, 400),
                RATE);
        chain.process(WAVE.samples(), 0, out, 0, 300);
        return List.of(settings, settings.measurands().get(0), levels.snapshot(), envelope.snapshot(),
                spectrum.snapshot(), rms.snapshot(), peak.snapshot(), moments.snapshot(), cascade.snapshot(),
                fir.snapshot(), chain.snapshot(), TimeIntegrator.of(1, 5, RATE).snapshot(),
                TimeDifferentiator.at(RATE).snapshot(), CountConversion.of(Unit.G, 1e-3).withChannel(2, 3),
                SimultaneousRecording.of(List.of(WAVE.part(0, 64), OTHER.part(0, 64))));
    }
}
