package dev.vibra.simulation;

/**
 * Knocks that ring a resonance, felt at the points as strongly as they lie near.
 *
 * @param train makes the acceleration of one knock train of unit size
 * @param housing where they come from
 * @param peak acceleration of the ringing at that housing in m/s²
 */
record Knocks(Train train, int housing, double peak) {
    /** A train of knocks. */
    interface Train {
        /**
         * Makes the samples.
         *
         * @param sampleRate sample rate in Hz
         * @param length number of samples
         * @param seed seed of all that is random of it
         * @return acceleration, the strongest ringing of size 1
         */
        double[] samples(double sampleRate, int length, long seed);
    }
}
