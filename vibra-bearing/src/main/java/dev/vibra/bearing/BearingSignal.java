package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;

/**
 * Forward model of a bearing's acceleration: what the diagnosis takes apart.
 *
 * <p>A defect of an element is an impact at each of its rates' periods. Each impact rings a resonance of the structure. The
 * strength swings as the defect travels through the load zone: an inner-race defect at the speed of the shaft, a rolling
 * element at the rate of the cage, an outer-race defect of a fixed ring not at all. Slip shifts the mean rate, and the
 * intervals vary independently, so that the train wanders. The shaft adds tones at its multiples, everything else is white
 * noise of normal distribution.
 *
 * <p>Immutable; equal signals with equal seeds give equal samples on every machine.
 *
 * @see "P. D. McFadden, J. D. Smith, Model for the vibration produced by a single point defect in a rolling element bearing,
 *     Journal of Sound and Vibration 96 (1984) 69-82: impacts and load zone"
 * @see "J. Antoni, R. B. Randall, A stochastic model for simulation and diagnostics of rolling element bearings, Journal of
 *     Vibration and Acoustics 125 (2003) 282-289: slip as a random walk"
 */
public final class BearingSignal implements Serializable {
    private static final long serialVersionUID = 1;
    /** The strength swings from 1 in the middle of the load zone to 0.05 opposite to it; an assumption, no source. */
    private static final double LOAD_ZONE = 0.9;
    private static final int SHAFT_TONES = 4;

    private final KinematicFrequencies kinematics;
    private final Map<BearingElement, Double> defects;
    private final double slip;
    private final double jitter;
    private final double resonanceHertz;
    private final double dampingRatio;
    private final double noiseRms;
    private final double shaftAmplitude;

    private BearingSignal(KinematicFrequencies kinematics, Map<BearingElement, Double> defects, double slip, double jitter,
            double resonanceHertz, double dampingRatio, double noiseRms, double shaftAmplitude) {
        this.kinematics = Objects.requireNonNull(kinematics, "kinematics");
        this.defects = copy(defects);
        this.slip = slip;
        this.jitter = jitter;
        this.resonanceHertz = resonanceHertz;
        this.dampingRatio = dampingRatio;
        this.noiseRms = noiseRms;
        this.shaftAmplitude = shaftAmplitude;
    }

    private static Map<BearingElement, Double> copy(Map<BearingElement, Double> defects) {
        Map<BearingElement, Double> copy = new EnumMap<>(BearingElement.class);
        copy.putAll(defects);
        return copy;
    }

    /**
     * Begins with a sound bearing in a machine that makes 1 m/s² rms of noise: no defect, no slip of the mean rate, intervals
     * that vary by 0.5 %, a resonance at 3000 Hz with a damping ratio of 0.05, no shaft tones.
     *
     * @param kinematics kinematic rates at the speed of the shaft
     * @return the signal
     */
    public static BearingSignal of(KinematicFrequencies kinematics) {
        return new BearingSignal(kinematics, Map.of(), 0, 0.005, 3000, 0.05, 1, 0);
    }

    /**
     * Returns this signal with a defect of an element, beside those it has.
     *
     * @param element element; a second call for it replaces the first
     * @param peak amplitude of the ringing of the strongest impact in m/s², finite, above zero
     * @return the signal
     * @throws IllegalArgumentException if the amplitude is out of range
     */
    public BearingSignal withDefect(BearingElement element, double peak) {
        Map<BearingElement, Double> more = copy(defects);
        more.put(element, Require.positive("peak", peak, "m/s²"));
        return new BearingSignal(kinematics, more, slip, jitter, resonanceHertz, dampingRatio, noiseRms, shaftAmplitude);
    }

