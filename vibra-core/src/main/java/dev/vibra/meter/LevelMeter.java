package dev.vibra.meter;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.internal.StreamOrder;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Levels of a stream of acceleration, several at once: of the whole signal, and of acceleration, velocity and
 * displacement in bands through the severity chain.
 *
 * <p>Readings cover all samples since the start, the last restart or reset; in a band they begin when the chain has
 * settled. They equal those of {@code Waveform.moments()} and {@code Waveform.throughSeverityChain} over the same
 * samples. Told where a block belongs, the meter lets the chains settle anew behind a gap, so that no step at the gap
 * is taken for vibration. Not thread-safe; pushing and the readings in SI units allocate nothing.
 *
 * @see "ISO 2954:2012, 5.3 and 5.4"
 */
public final class LevelMeter implements Resumable<LevelMeter> {
    private static final StateFormat FORMAT = new StateFormat("levels", 1);
    private static final int PIECE = 1024;

    private final Made made;
    private final LevelReading acceleration = LevelReading.wholeAcceleration();
    private final List<LevelReading> inBands = new ArrayList<>();
    private final StreamOrder order = new StreamOrder();
    private final double[] scratch = new double[PIECE];

    private LevelMeter(Made made) {
        this.made = made;
        for (Measurand measurand : made.settings.measurands) {
            inBands.add(LevelReading.of(measurand, made.sampleRateHertz));
        }
    }

    /**
     * Returns the settings of a meter for the whole acceleration and the velocity from 10 Hz to 1000 Hz.
     *
     * @return settings, to be finished with {@link Settings#at}
     */
    public static Settings withDefaults() {
        return new Settings(List.of(new Measurand(Quantity.VELOCITY, Band.of(10, 1000))));
    }

    /**
     * What a meter measures beside the whole acceleration.
     *
     * @param measurands motions and their bands, at least one, none twice; the first is a velocity
     */
    public record Settings(List<Measurand> measurands) implements Serializable {
        /**
         * Checks and copies.
         *
         * @param measurands see the record
         */
        public Settings {
            measurands = Require.copy("measurands", measurands);
            if (measurands.isEmpty() || measurands.get(0).quantity() != Quantity.VELOCITY) {
                throw new IllegalArgumentException("measurands must begin with a velocity: " + measurands);
            }
            if (measurands.stream().distinct().count() < measurands.size()) {
                throw new IllegalArgumentException("measurands must differ: " + measurands);
            }
        }

        /**
         * Returns these settings with another band of the velocity.
         *
         * @param band band of the first measurand, from above 0 Hz
         * @return the new settings
         */
        public Settings withBand(Band band) {
            List<Measurand> list = new ArrayList<>(measurands);
            list.set(0, new Measurand(Quantity.VELOCITY, band));
            return new Settings(list);
        }

        /**
         * Returns these settings and one measurand more.
         *
         * @param quantity acceleration, velocity or displacement
         * @param band its band, from above 0 Hz
         * @return the new settings
         * @throws IllegalArgumentException if it is measured already
         */
        public Settings and(Quantity quantity, Band band) {
            List<Measurand> list = new ArrayList<>(measurands);
            list.add(new Measurand(quantity, band));
            return new Settings(list);
        }

        /**
         * Makes the meter.
         *
         * @param sampleRateHertz sample rate in Hz, at least 2.5 times the upper end of each band
         * @return a meter that has seen nothing
         * @throws IllegalArgumentException if a band doesn't fit the sample rate
         */
        public LevelMeter at(double sampleRateHertz) {
            return new LevelMeter(new Made(this, sampleRateHertz));
        }
    }

    /** What makes such a meter. */
    private record Made(Settings settings, double sampleRateHertz) implements Recipe<LevelMeter> {
        @Override
        public LevelMeter make() {
            return new LevelMeter(this);
        }

        @Override
        public String toString() {
            return "level meter of " + settings.measurands + " at " + sampleRateHertz + " Hz";
        }
    }

    /**
     * Takes in a block that follows the last one.
     *
     * @param samples acceleration in m/s², all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        order.follow(length);
        take(samples, offset, length);
    }

    /**
     * Takes in a block of which it is known where it belongs.
     *
     * @param firstSample number of its first sample in the stream, from 0
     * @param samples acceleration in m/s², all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @return how it came; what had come already is left out
     * @throws IllegalArgumentException if the range leaves the array, or the number or a sample is out of range;
     *     nothing is taken in
     */
    public Arrival push(long firstSample, double[] samples, int offset, int length) {
        Require.samples(samples, offset, length);
        Arrival arrival = order.accept(firstSample, length);
        if (arrival == Arrival.GAP) {
            settleAnew();
        }
        take(samples, offset + order.skipped(), length - order.skipped());
        return arrival;
    }

