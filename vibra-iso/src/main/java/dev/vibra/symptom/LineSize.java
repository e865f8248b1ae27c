package dev.vibra.symptom;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Detector;

/**
 * Size of a line, or the most that it can be where something hides it.
 *
 * @param hertz frequency in Hz
 * @param size rms velocity in m/s; at most that where there is a doubt
 * @param doubt why the size isn't known, without full stop; empty if it is
 */
record LineSize(double hertz, double size, String doubt) {
    /** A line that lies in the noise may be as large as the noise. */
    static LineSize of(NamedLine line, String name) {
        return new LineSize(line.hertz(), line.level().si(), line.stands() ? "" : name + " lies in the noise");
    }

    LineSize doubted(String why) {
        return new LineSize(hertz, size, why);
    }

    boolean isKnown() {
        return doubt.isEmpty();
    }

    Level level() {
        return Level.ofSi(size, Quantity.VELOCITY, Detector.RMS);
    }

    /** Rms velocity as a notebook has it. */
    static String millimetres(double metresPerSecond) {
        return figure(1e3 * metresPerSecond) + " mm/s rms";
    }

    static String figure(double value) {
        return Digits.significant(value, 3);
    }

    static String id(PointSurvey point) {
        return point.point().id();
    }

    @Override
    public String toString() {
        return (isKnown() ? "" : "at most ") + millimetres(size);
    }
}
