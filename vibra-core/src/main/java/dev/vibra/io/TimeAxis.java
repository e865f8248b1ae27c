package dev.vibra.io;

/**
 * Times that rise evenly.
 *
 * @param startSeconds first time
 * @param stepSeconds from one to the next, above zero
 * @param steps number of steps
 */
record TimeAxis(double startSeconds, double stepSeconds, long steps) {
    private static final double TOLERATED_STEP = 0.25;

    /** The axis from the first to the last of a number of times. */
    static TimeAxis of(double first, double last, long count, ByteReader in) {
        double step = count < 2 ? 0 : (last - first) / (count - 1);
        if (!(step > 0)) {
            throw in.problem("time must rise over at least two lines: from " + first + " s to " + last + " s in "
                    + count + " line(s)");
        }
        if (!(1 / step > 0 && 1 / step < Double.POSITIVE_INFINITY)) {
            throw in.problem("time must rise by steps that a sample rate can be told of: " + step + " s");
        }
        return new TimeAxis(first, step, count - 1);
    }

    /** Tells whether a time between the ends lies where its number puts it. */
    boolean holds(long number, double seconds) {
        return number == 0 || number == steps
                || Math.abs(seconds - placeOf(number)) <= TOLERATED_STEP * stepSeconds;
    }

    double placeOf(long number) {
        return startSeconds + number * stepSeconds;
    }

    /** Printed times are rounded: a whole number of Hz that puts the last sample within a tenth of a step is meant. */
    double sampleRateHertz() {
        double rate = 1 / stepSeconds;
        double whole = Math.rint(rate);
        double relative = Math.abs(rate - whole) / rate;
        return relative <= 1e-5 && relative * steps <= 0.1 ? whole : rate;
    }
}
