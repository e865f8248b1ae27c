package dev.vibra.trend;

/** The form of a trend. */
public enum TrendModel {
    /** A straight line: {@code x = a + b·t}, as wear at a steady rate gives. */
    LINEAR,
    /** A straight line of the logarithm: {@code x = exp(a + b·t)}, as damage that feeds on itself gives. */
    EXPONENTIAL;

    double toLine(double value) {
        return this == LINEAR ? value : Math.log(value);
    }

    double fromLine(double value) {
        return this == LINEAR ? value : Math.exp(value);
    }
}