    /**
     * Returns this signal with slip.
     *
     * @param share mean rate over kinematic rate, less one, -0.05 to 0.05
     * @param intervalJitter standard deviation of an interval over the mean interval, 0 to 0.2
     * @return the signal
     * @throws IllegalArgumentException if a share is out of range
     */
    public BearingSignal withSlip(double share, double intervalJitter) {
        return new BearingSignal(kinematics, defects, Require.within("slip", share, -0.05, 0.05, ""),
                Require.within("jitter", intervalJitter, 0, 0.2, ""), resonanceHertz, dampingRatio, noiseRms, shaftAmplitude);
    }

    /**
     * Returns this signal with another resonance.
     *
     * @param hertz undamped natural frequency in Hz, finite, above zero
     * @param damping damping ratio, above 0, below 1
     * @return the signal
     * @throws IllegalArgumentException if a value is out of range
     */
    public BearingSignal withResonance(double hertz, double damping) {
        ImpactTrain checked = ImpactTrain.of(1, 0, hertz, damping);
        return new BearingSignal(kinematics, defects, slip, jitter, checked.resonanceHertz(), checked.dampingRatio(),
                noiseRms, shaftAmplitude);
    }

    /**
     * Returns this signal with other noise.
     *
     * @param rms standard deviation of the noise in m/s², finite, zero or more
     * @return the signal
     * @throws IllegalArgumentException if the value is out of range
     */
    public BearingSignal withNoise(double rms) {
        return new BearingSignal(kinematics, defects, slip, jitter, resonanceHertz, dampingRatio,
                Require.notNegative("rms", rms, "m/s²"), shaftAmplitude);
    }

    /**
     * Returns this signal with tones at the first four multiples of the shaft speed, the n-th of amplitude 1/n.
     *
     * @param amplitude amplitude of the first in m/s², finite, zero or more
     * @return the signal
     * @throws IllegalArgumentException if the value is out of range
     */
    public BearingSignal withShaftTones(double amplitude) {
        return new BearingSignal(kinematics, defects, slip, jitter, resonanceHertz, dampingRatio, noiseRms,
                Require.notNegative("amplitude", amplitude, "m/s²"));
    }

    /**
     * Makes the samples.
     *
     * @param sampleRateHertz sample rate in Hz, more than twice the resonance
     * @param length number of samples, at least 1
     * @param seed seed of noise, slip and phases
     * @return acceleration
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Waveform waveform(double sampleRateHertz, int length, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed);
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, sampleRateHertz, length)
                .noise(noiseRms, seeds.nextLong());
        for (int n = 1; n <= SHAFT_TONES && shaftAmplitude > 0; n++) {
            signal = signal.tone(shaftAmplitude / n, n * kinematics.shaftHertz(), 2 * Math.PI * seeds.nextDouble());
        }
        for (Map.Entry<BearingElement, Double> defect : defects.entrySet()) {
            signal = signal.impacts(train(defect.getKey(), defect.getValue()), seeds.nextLong());
        }
        return signal.waveform();
    }

    private ImpactTrain train(BearingElement element, double peak) {
        double modulation = kinematics.modulationOf(element);
        return ImpactTrain.of(rateOf(element), peak, resonanceHertz, dampingRatio).withJitter(jitter)
                .withModulation(modulation, modulation > 0 ? LOAD_ZONE : 0);
    }

    /**
     * Returns the mean rate of the impacts of an element, slip included.
     *
     * @param element element
     * @return rate in Hz
     */
    public double rateOf(BearingElement element) {
        return kinematics.of(element) * (1 + slip);
    }

    /** Returns the defects and the resonance, as in {@code outer race 12 m/s², ringing at 3000 Hz, noise 1 m/s² rms}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        defects.forEach((element, peak) -> text.append(element).append(' ').append(Digits.compact(peak, 3)).append(" m/s², "));
        return (defects.isEmpty() ? "sound bearing, " : text) + "ringing at " + Digits.compact(resonanceHertz, 5)
                + " Hz, noise " + Digits.compact(noiseRms, 3) + " m/s² rms";
    }
}
