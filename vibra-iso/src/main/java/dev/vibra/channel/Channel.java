package dev.vibra.channel;

import dev.vibra.alarm.AlarmEvaluator;
import dev.vibra.alarm.AlarmRule;
import dev.vibra.alarm.AlarmState;
import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.internal.StreamOrder;
import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.LevelReading;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.Arrival;
import dev.vibra.state.Continuity;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import dev.vibra.transform.PlanCache;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One measuring channel: takes blocks of acceleration of any size, and tells a {@link ChannelListener} of each reading,
 * each change of an alarm, each set of spectra and each interruption.
 *
 * <p>Intervals of readings and of spectra are counted from the first sample on; a gap doesn't shift them. Behind a gap
 * filters settle anew and no block of a spectrum is taken across it. A reading that isn't {@link ReadingQuality#SOUND}
 * leaves the alarms as they are: whoever shows them shows {@link #quality()} beside them, since a channel that measures
 * nothing raises no alarm.
 *
 * <p>Not thread-safe: one thread at a time; it may go from thread to thread. Allocates nothing while blocks go in. This
 * judges readings; whether and how a machine is stopped is for its protection system, under the local codes.
 */
public final class Channel implements Resumable<Channel> {
    private static final StateFormat FORMAT = new StateFormat("channel", 1);
    /** This part of an interval must have been measured for its reading to count. */
    private static final double LEAST_COVERAGE = 0.5;
    /** A converter's last steps before its full scale, and the tolerance with which that is known. */
    private static final double OVERLOAD = 0.995;

    private final Made made;
    private final LevelMeter levels;
    private final List<SpectrumMeter> spectra = new ArrayList<>();
    private final List<EnvelopeMeter> envelopes = new ArrayList<>();
    private final List<AlarmEvaluator> alarms = new ArrayList<>();
    /** The reading that the alarm of the same number watches. */
    private final List<LevelReading> watched = new ArrayList<>();
    private final StreamOrder order = new StreamOrder();
    private final Cadence readings;
    private final Cadence averages;
    private boolean begun;
    private long overloads;

    Channel(ChannelSettings settings, double sampleRateHertz, PlanCache plans) {
        made = new Made(settings, Require.positive("sampleRateHertz", sampleRateHertz, "Hz"));
        levels = settings.levels().at(sampleRateHertz);
        readings = new Cadence("readingSeconds", settings.readingSeconds(), sampleRateHertz);
        averages = new Cadence("spectraSeconds", settings.spectraSeconds(), sampleRateHertz);
        for (SpectrumSettings spectrum : settings.spectra()) {
            requireFits(spectrum.blockLength(sampleRateHertz, Integer.MAX_VALUE), spectrum);
            spectra.add(SpectrumMeter.of(Quantity.ACCELERATION, sampleRateHertz, spectrum, plans));
        }
        for (EnvelopeRequest envelope : settings.envelopes()) {
            double frame = Math.rint(sampleRateHertz / envelope.resolutionHertz());
            requireFits(frame, envelope);
            envelopes.add(EnvelopeMeter.of(Quantity.ACCELERATION, envelope.band(), (int) frame, sampleRateHertz,
                    plans));
        }
        for (AlarmRule rule : settings.rules()) {
            alarms.add(rule.newEvaluator());
            watched.add(rule.alarm().band().map(band -> levels.reading(rule.alarm().quantity(), band))
                    .orElse(levels.acceleration()));
        }
    }

    private void requireFits(double samples, Object what) {
        if (!(samples <= averages.samples())) {
            throw new IllegalArgumentException("spectraSeconds must hold a block of " + what + ", " + samples
                    + " samples: " + averages.samples());
        }
    }

    /** What makes such a channel. */
    private record Made(ChannelSettings settings, double sampleRateHertz) implements Recipe<Channel> {
        @Override
        public Channel make() {
            return settings.at(sampleRateHertz);
        }

        @Override
        public String toString() {
            return settings + " at " + sampleRateHertz + " Hz";
        }
    }

    /**
     * Takes in a block of which it is known where it belongs.
     *
     * @param firstSample number of its first sample in the stream, from 0; any number for the first block
     * @param samples acceleration in m/s², all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @param listener told of what happens, within this call
     * @throws IllegalArgumentException if the range leaves the array, or the number or a sample is out of range;
     *     nothing is taken in
     */
    public void push(long firstSample, double[] samples, int offset, int length, ChannelListener listener) {
        Require.samples(samples, offset, length);
        Objects.requireNonNull(listener, "listener");
        long expected = order.next();
        Arrival arrival = order.accept(firstSample, length);
        if (!begun) {
            readings.startAt(firstSample);
            averages.startAt(firstSample);
            begun = true;
        }
        if (arrival != Arrival.IN_ORDER) {
            listener.interrupted(this, arrival, arrival == Arrival.GAP ? firstSample - expected : order.skipped());
        }
        if (arrival != Arrival.LATE) {
            take(firstSample + order.skipped(), samples, offset + order.skipped(), length - order.skipped(), listener);
        }
    }

    /**
     * Takes in a block that follows the last one.
     *
     * @param samples acceleration in m/s², all finite and within ±1e70; left alone
     * @param offset index of the first sample
     * @param length number of samples, zero or more
     * @param listener told of what happens, within this call
     * @throws IllegalArgumentException if the range leaves the array or a sample is out of range; nothing is taken in
     */
    public void push(double[] samples, int offset, int length, ChannelListener listener) {
        push(order.next(), samples, offset, length, listener);
    }

    private void take(long first, double[] samples, int offset, int length, ChannelListener listener) {
        close(first, listener);
        for (int done = 0; done < length;) {
            long position = first + done;
            int piece = (int) Math.min(length - done, Math.min(readings.end(), averages.end()) - position);
            feed(position, samples, offset + done, piece);
            done += piece;
            close(position + piece, listener);
        }
    }

    private void feed(long position, double[] samples, int offset, int length) {
        levels.push(position, samples, offset, length);
        for (int k = 0; k < spectra.size(); k++) {
            spectra.get(k).push(position, samples, offset, length);
        }
        for (int k = 0; k < envelopes.size(); k++) {
            envelopes.get(k).push(position, samples, offset, length);
        }
        if (made.settings.knowsFullScale()) {
            countOverloads(samples, offset, length);
        }
    }

    private void countOverloads(double[] samples, int offset, int length) {
        double limit = OVERLOAD * made.settings.fullScale();
        for (int i = offset; i < offset + length; i++) {
            if (Math.abs(samples[i]) >= limit) {
                overloads++;
            }
        }
    }

    /** Ends the intervals that lie before a sample. */
    private void close(long sample, ChannelListener listener) {
        if (sample >= readings.end()) {
            judge(listener);
            levels.restartReading();
            overloads = 0;
            readings.advanceTo(sample);
        }
        if (sample >= averages.end()) {
            if (!spectra.isEmpty() || !envelopes.isEmpty()) {
                listener.spectra(this);
            }
            restartSpectra();
            averages.advanceTo(sample);
        }
    }

    private void restartSpectra() {
        for (int k = 0; k < spectra.size(); k++) {
            spectra.get(k).restartReading();
        }
        for (int k = 0; k < envelopes.size(); k++) {
            envelopes.get(k).restartReading();
        }
    }

    private void judge(ChannelListener listener) {
        boolean sound = quality() == ReadingQuality.SOUND;
        for (int k = 0; sound && k < alarms.size(); k++) {
            AlarmState before = alarms.get(k).state();
            AlarmRule rule = alarms.get(k).rule();
            AlarmState now = alarms.get(k).updateSi(watched.get(k).si(rule.alarm().detector()));
            if (now != before) {
                listener.alarm(this, k, before, now);
            }
        }
        listener.reading(this);
    }

    /**
     * Returns the levels of the present reading.
     *
     * @return meter, to be read only
     */
    public LevelMeter levels() {
        return levels;
    }

    /**
     * Returns one spectrum as averaged in the present interval; allocates it.
     *
     * @param index number of the spectrum, from 0, in the order of the settings
     * @return spectrum of acceleration; empty if no block is complete, as behind a gap
     * @throws IllegalArgumentException if there is no such spectrum
     */
    public Optional<Spectrum> spectrum(int index) {
        Require.within("index", index, 0, spectra.size() - 1, "");
        SpectrumMeter meter = spectra.get(index);
        return meter.blocks() == 0 ? Optional.empty() : Optional.of(meter.spectrum());
    }

    /**
     * Returns one envelope spectrum as averaged in the present interval; allocates it.
     *
     * @param index number of the envelope, from 0, in the order of the settings
     * @return spectrum of the envelope; empty if no frame is complete, as behind a gap
     * @throws IllegalArgumentException if there is no such envelope
     */
    public Optional<Spectrum> envelope(int index) {
        Require.within("index", index, 0, envelopes.size() - 1, "");
        EnvelopeMeter meter = envelopes.get(index);
        return meter.frames() == 0 ? Optional.empty() : Optional.of(meter.spectrum());
    }

    /**
     * Returns the state of one rule.
     *
     * @param index number of the rule, from 0, in the order of the settings
     * @return state after the last sound reading
     * @throws IllegalArgumentException if there is no such rule
     */
    public AlarmState state(int index) {
        Require.within("index", index, 0, alarms.size() - 1, "");
        return alarms.get(index).state();
    }

    /**
     * Returns the worst state of all rules.
     *
     * @return state; normal without a rule
     */
    public AlarmState state() {
        AlarmState worst = AlarmState.NORMAL;
        for (int k = 0; k < alarms.size(); k++) {
            AlarmState state = alarms.get(k).state();
            worst = state.compareTo(worst) > 0 ? state : worst;
        }
        return worst;
    }

    /**
     * Returns the part of the reading's interval that was measured behind settled filters, in the level of which least
     * was.
     *
     * @return 0 to 1
     */
    public double coverage() {
        long fewest = levels.acceleration().samples();
        for (int k = 0; k < watched.size(); k++) {
            fewest = Math.min(fewest, watched.get(k).samples());
        }
        return (double) Math.min(fewest, levels.velocity().samples()) / readings.samples();
    }

    /**
     * Returns what the present reading is good for.
     *
     * @return quality; incomplete while the interval has just begun
     */
    public ReadingQuality quality() {
        if (overloads > 0) {
            return ReadingQuality.OVERLOADED;
        }
        LevelReading whole = levels.acceleration();
        if (whole.isReadable() && !(whole.peakToPeakSi() > 0)) {
            return ReadingQuality.NO_SIGNAL;
        }
        return coverage() >= LEAST_COVERAGE ? ReadingQuality.SOUND : ReadingQuality.INCOMPLETE;
    }

    /**
     * Returns where the present reading begins.
     *
     * @return number of the first sample of its interval
     */
    public long readingBegin() {
        return readings.begin();
    }

    /**
     * Returns what came of the stream's order since the channel was made or reset; allocates it.
     *
     * @return gaps and repeats so far
     */
    public Continuity continuity() {
        return order.soFar();
    }

    /**
     * Returns the settings.
     *
     * @return settings
     */
    public ChannelSettings settings() {
        return made.settings;
    }

    /** Forgets everything, also the alarms and the numbers of samples. */
    public void reset() {
        levels.reset();
        for (int k = 0; k < spectra.size(); k++) {
            spectra.get(k).reset();
        }
        for (int k = 0; k < envelopes.size(); k++) {
            envelopes.get(k).reset();
        }
        for (int k = 0; k < alarms.size(); k++) {
            alarms.get(k).reset();
        }
        order.reset();
        readings.startAt(0);
        averages.startAt(0);
        begun = false;
        overloads = 0;
    }

    @Override
    public Recipe<Channel> recipe() {
        return made;
    }

    /** Meters and alarms tell their own settings in their own states. */
    private int code() {
        return StateFormat.settings(made.sampleRateHertz, readings.samples(), averages.samples(),
                made.settings.fullScale());
    }

    @Override
    public int stateLength() {
        int length = StateFormat.HEADER + 2 + StreamOrder.STATE + 2 * Cadence.STATE + levels.stateLength();
        for (int k = 0; k < spectra.size(); k++) {
            length += spectra.get(k).stateLength();
        }
        for (int k = 0; k < envelopes.size(); k++) {
            length += envelopes.get(k).stateLength();
        }
        for (int k = 0; k < alarms.size(); k++) {
            length += alarms.get(k).stateLength();
        }
        return length;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        int at = FORMAT.write(out, offset, stateLength(), code());
        out[at++] = begun ? 1 : 0;
        out[at++] = overloads;
        at = averages.put(out, readings.put(out, order.put(out, at)));
        at = levels.snapshotTo(out, at);
        for (int k = 0; k < spectra.size(); k++) {
            at = spectra.get(k).snapshotTo(out, at);
        }
        for (int k = 0; k < envelopes.size(); k++) {
            at = envelopes.get(k).snapshotTo(out, at);
        }
        for (int k = 0; k < alarms.size(); k++) {
            at = alarms.get(k).snapshotTo(out, at);
        }
        return at;
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        try {
            return taken(in, FORMAT.check(in, offset, stateLength(), code()));
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    private int taken(double[] in, int from) {
        int at = from;
        begun = StateFormat.flag(in, at++);
        overloads = StateFormat.count(in, at++, StateFormat.LARGEST_COUNT);
        at = averages.take(in, readings.take(in, order.take(in, at)));
        if (begun && !(readings.holds(order.next()) && averages.holds(order.next()))) {
            throw new IllegalArgumentException("state must have its next sample, " + order.next()
                    + ", within the present intervals, which end at " + readings.end() + " and " + averages.end());
        }
        at = levels.resumeFrom(in, at);
        for (int k = 0; k < spectra.size(); k++) {
            at = spectra.get(k).resumeFrom(in, at);
        }
        for (int k = 0; k < envelopes.size(); k++) {
            at = envelopes.get(k).resumeFrom(in, at);
        }
        for (int k = 0; k < alarms.size(); k++) {
            at = alarms.get(k).resumeFrom(in, at);
        }
        return at;
    }

    /** Returns name, state and quality. */
    @Override
    public String toString() {
        return made.settings.name() + ": " + state() + ", reading " + quality();
    }
}
