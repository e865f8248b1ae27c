package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Angle of a shaft read from the lines of its own vibration, where no tachometer was at hand and the speed varies
 * within the recording. Immutable.
 *
 * <pre>{@code
 * TrackedAngle tracked = TrackedAngle.of(wave, RotationSpeed.ofRevolutionsPerMinute(1480));
 * tracked.angle().map(angle -> angle.atMeanSpeed(wave))
 * }</pre>
 *
 * <p>First the course of the speed is sought: in blocks of eight revolutions each speed within
 * {@value #REACH_PERCENT} % of the given one is weighed by the lines at its multiples over the noise beside them, and
 * the best course that turns smoothly through all blocks is taken. Then the multiples are demodulated along that
 * course, and their phases correct it. Multiples that stand out at all times tell the angle, each weighted by its
 * number and its distance from the noise.
 *
 * <p>The angle is that of the vibration: a mode that the line passes turns its phase by up to half a turn of the
 * multiple, and the angle with it. Where on the shaft its zero lies isn't known. Half a block at either end isn't
 * covered.
 *
 * @see "Q. Leclère, H. André, J. Antoni, A multi-order probabilistic approach for instantaneous angular speed tracking,
 *     Mech. Syst. Signal Process. 81 (2016) 375-386 (from memory, unverified): the course"
 * @see "M. D. Coats, R. B. Randall, Single and multi-stage phase demodulation based order-tracking, Mech. Syst. Signal
 *     Process. 44 (2014) 86-117 (from memory, unverified): the phase"
 */
public final class TrackedAngle implements Serializable {
    private static final long serialVersionUID = 1;
    static final int REACH_PERCENT = 8;
    /** Revolutions of a block. */
    static final double BLOCK = 8;
    private static final int FEWEST_REVOLUTIONS = 20;
    private static final int[] USUAL = IntStream.rangeClosed(1, 10).toArray();
    /** An error of ε revolutions rms leaves a line at n orders exp(-(2πnε)²/2) of its depth: four fifths at ten. */
    private static final double LARGEST_UNCERTAINTY = 0.01;
    /** Mean speed over the given one, less one, that slip and a coarse plate explain; common practice, no source. */
    private static final double LARGEST_OFFSET = 0.04;
    private static final int REFINEMENTS = 3;

    private final ShaftAngle angle; // null if it isn't known
    private final List<Integer> multiples;
    private final double uncertaintyRevolutions;
    private final String reason;

    private TrackedAngle(ShaftAngle angle, List<Integer> multiples, double uncertaintyRevolutions, String reason) {
        this.angle = angle;
        this.multiples = List.copyOf(multiples);
        this.uncertaintyRevolutions = Require.notNegative("uncertaintyRevolutions", uncertaintyRevolutions, "");
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    private Object readResolve() {
        return new TrackedAngle(angle, multiples, uncertaintyRevolutions, reason);
    }

    /**
     * Follows a shaft by its first ten multiples.
     *
     * @param wave recording of a motion of at least 20 revolutions
     * @param speed mean speed of the shaft to within 4 %
     * @return the angle, or why it isn't known
     */
    public static TrackedAngle of(Waveform wave, RotationSpeed speed) {
        return of(Objects.requireNonNull(wave, "wave"), speed, USUAL);
    }

    /**
     * Follows a shaft by chosen multiples, such as the first three and the mesh of its gear.
     *
     * @param wave recording of a motion of at least 20 revolutions
     * @param speed mean speed of the shaft to within 4 %
     * @param multiples multiples of the speed to look at, each at least 1; those at half the sample rate and above are
     *     left out
     * @return the angle, or why it isn't known
     * @throws IllegalArgumentException if there is no multiple or one is below 1
     */
    public static TrackedAngle of(Waveform wave, RotationSpeed speed, int... multiples) {
        Objects.requireNonNull(wave, "wave");
        Objects.requireNonNull(speed, "speed");
        int[] sorted = Arrays.stream(Objects.requireNonNull(multiples, "multiples")).sorted().distinct().toArray();
        if (sorted.length == 0 || sorted[0] < 1) {
            throw new IllegalArgumentException("multiples must be one or more, each at least 1: "
                    + (sorted.length == 0 ? "none" : sorted[0]));
        }
        double top = 0.5 * wave.sampleRateHertz() / (speed.hertz() * (1 + 0.01 * REACH_PERCENT));
        int[] usable = Arrays.stream(sorted).filter(multiple -> multiple + 0.5 < top).toArray();
        double revolutions = wave.durationSeconds() * speed.hertz();
        if (usable.length == 0) {
            return none("the sample rate leaves no multiple of the speed");
        }
        if (!(revolutions >= FEWEST_REVOLUTIONS)) {
            return none("the recording holds " + Digits.significant(revolutions, 3) + " revolutions, "
                    + FEWEST_REVOLUTIONS + " are needed");
        }
        LowRate low = LowRate.of(wave, (usable[usable.length - 1] + 1) * speed.hertz() * (1 + 0.01 * REACH_PERCENT));
        return follow(low, speed, usable);
    }

    private static TrackedAngle none(String reason) {
        return new TrackedAngle(null, List.of(), 0, reason);
    }

    private static TrackedAngle follow(LowRate low, RotationSpeed speed, int[] multiples) {
        SpeedCourse course = SpeedCourse.of(low, speed.hertz(), multiples);
        if (course.touchesEdge()) {
            return none("no course of the speed stands out within " + REACH_PERCENT + " % of " + speed);
        }
        ShaftAngle angle = course.angle();
        PhaseTrack track = PhaseTrack.along(angle, low, multiples);
        for (int i = 1; i < REFINEMENTS && track.stands(); i++) {
            angle = track.angle();
            track = PhaseTrack.along(angle, low, multiples);
        }
        return track.stands() ? judged(track, speed) : none(track.reason());
    }

    private static TrackedAngle judged(PhaseTrack track, RotationSpeed given) {
        ShaftAngle angle = track.angle();
        double offset = angle.meanSpeed().hertz() / given.hertz() - 1;
        List<Integer> used = track.multiples();
        if (Math.abs(offset) > LARGEST_OFFSET) {
            return none("the lines follow " + angle.meanSpeed() + ", more than " + Digits.compact(100 * LARGEST_OFFSET,
                    2) + " % from " + given);
        }
        if (LARGEST_OFFSET * used.get(0) > 0.5 && Math.abs(offset) * used.get(0) > 0.25) {
            return none("the line at " + used.get(0) + " times the speed may as well be the multiple beside it");
        }
        if (track.uncertaintyRevolutions() > LARGEST_UNCERTAINTY) {
            return none("the multiples tell the angle to " + Digits.significant(track.uncertaintyRevolutions(), 2)
                    + " of a revolution only");
        }
        return new TrackedAngle(angle, used, track.uncertaintyRevolutions(), "by the multiple"
                + (used.size() == 1 ? " " : "s ") + used.stream().map(String::valueOf).collect(Collectors.joining(", "))
                + " of the speed");
    }

    /** {@return the angle over time; empty if the lines don't tell it, for the reason told} */
    public Optional<ShaftAngle> angle() {
        return Optional.ofNullable(angle);
    }

    /** {@return the multiples that tell the angle, rising; empty if none does} */
    public List<Integer> multiples() {
        return multiples;
    }

    /**
     * Returns the standard uncertainty of the angle as the noise beside the lines makes it, in revolutions. What the
     * machine itself does to the phase of its lines isn't in it.
     *
     * @return standard uncertainty, at most a hundredth; empty if the angle isn't known
     */
    public OptionalDouble uncertaintyRevolutions() {
        return angle == null ? OptionalDouble.empty() : OptionalDouble.of(uncertaintyRevolutions);
    }

    /** {@return what the angle rests on, or why it isn't known, without full stop} */
    public String reason() {
        return reason;
    }

    /** Returns revolutions and speed, or the reason why there is no angle. */
    @Override
    public String toString() {
        return angle == null ? "angle not determined: " + reason : angle + ", " + reason;
    }
}
