package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.uncertainty.LevelUncertainty;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A point held against its reference, a recording of it from a time when the machine was known to be sound: line by
 * line and octave by octave. A fault may leave every line where it was, and a healthy machine may shake more than a
 * sick one: only a comparison with the same point tells.
 *
 * <p>The uncertainty of a ratio has the sensor of either recording in it, as if they were different ones, and the noise
 * beside the line; not in it: another mounting, another place, another load.
 *
 * @param point id of the point
 * @param obstacle why the two can't be compared, without full stop; empty if they can
 * @param lines lines that stand now or stood then, in the order of {@link PointSurvey#lines()}
 * @param noise octaves of the acceleration's noise that both recordings have
 */
public record PointChange(String point, String obstacle, List<LineChange> lines, List<NoiseChange> noise)
        implements Serializable {
    /** States further apart in speed are not the same; common practice, no source. */
    private static final double SAME_SPEED = 0.02;
    /** Lines of a sound machine differ by some tenths from day to day; common practice, no source. */
    private static final double LARGE = 2;
    /** Smaller lines than this part of the largest are nobody's business; common practice, no source. */
    private static final double MATTERS = 0.1;
    /** Mean square of the weights of a Hann window over the square of their mean. */
    private static final double HANN_BANDWIDTH = 1.5;

    /**
     * A line now and then.
     *
     * @param now the line, standing or not
     * @param then the same in the reference
     * @param relativeExpanded expanded uncertainty (95 %) of the ratio over it
     */
    public record LineChange(NamedLine now, NamedLine then, double relativeExpanded) implements Serializable {
        /**
         * Checks the uncertainty.
         *
         * @param now see the record
         * @param then see the record
         * @param relativeExpanded see the record
         */
        public LineChange {
            Objects.requireNonNull(now, "now");
            Objects.requireNonNull(then, "then");
            Require.notNegative("relativeExpanded", relativeExpanded, "");
        }

        /**
         * {@return level now over level then, where a line doesn't stand that of the noise there; empty where there was
         * nothing at all}
         */
        public Optional<Double> ratio() {
            return over(now.level().si(), then.level().si());
        }

        /**
         * {@return true if the line has at least doubled or halved, and not by the uncertainty alone; where one of the two
         * doesn't stand it was at most as large as the noise there}
         */
        public boolean isLarge() {
            double error = now.stands() && then.stands() ? relativeExpanded : 0;
            return ratio().filter(times -> now.stands() && doubled(times, error) || then.stands() && halved(times, error))
                    .isPresent();
        }

        /**
         * Returns name, levels and ratio, as in {@code 2 × shaft speed 1.2 mm/s after 0.4 mm/s: 3.0 times ± 12 %}; a line
         * that doesn't stand is at most as large as the noise.
         */
        @Override
        public String toString() {
            double size = 1e3 * now.level().si();
            double before = 1e3 * then.level().si();
            if (now.stands() && then.stands()) {
                return now.name() + " " + text(size, before, "mm/s", ratio(), relativeExpanded);
            }
            return now.name() + " " + (now.stands() ? "" : "at most ") + Digits.significant(size, 3) + " mm/s after "
                    + (then.stands() ? "" : "at most ") + Digits.significant(before, 3) + " mm/s" + ratio()
                    .filter(times -> now.stands() || then.stands()).map(times -> ": at " + (now.stands() ? "least "
                            : "most ") + Digits.significant(times, 2) + " times").orElse("");
        }
    }

    /**
     * Noise of an octave now and then.
     *
     * @param band octave
     * @param now rms acceleration in m/s²
     * @param then the same in the reference
     * @param relativeExpanded expanded uncertainty (95 %) of the ratio over it
     */
    public record NoiseChange(Band band, double now, double then, double relativeExpanded) implements Serializable {
        /**
         * Checks the figures.
         *
         * @param band see the record
         * @param now see the record
         * @param then see the record
         * @param relativeExpanded see the record
         */
        public NoiseChange {
            Objects.requireNonNull(band, "band");
            Require.notNegative("now", now, "m/s\u00b2");
            Require.notNegative("then", then, "m/s\u00b2");
            Require.notNegative("relativeExpanded", relativeExpanded, "");
        }

        /** {@return noise now over noise then; empty where there was none} */
        public Optional<Double> ratio() {
            return over(now, then);
        }

        /** {@return true if the noise has at least doubled or halved, and not by the uncertainty alone} */
        public boolean isLarge() {
            return ratio().filter(times -> doubled(times, relativeExpanded) || halved(times, relativeExpanded))
                    .isPresent();
        }

        /**
         * Returns octave, noise and ratio, as in {@code noise of 1410–2820 Hz 0.28 m/s² after 0.56 m/s²: 0.5 times ± 7 %}.
         */
        @Override
        public String toString() {
            return "noise of " + Digits.significant(band.lowestHertz(), 3) + "\u2013"
                    + Digits.significant(band.highestHertz(), 3) + " Hz " + text(now, then, "m/s\u00b2", ratio(), relativeExpanded);
        }
    }

    private static boolean doubled(double times, double error) {
        return times >= LARGE && times * (1 - error) > 1;
    }

    private static boolean halved(double times, double error) {
        return times <= 1 / LARGE && times * (1 + error) < 1;
    }

    private static Optional<Double> over(double now, double then) {
        return Optional.of(now / then).filter(Double::isFinite);
    }

    private static String text(double now, double then, String unit, Optional<Double> ratio, double relativeExpanded) {
        return Digits.significant(now, 3) + " " + unit + " after " + Digits.significant(then, 3) + " " + unit
                + ratio.map(times -> ": " + Digits.significant(times, 2) + " times \u00b1 "
                        + Math.round(100 * relativeExpanded) + " %").orElse("");
    }

    /**
     * Copies the lists.
     *
     * @param point see the record
     * @param obstacle see the record
     * @param lines see the record
     * @param noise see the record
     */
    public PointChange {
        point = Require.notBlank("point", point);
        Objects.requireNonNull(obstacle, "obstacle");
        lines = Require.copy("lines", lines);
        noise = Require.copy("noise", noise);
    }

    /**
     * Compares.
     *
     * @param now what was worked out of the point
     * @param then what was worked out of its reference
     * @return the comparison; without lines and noise where there is an obstacle
     */
    public static PointChange of(PointSurvey now, PointSurvey then) {
        Objects.requireNonNull(now, "now");
        String obstacle = obstacle(now, Objects.requireNonNull(then, "then")).orElse("");
        String id = now.point().id();
        return obstacle.isEmpty() ? new PointChange(id, obstacle, lines(now, then), noises(now, then))
                : new PointChange(id, obstacle, List.of(), List.of());
    }

    /** {@return lines that changed much and reach a tenth of the largest line, now or then; the largest first} */
    public List<LineChange> largeLines() {
        double most = lines.stream().filter(one -> one.now.stands() || one.then.stands())
                .mapToDouble(PointChange::size).max().orElse(0);
        return lines.stream().filter(LineChange::isLarge).filter(one -> size(one) >= MATTERS * most)
                .sorted(Comparator.comparingDouble(PointChange::size).reversed()).toList();
    }

    private static double size(LineChange line) {
        return Math.max(line.now.stands() ? line.now.level().si() : 0, line.then.stands() ? line.then.level().si() : 0);
    }

    /** {@return octaves whose noise changed much, from low to high} */
    public List<NoiseChange> largeNoise() {
        return noise.stream().filter(NoiseChange::isLarge).toList();
    }

    private static Optional<String> obstacle(PointSurvey now, PointSurvey then) {
        if (!isMotionKnown(then)) {
            return Optional.of("the reference can't be used" + (then.omissions().isEmpty() ? ""
                    : ": " + then.omissions().get(0).reason()));
        }
        if (!isMotionKnown(now)) {
            return Optional.of("the recording can't be used");
        }
        Optional<RotationSpeed> speed = now.speed().speed();
        Optional<RotationSpeed> before = then.speed().speed();
        if (speed.isEmpty() || before.isEmpty()) {
            return Optional.of("the speed is not known");
        }
        return Math.abs(speed.get().hertz() / before.get().hertz() - 1) <= SAME_SPEED ? Optional.empty()
                : Optional.of("the reference was recorded at another speed: " + before.get() + ", now " + speed.get());
    }

    private static boolean isMotionKnown(PointSurvey point) {
        return point.insisted()
                || point.recording().filter(one -> !one.refused().contains(Aspect.MOTION)).isPresent();
    }

    private static List<LineChange> lines(PointSurvey now, PointSurvey then) {
        List<LineChange> changes = new ArrayList<>();
        for (NamedLine line : now.lines()) {
            then.lines().stream().filter(one -> one.name().equals(line.name()) && (one.stands() || line.stands()))
                    .findFirst().ifPresent(one -> changes.add(new LineChange(line, one, budget(now, then,
                            "noise", noiseOver(line, now), noiseOver(one, then)))));
        }
        return changes;
    }

    private static double budget(PointSurvey now, PointSurvey then, String what, double ofNow, double ofThen) {
        return instruments(now.point(), then.point()).withStandard(what + " now", ofNow)
                .withStandard(what + " then", ofThen).relativeExpanded();
    }

    private static UncertaintyBudget instruments(MeasuringPoint now, MeasuringPoint then) {
        return UncertaintyBudget.empty().withExpanded("sensor now", sensor(now))
                .withExpanded("sensor then", sensor(then));
    }

    /** What is not told is as much as ISO 2954 allows, see {@link LevelUncertainty}. */
    private static double sensor(MeasuringPoint point) {
        return point.expandedUncertainty().orElse(LevelUncertainty.NOT_TOLD);
    }

    /**
     * Standard deviation of the size of a line by the noise about it, over the size: noise of mean square N in the
     * width of a line under a Hann window over the whole recording turns a vector of rms A by {@code √(N/2)} along it.
     */
    private static double noiseOver(NamedLine line, PointSurvey point) {
        if (!line.stands()) {
            return 1;
        }
        double width = HANN_BANDWIDTH / point.durationSeconds().orElseThrow();
        return point.pattern().noise().stream().min(Comparator.comparingDouble(one ->
                Math.abs(Math.log(Math.sqrt(one.band().lowestHertz() * one.band().highestHertz()) / line.hertz()))))
                .map(one -> one.rms() * Math.sqrt(0.5 * width / one.band().widthHertz())
                        / (2 * Math.PI * line.hertz() * line.level().si())).orElse(0.0);
    }

    private static List<NoiseChange> noises(PointSurvey now, PointSurvey then) {
        List<NoiseChange> changes = new ArrayList<>();
        for (LinePattern.BandNoise one : now.pattern().noise()) {
            then.pattern().noise().stream().filter(other -> other.band().equals(one.band())).findFirst().ifPresent(
                    other -> changes.add(new NoiseChange(one.band(), one.rms(), other.rms(), budget(now, then,
                            "estimation", estimation(one, now), estimation(other, then)))));
        }
        return changes;
    }

    /**
     * Rms of noise in a band of width B over the time T: {@code 1/(2·√(B·T))}.
     *
     * @see "J. S. Bendat, A. G. Piersol, Random Data, 4th ed. 2010, section 8.2.2"
     */
    private static double estimation(LinePattern.BandNoise noise, PointSurvey point) {
        return 0.5 / Math.sqrt(noise.band().widthHertz() * point.durationSeconds().orElseThrow());
    }

    /** Returns the point and how many lines rose, as in {@code DE-H: 12 lines and 8 octaves compared}. */
    @Override
    public String toString() {
        return point + ": " + (obstacle.isEmpty() ? lines.size() + " lines and " + noise.size() + " octaves compared"
                : obstacle);
    }
}
