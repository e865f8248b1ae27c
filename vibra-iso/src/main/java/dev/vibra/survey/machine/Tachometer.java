package dev.vibra.survey.machine;

import java.io.Serializable;

/**
 * Recording of a tachometer that belongs to a point.
 *
 * @param recording file name of the recording
 * @param pulsesPerRevolution pulses in one revolution, 1 or more
 */
public record Tachometer(String recording, int pulsesPerRevolution) implements Serializable {
    /** Returns file and pulses, as in {@code tacho.wav, 1 pulse per revolution}. */
    @Override
    public String toString() {
        return recording + ", " + pulsesPerRevolution + (pulsesPerRevolution == 1 ? " pulse" : " pulses")
                + " per revolution";
    }
}