    private void take(double[] samples, int offset, int length) {
        for (int done = 0; done < length; done += PIECE) {
            int piece = Math.min(PIECE, length - done);
            acceleration.push(samples, offset + done, piece, scratch);
            for (int k = 0; k < inBands.size(); k++) {
                inBands.get(k).push(samples, offset + done, piece, scratch);
            }
        }
    }

    private void settleAnew() {
        for (int k = 0; k < inBands.size(); k++) {
            inBands.get(k).settleAnew();
        }
    }

    /**
     * Returns the reading of the whole acceleration.
     *
     * @return reading that goes on with this meter
     */
    public LevelReading acceleration() {
        return acceleration;
    }

    /**
     * Returns the reading of the velocity in the first band.
     *
     * @return reading that goes on with this meter
     */
    public LevelReading velocity() {
        return inBands.get(0);
    }

    /**
     * Returns the settings.
     *
     * @return what is measured beside the whole acceleration
     */
    public Settings settings() {
        return made.settings;
    }

    /**
     * Tells whether the meter is set to a motion in a band.
     *
     * @param quantity motion
     * @param band band
     * @return true if there is a reading of it
     */
    public boolean measures(Quantity quantity, Band band) {
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(band, "band");
        return inBands.stream().anyMatch(reading -> reading.is(quantity, band));
    }

    /**
     * Returns the reading of a motion in a band.
     *
     * @param quantity motion
     * @param band band as it was set
     * @return reading that goes on with this meter
     * @throws IllegalArgumentException if the meter isn't set to it
     */
    public LevelReading reading(Quantity quantity, Band band) {
        for (int k = 0; k < inBands.size(); k++) {
            if (inBands.get(k).is(quantity, band)) {
                return inBands.get(k);
            }
        }
        throw new IllegalArgumentException("quantity and band must be among " + made.settings.measurands + ": "
                + quantity + " (" + band + ")");
    }

    /**
     * Returns all readings.
     *
     * @return that of the whole acceleration, then those in bands as they were set; they go on with this meter
     */
    public List<LevelReading> readings() {
        List<LevelReading> all = new ArrayList<>();
        all.add(acceleration);
        all.addAll(inBands);
        return List.copyOf(all);
    }

    /**
     * Tells whether there is something to read in each band.
     *
     * @return true once all chains have settled and measured
     */
    public boolean isSettled() {
        for (int k = 0; k < inBands.size(); k++) {
            if (!inBands.get(k).isReadable()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns what came of the stream's order since the meter was made or reset; allocates it.
     *
     * @return gaps and repeats so far
     */
    public Continuity continuity() {
        return order.soFar();
    }

    /** Begins anew: readings and the numbers of samples are forgotten, the chains settle again. */
    public void reset() {
        restartReading();
        settleAnew();
        order.reset();
    }

    /** Begins a new reading: what was read is forgotten, the chains stay settled. */
    public void restartReading() {
        acceleration.restart();
        for (int k = 0; k < inBands.size(); k++) {
            inBands.get(k).restart();
        }
    }

    @Override
    public Recipe<LevelMeter> recipe() {
        return made;
    }

    /** The chains' own states tell the bands. */
    private int code() {
        return StateFormat.settings(made.sampleRateHertz);
    }

    @Override
    public int stateLength() {
        int length = StateFormat.HEADER + StreamOrder.STATE + acceleration.stateLength();
        for (int k = 0; k < inBands.size(); k++) {
            length += inBands.get(k).stateLength();
        }
        return length;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = order.put(out, FORMAT.write(out, offset, stateLength(), code()));
        at = acceleration.put(out, at);
        for (int k = 0; k < inBands.size(); k++) {
            at = inBands.get(k).put(out, at);
        }
        return at;
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        try {
            int at = order.take(in, FORMAT.check(in, offset, stateLength(), code()));
            at = acceleration.take(in, at);
            for (int k = 0; k < inBands.size(); k++) {
                at = inBands.get(k).take(in, at);
            }
            return at;
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    /** Returns what it measures and the sample rate. */
    @Override
    public String toString() {
        return made.toString();
    }
}
