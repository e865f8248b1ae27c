package dev.vibra.speedrun;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.SpeedPoint;
import java.io.Serializable;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * A speed at which an order excites a resonance: a peak of the order together with the change of phase that a resonance
 * makes. Of the first order it is a candidate for a critical speed. Immutable.
 *
 * <p>The speed is that of the undamped natural frequency over the order, where the lag is 90 degrees behind the
 * excitation, corrected for the delay of the response. The amplification factor is 1/(2ζ). It is read twice, both exact
 * for one mode of viscous damping that unbalance drives, from velocity over the square of the speed: by the speeds of
 * half the power, and by those at which the phase is 45 degrees before and behind.
 *
 * @see "D. J. Ewins, Modal Testing, 2nd ed. 2000, section 4.2, on half-power points of the mobility"
 */
public final class SpeedResonance implements Serializable {
    private static final long serialVersionUID = 1;
    /** Both ways differ by a seventh at most at one mode that is passed slowly enough; found by simulation. */
    private static final double MOST_APART = 1.2;

    private final double order;
    private final RotationSpeed speed;
    private final double speedUncertaintyPercent;
    private final SpeedPoint peak;
    private final double byPhase;
    private final Double byHalfPower; // null where the amplitude doesn't fall to half the power on both sides
    private final double sweepRatio;
    private final Double amplificationUncertainty; // null where the run is too fast for it

    SpeedResonance(double order, RotationSpeed speed, double speedUncertaintyPercent, SpeedPoint peak, double byPhase,
            Double byHalfPower, double sweepRatio, Double amplificationUncertainty) {
        this.order = Require.positive("order", order, "");
        this.speed = Objects.requireNonNull(speed, "speed");
        this.speedUncertaintyPercent = Require.notNegative("speedUncertaintyPercent", speedUncertaintyPercent, "%");
        this.peak = Objects.requireNonNull(peak, "peak");
        this.byPhase = Require.positive("byPhase", byPhase, "");
        this.byHalfPower = byHalfPower == null ? null
                : Double.valueOf(Require.positive("byHalfPower", byHalfPower, ""));
        this.sweepRatio = Require.notNegative("sweepRatio", sweepRatio, "");
        this.amplificationUncertainty = amplificationUncertainty == null ? null
                : Double.valueOf(Require.notNegative("amplificationUncertainty", amplificationUncertainty, ""));
    }

    private Object readResolve() {
        return new SpeedResonance(order, speed, speedUncertaintyPercent, peak, byPhase, byHalfPower, sweepRatio,
                amplificationUncertainty);
    }

    /** {@return the order that excites it} */
    public double order() {
        return order;
    }

    /** {@return the speed of the shaft at the resonance} */
    public RotationSpeed speed() {
        return speed;
    }

    /** {@return the natural frequency, speed times order, in Hz} */
    public double hertz() {
        return speed.hertzOfOrder(order);
    }

    /** {@return how far the speed may be off, in % of it: by simulation two times the standard deviation at least} */
    public double speedUncertaintyPercent() {
        return speedUncertaintyPercent;
    }

    /** {@return where the order is largest, as it was recorded: amplitude and lag} */
    public SpeedPoint peak() {
        return peak;
    }

    /** {@return amplification factor by the change of phase around the resonance} */
    public double amplificationByPhase() {
        return byPhase;
    }

    /** {@return the same by the half-power points; empty if the amplitude doesn't fall so far on both sides} */
    public OptionalDouble amplificationByHalfPower() {
        return byHalfPower == null ? OptionalDouble.empty() : OptionalDouble.of(byHalfPower);
    }

    /**
     * Returns the amplification factor: the geometric mean of both ways, or the one by phase alone.
     *
     * @return factor; empty if the run is too fast against the ringing of the resonance to tell it
     */
    public OptionalDouble amplification() {
        return amplificationUncertainty == null ? OptionalDouble.empty()
                : OptionalDouble.of(byHalfPower == null ? byPhase : Math.sqrt(byPhase * byHalfPower));
    }

    /** {@return how far the amplification factor may be off, in its own unit; empty if the factor isn't told} */
    public OptionalDouble amplificationUncertainty() {
        return amplificationUncertainty == null ? OptionalDouble.empty()
                : OptionalDouble.of(amplificationUncertainty);
    }

    /**
     * Returns how fast the resonance was passed: the rate of its frequency in Hz per s over the square of its
     * half-power width in Hz. Well below one, the response is nearly that of steady running.
     *
     * @return ratio, zero or more
     */
    public double sweepRatio() {
        return sweepRatio;
    }

    /** {@return false if the two factors differ, as they do where two resonances lie close together} */
    public boolean isSingle() {
        return byHalfPower == null || Math.max(byHalfPower / byPhase, byPhase / byHalfPower) < MOST_APART;
    }

    /** {@return true if the passage was slow enough for an amplification factor} */
    public boolean slowEnough() {
        return amplificationUncertainty != null;
    }

    /**
     * Returns how far the resonance lies below another speed, such as that of service.
     *
     * @param service the other speed
     * @return difference in % of the service speed, above zero where the resonance is the lower
     */
    public double separationPercent(RotationSpeed service) {
        return 100 * (Objects.requireNonNull(service, "service").hertz() - speed.hertz()) / service.hertz();
    }

    /** Two are equal if all their figures are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof SpeedResonance r && order == r.order && speed.equals(r.speed)
                && speedUncertaintyPercent == r.speedUncertaintyPercent && peak.equals(r.peak) && byPhase == r.byPhase
                && Objects.equals(byHalfPower, r.byHalfPower) && sweepRatio == r.sweepRatio
                && Objects.equals(amplificationUncertainty, r.amplificationUncertainty);
    }

    /** Hashes order and speed. */
    @Override
    public int hashCode() {
        return 31 * Double.hashCode(order) + speed.hashCode();
    }

    /** Returns order, speed and amplification factor, as in {@code 1x at 1500 ± 8 r/min, amplification 10.0 ± 0.6}. */
    @Override
    public String toString() {
        double rpm = speed.revolutionsPerMinute();
        return Digits.compact(order, 3) + "x at " + Math.round(rpm) + " \u00b1 " + Digits.significant(
                0.01 * speedUncertaintyPercent * rpm, 2) + " r/min, amplification " + (slowEnough()
                ? Digits.significant(amplification().orElseThrow(), 3) + " \u00b1 " + Digits.significant(
                        amplificationUncertainty, 2) : "not determined, the run is too fast");
    }
}
