package dev.vibra.synthesis;

/**
 * Cosine of an evenly growing phase: a pointer turned by complex multiplication, which costs a tenth of a StrictMath
 * cosine, and set anew often enough that it strays by no more than some units of the last place.
 */
final class Oscillator {
    private static final int STEPS = 64;

    private final double perSample;
    private final double phase;
    private final double stepRe;
    private final double stepIm;
    private double re;
    private double im;
    private int at;

    Oscillator(double radiansPerSample, double phaseRadians) {
        perSample = radiansPerSample;
        phase = phaseRadians;
        stepRe = StrictMath.cos(radiansPerSample);
        stepIm = StrictMath.sin(radiansPerSample);
        set();
    }

    private void set() {
        re = StrictMath.cos(perSample * at + phase);
        im = StrictMath.sin(perSample * at + phase);
    }

    /** Sine of the phase whose cosine {@link #next()} is about to return. */
    double sine() {
        return im;
    }

    double next() {
        double cosine = re;
        if (++at % STEPS == 0) {
            set();
        } else {
            re = cosine * stepRe - im * stepIm;
            im = cosine * stepIm + im * stepRe;
        }
        return cosine;
    }
}
