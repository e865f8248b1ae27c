package dev.vibra.docs.survey.input;

/**
 * Ranges that hold every machine there is, with room to spare; what lies outside is a slip of the pen or of the unit,
 * and arithmetic ends before it does (common practice, no source).
 */
final class Plausible {
    static final Range SPEED = Range.within(0.01, 1e6, "r/min");
    static final Range RATIO = Range.within(1e-4, 1e4, "");
    static final Range POWER = Range.within(1e-3, 5e6, "kW");
    static final Range LENGTH = Range.within(0.01, 1e6, "mm");
    static final Range ROTOR_MASS = Range.within(1e-6, 1e7, "kg");
    static final Range NATURAL_FREQUENCY = Range.within(0.01, 1e6, "Hz");
    static final Range LINE_FREQUENCY = Range.within(1, 1e4, "Hz");
    static final Range SAMPLE_RATE = Range.within(0.1, 1e9, "Hz");
    static final Range SENSITIVITY = Range.within(1e-9, 1e12, "mV");
    static final Range FULL_SCALE = Range.within(1e-6, 1e6, "V");
    /** Of a scale and of an earlier value, whatever the sign. */
    static final Range NUMBER = Range.within(-1e12, 1e12, "");
    /** The smallest scale, whatever the sign. */
    static final double SMALLEST_SCALE = 1e-12;

    private Plausible() {}
}
