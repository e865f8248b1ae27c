package dev.vibra.bearing.synthesis;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.io.Serializable;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * Forward model of a bearing's acceleration: what the diagnosis takes apart.
 *
 * <p>A defect of an element is an impact at each of its rates' periods. Each impact rings the resonances of the
 * structure, which the sensor then shows as well as it follows.
 * The strength swings as the defect travels through the load zone: an inner-race defect at the speed of the shaft, a
 * rolling element at the rate of the cage, an outer-race defect of a fixed ring not at all. Slip shifts the mean rate,
 * and the intervals vary independently, so that the train wanders. What the machine around adds is told by {@link
 * Surroundings}.
 *
 * <p>Immutable; equal signals with equal seeds give equal samples on every machine.
 *
 * @see "P. D. McFadden, J. D. Smith, Model for the vibration produced by a single point defect in a rolling element
 *     bearing, Journal of Sound and Vibration 96 (1984) 69-82: impacts and load zone"
 * @see "J. Antoni, R. B. Randall, A stochastic model for simulation and diagnostics of rolling element bearings,
 *     Journal of Vibration and Acoustics 125 (2003) 282-289: slip as a random walk"
 */
public final class BearingSignal implements Serializable {
    private static final long serialVersionUID = 1;
    /** The strength swings from 1 in the middle of the load zone to 0.05 opposite to it; an assumption, no source. */
    private static final double LOAD_ZONE = 0.9;

    private final KinematicFrequencies kinematics;
    private final Map<BearingElement, Double> defects;
    private final double slip;
    private final double jitter;
    private final double unequal;
    private final List<Resonance> resonances;
    private final SensorResponse sensor; // null if it shows everything
    private final Surroundings surroundings;

    private BearingSignal(KinematicFrequencies kinematics, Map<BearingElement, Double> defects, double slip,
            double jitter, double unequal, List<Resonance> resonances, SensorResponse sensor,
            Surroundings surroundings) {
        this.kinematics = Objects.requireNonNull(kinematics, "kinematics");
        this.defects = copy(defects);
        this.slip = Require.within("slip", slip, -0.05, 0.05, "");
        this.jitter = Require.within("jitter", jitter, 0, 0.2, "");
        this.unequal = Require.within("share", unequal, 0, 1, "");
        this.resonances = Require.copy("rung", resonances);
        Require.atLeast("number of resonances", resonances.size(), 1);
        this.sensor = sensor;
        this.surroundings = Objects.requireNonNull(surroundings, "surroundings");
    }

    private static Map<BearingElement, Double> copy(Map<BearingElement, Double> defects) {
        Map<BearingElement, Double> copy = new EnumMap<>(BearingElement.class);
        defects.forEach((element, peak) -> copy.put(Objects.requireNonNull(element, "element"),
                Require.positive("peak", Objects.requireNonNull(peak, "peak"), "m/s²")));
        return copy;
    }

    private Object readResolve() {
        return new BearingSignal(kinematics, defects, slip, jitter, unequal, resonances, sensor, surroundings);
    }

    /**
     * Begins with a sound bearing in a machine that makes 1 m/s² rms of noise: no defect, no slip of the mean rate,
     * intervals that vary by 0.5 %, a resonance at 3000 Hz with a damping ratio of 0.05, no shaft tones.
     *
     * @param kinematics kinematic rates at the speed of the shaft
     * @return the signal
     */
    public static BearingSignal of(KinematicFrequencies kinematics) {
        return new BearingSignal(kinematics, Map.of(), 0, 0.005, 1, List.of(new Resonance(3000, 0.05, 1)), null,
                Surroundings.ofNoise(1));
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
        more.put(Objects.requireNonNull(element, "element"), peak);
        return new BearingSignal(kinematics, more, slip, jitter, unequal, resonances, sensor, surroundings);
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
        return new BearingSignal(kinematics, defects, share, intervalJitter, unequal, resonances, sensor, surroundings);
    }

    /**
     * Returns this signal with a spot on a rolling element that strikes one raceway less hard than the other, so that
     * the spin shows beside twice the spin.
     *
     * @param share strength of the weaker strikes over that of the stronger, 0 to 1
     * @return the signal
     * @throws IllegalArgumentException if the share is out of range
     */
    public BearingSignal withUnequalStrikes(double share) {
        return new BearingSignal(kinematics, defects, slip, jitter, share, resonances, sensor, surroundings);
    }

    /**
     * Returns this signal with one other resonance, of gain 1.
     *
     * @param hertz undamped natural frequency in Hz, finite, above zero
     * @param damping damping ratio, above 0, below 1
     * @return the signal
     * @throws IllegalArgumentException if a value is out of range
     */
    public BearingSignal withResonance(double hertz, double damping) {
        return withResonances(new Resonance(hertz, damping, 1));
    }

    /**
     * Returns this signal with other resonances on the way to the sensor, all rung by each impact.
     *
     * @param rung one resonance or more; they replace those it has
     * @return the signal
     * @throws IllegalArgumentException if there is none
     */
    public BearingSignal withResonances(Resonance... rung) {
        Objects.requireNonNull(rung, "rung");
        return new BearingSignal(kinematics, defects, slip, jitter, unequal, Arrays.asList(rung), sensor, surroundings);
    }

