package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.envelope.Demodulation;
import dev.vibra.filter.Butterworth;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.integration.TimeDifferentiator;
import dev.vibra.integration.TimeIntegrator;
import dev.vibra.level.Decibels;
import dev.vibra.level.PeakHold;
import dev.vibra.level.Percentiles;
import dev.vibra.level.RunningMoments;
import dev.vibra.level.RunningRms;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.Tachometer;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Averaging;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transfer.Mode;
import dev.vibra.window.Window;
import java.util.List;
import java.util.function.DoubleConsumer;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What is not a number or out of range is refused, by name. */
class ArgumentProperties {
    /** A call and the name that its refusal must hold. */
    private record Call(String name, DoubleConsumer call) {
        static Call of(String name, DoubleConsumer call) {
            return new Call(name, call);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    @Provide
    Arbitrary<Double> notFinite() {
        return Arbitraries.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }

    @Provide
    Arbitrary<Double> neverPositive() {
        return Arbitraries.oneOf(notFinite(), Arbitraries.doubles().between(-1e9, 0));
    }

    private static final Waveform WAVE = Synthesis.silence(Quantity.ACCELERATION, 1000, 1000).tone(1, 100,
            0).waveform();

    @Provide
    Arbitrary<Call> positive() {
        SpectrumSettings settings = SpectrumSettings.withDefaults();
        return Arbitraries.of(List.of(
                Call.of("cornerHertz", v -> Butterworth.lowPass(4, v, 1000)),
                Call.of("cornerHertz", v -> Butterworth.highPass(4, v, 1000)),
                Call.of("sampleRateHertz", v -> FilterDesign.butterworth(2).lowPass(100, v)),
                Call.of("rippleDecibels", v -> FilterDesign.chebyshev1(3, v)),
                Call.of("attenuationDecibels", v -> FilterDesign.chebyshev2(3, v)),
                Call.of("sampleRateHertz", v -> FirDesign.lowPass(11, 100, v, Window.hann())),
                Call.of("sampleRateHertz", TimeDifferentiator::at),
                Call.of("cornerHertz", v -> TimeIntegrator.of(1, v, 1000)),
                Call.of("timeConstantSeconds", v -> RunningRms.exponential(v, 1000)),
                Call.of("windowSeconds", v -> RunningRms.linear(v, 1000)),
                Call.of("sampleRateHertz", v -> PeakHold.of(1, v)),
                Call.of("sampleRateHertz", v -> Waveform.ofSi(Quantity.VELOCITY, v, 1)),
                Call.of("sampleRateHertz", v -> Synthesis.silence(Quantity.VELOCITY, v, 1)),
                Call.of("rotation speed", RotationSpeed::ofHertz),
                Call.of("rotation speed", RotationSpeed::ofRevolutionsPerMinute),
                Call.of("resolutionHertz", settings::withResolution),
                Call.of("highestHertz", v -> settings.withLines(10, v)),
                Call.of("orders", v -> settings.withOrders(v, RotationSpeed.ofHertz(1))),
                Call.of("newestWeight", Averaging::exponential),
                Call.of("hysteresis", v -> new Tachometer(0, v, true)),
                Call.of("rateHertz", v -> ImpactTrain.of(v, 1, 100, 0.1)),
                Call.of("dampingRatio", v -> ImpactTrain.of(10, 1, 100, v)),
                Call.of("naturalHertz", v -> new Mode(v, 0.1)),
                Call.of("carrierHertz", v -> Demodulation.of(WAVE, v, 10)),
                Call.of("halfBandHertz", v -> Demodulation.of(WAVE, 100, v)),
                Call.of("endValue", Window::exponential),
                Call.of("fraction", Window::force),
                Call.of("highestHertz", v -> Band.of(0, v)),
                Call.of("probability", v -> Spectrum.of(WAVE).densityInterval(3, v))));
    }

    @Provide
    Arbitrary<Call> finite() {
        return Arbitraries.of(List.of(
                Call.of("samples[1]", v -> Waveform.ofSi(Quantity.VELOCITY, 1, 0, v)),
                Call.of("taps[0]", v -> FirFilter.of(v, 1)),
                Call.of("values[2]", v -> Percentiles.of(1, 2, v)),
                Call.of("samples[0]", v -> new RunningMoments().push(new double[] {v}, 0, 1)),
                Call.of("samples[0]", v -> RunningRms.linear(1, 10).push(new double[] {v}, 0, 1)),
                Call.of("samples[0]", v -> PeakHold.of(1, 10).push(new double[] {v}, 0, 1)),
                Call.of("samples[0]", v -> LevelMeter.withDefaults().at(4000).push(new double[] {v}, 0, 1)),
                Call.of("seconds", v -> PulseTrain.of(0, v)),
                Call.of("level", v -> new Tachometer(v, 1, true)),
                Call.of("decibels", v -> Decibels.toLevel(v, Quantity.VELOCITY)),
                Call.of("phaseRadians", v -> Synthesis.silence(Quantity.VELOCITY, 100, 4).tone(1, 10, v)),
                Call.of("bias", v -> Synthesis.silence(Quantity.VELOCITY, 100, 4).bias(v)),
                Call.of("lowestHertz", v -> Band.of(v, 10)),
                Call.of("overlap", v -> SpectrumSettings.withDefaults().withOverlap(v)),
                Call.of("percent", v -> Percentiles.of(1, 2).at(v)),
                Call.of("order", v -> RotationSpeed.ofHertz(1).hertzOfOrder(v)),
                Call.of("seconds", v -> WAVE.startingAt(v)),
                Call.of("beta", Window::kaiser),
                Call.of("hertz", v -> Spectrum.of(WAVE).peakNear(v, 1))));
    }

    private static void assertRefused(Call call, double value) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class,
                () -> call.call().accept(value));
        assertTrue(refused.getMessage().startsWith(call.name()), refused.getMessage());
        assertTrue(refused.getMessage().contains(Double.toString(value)), refused.getMessage());
    }

    @Property(tries = 600)
    void whatMustBePositiveIsRefusedByName(@ForAll("positive") Call call, @ForAll("neverPositive") double value) {
        assertRefused(call, value);
    }

    @Property(tries = 300)
    void whatMustBeFiniteIsRefusedByName(@ForAll("finite") Call call, @ForAll("notFinite") double value) {
        assertRefused(call, value);
    }
}
