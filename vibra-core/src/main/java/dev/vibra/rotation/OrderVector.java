package dev.vibra.rotation;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;

/**
 * Amplitude and phase of one order: {@code amplitude·cos(order·angle - lag)}, the angle counted from the mark.
 *
 * @param amplitude zero-to-peak amplitude in the SI unit of the signal
 * @param lagRadians phase lag behind the mark in rad, from 0 to below 2π
 */
public record OrderVector(double amplitude, double lagRadians) implements Serializable {
    /**
     * Checks the values and takes whole turns off the lag.
     *
     * @param amplitude see the record
     * @param lagRadians see the record
     * @throws IllegalArgumentException if a value is not finite or the amplitude negative
     */
    public OrderVector {
        Require.notNegative("amplitude", amplitude, "");
        if (!(lagRadians >= 0 && lagRadians < 2 * Math.PI)) {
            double turned = Math.IEEEremainder(Require.finite("lagRadians", lagRadians), 2 * Math.PI);
            lagRadians = turned < 0 ? turned + 2 * Math.PI : turned;
        }
    }

    /** Correlates samples that begin at the mark with a turning pointer. */
    static OrderVector of(double[] samples, double order, int samplesPerRevolution) {
        return of(samples, 0, samples.length, order, samplesPerRevolution, null);
    }

    /** Correlates a block that begins at the mark; weights are those of a window or null. */
    static OrderVector of(double[] samples, int offset, int length, double order, int samplesPerRevolution,
            double[] weights) {
        double re = 0;
        double im = 0;
        double sum = 0;
        for (int i = 0; i < length; i++) {
            double weight = weights == null ? 1 : weights[i];
            double angle = 2 * Math.PI * order * i / samplesPerRevolution;
            re += weight * samples[offset + i] * Math.cos(angle);
            im += weight * samples[offset + i] * Math.sin(angle);
            sum += weight;
        }
        double lag = Math.atan2(im, re);
        return new OrderVector(2 * Math.hypot(re, im) / sum, lag < 0 ? lag + 2 * Math.PI : lag);
    }

    /**
     * Returns the lag in degrees.
     *
     * @return lag from 0 to below 360 degrees
     */
    public double lagDegrees() {
        return Math.toDegrees(lagRadians);
    }

    /** Returns amplitude and lag. */
    @Override
    public String toString() {
        return Digits.significant(amplitude, 3) + " at " + Digits.significant(lagDegrees(), 4) + "\u00b0 lag";
    }
}