    /**
     * Returns this signal as a sensor shows it.
     *
     * @param response how the sensor follows
     * @return the signal
     */
    public BearingSignal withSensor(SensorResponse response) {
        return new BearingSignal(kinematics, defects, slip, jitter, unequal, resonances,
                Objects.requireNonNull(response, "response"), surroundings);
    }

    /**
     * Returns this signal with other surroundings.
     *
     * @param other what the machine around makes
     * @return the signal
     */
    public BearingSignal withSurroundings(Surroundings other) {
        Objects.requireNonNull(other, "other");
        return new BearingSignal(kinematics, defects, slip, jitter, unequal, resonances, sensor, other);
    }

    /**
     * Returns this signal with white noise of another level.
     *
     * @param rms standard deviation of the noise in m/s², finite, zero or more
     * @return the signal
     * @throws IllegalArgumentException if the value is out of range
     */
    public BearingSignal withNoise(double rms) {
        return withSurroundings(surroundings.withNoise(rms, 0));
    }

    /**
     * Returns this signal with tones at the first four multiples of the shaft speed, the n-th of amplitude 1/n.
     *
     * @param amplitude amplitude of the first in m/s², finite, zero or more
     * @return the signal
     * @throws IllegalArgumentException if the value is out of range
     */
    public BearingSignal withShaftTones(double amplitude) {
        return withSurroundings(surroundings.withShaftTones(amplitude));
    }

    /**
     * Makes the samples.
     *
     * @param sampleRateHertz sample rate in Hz, more than twice each resonance
     * @param length number of samples, 1 to 2²⁶
     * @param seed seed of noise, slip and phases
     * @return acceleration
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Waveform waveform(double sampleRateHertz, int length, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed);
        Synthesis signal = surroundings.addTo(Synthesis.silence(Quantity.ACCELERATION, sampleRateHertz, length),
                kinematics.shaftHertz(), sampleRateHertz, seeds);
        return waveform(signal, Synthesis::impacts, seeds);
    }

    /**
     * Makes the samples of a shaft whose speed varies. The kinematic rates are those at its mean speed, and those of
     * gears too; impacts, tones and meshes follow the shaft, resonances stay.
     *
     * @param sampleRateHertz sample rate in Hz, more than twice each resonance
     * @param profile speed of the shaft over the recording, its mean that of the kinematic rates to 1e-6
     * @param seed seed of noise, slip and phases; at a steady speed the same seed gives the samples of {@link
     *     #waveform(double, int, long)} but for rounding
     * @return acceleration
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Waveform waveform(double sampleRateHertz, SpeedProfile profile, long seed) {
        Objects.requireNonNull(profile, "profile");
        Require.within("mean speed of the profile over that of the kinematic rates",
                profile.meanSpeed().hertz() / kinematics.shaftHertz(), 1 - 1e-6, 1 + 1e-6, "");
        SplittableRandom seeds = new SplittableRandom(seed);
        int length = (int) Math.floor(profile.seconds() * sampleRateHertz + 1e-6);
        Synthesis signal = surroundings.addTo(Synthesis.silence(Quantity.ACCELERATION, sampleRateHertz, length),
                profile, sampleRateHertz, seeds);
        return waveform(signal, (sum, train, strikes) -> sum.impacts(train, profile, strikes), seeds);
    }

    /** How a train of impacts is added. */
    private interface Striking {
        Synthesis add(Synthesis signal, ImpactTrain train, long seed);
    }

    private Waveform waveform(Synthesis surrounding, Striking striking, SplittableRandom seeds) {
        Synthesis signal = surrounding;
        for (Map.Entry<BearingElement, Double> defect : defects.entrySet()) {
            long strikes = seeds.nextLong();
            for (Resonance resonance : resonances) {
                // The same seed gives the same instants: one impact rings them all.
                signal = striking.add(signal, train(defect.getKey(), defect.getValue(), resonance), strikes);
            }
        }
        return (sensor == null ? signal : sensor.applyTo(signal)).waveform();
    }

    private ImpactTrain train(BearingElement element, double peak, Resonance resonance) {
        double modulation = modulationOf(element);
        return ImpactTrain.of(rateOf(element), resonance.gain() * peak, resonance.hertz(), resonance.dampingRatio())
                .withJitter(jitter).withModulation(modulation, modulation > 0 ? LOAD_ZONE : 0)
                .withAlternate(element == BearingElement.ROLLING_ELEMENT ? unequal : 1);
    }

    /** The cage slips as the elements do. */
    private double modulationOf(BearingElement element) {
        return element == BearingElement.ROLLING_ELEMENT ? rateOf(BearingElement.CAGE)
                : kinematics.modulationOf(element);
    }

    /**
     * Returns the mean rate of the impacts of an element, slip included.
     *
     * @param element element
     * @return rate in Hz
     */
    public double rateOf(BearingElement element) {
        return kinematics.of(Objects.requireNonNull(element, "element")) * (1 + slip);
    }

    /**
     * Returns defects, resonances and noise, as in {@code outer race 12 m/s², ringing at 3000 Hz, noise 1 m/s² rms}.
     */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        defects.forEach((element, peak) -> text.append(element).append(' ').append(Digits.compact(peak, 3))
                .append(" m/s², "));
        String rung = resonances.stream().map(r -> Digits.compact(r.hertz(), 5)).collect(Collectors.joining(", "));
        return (defects.isEmpty() ? "sound bearing, " : text) + "ringing at " + rung + " Hz, " + surroundings;
    }
}
