package dev.vibra.envelope;

import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Envelopes of recordings; the one-line layer over {@link EnvelopePlan} and {@link
 * SquaredEnvelopePlan}. */
public final class Envelope {
    private Envelope() {}

    /**
     * Computes the amplitude envelope of a band of a recording, without what it holds above the width of the band.
     *
     * @param wave recording, at least 4 samples
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @return the envelope in the quantity of the recording, at a sample rate of two to four times the width of the
     *     band (at most that of the recording)
     * @throws IllegalArgumentException if the band is out of range
     */
    public static Waveform of(Waveform wave, Band band) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(wave, "wave");
        EnvelopePlan plan = EnvelopePlan.of(wave.length(), wave.sampleRateHertz(), band);
        double[] out = plan.process(wave.samples(), 0, new double[plan.outputLength()]);
        return Waveform.ofSi(wave.quantity(), plan.outputSampleRateHertz(), out).startingAt(wave.startSeconds());
    }

    /**
     * Computes the squared envelope of a band of a recording.
     *
     * @param wave recording, at least 4 samples
     * @param band band up to half the sample rate that holds at least two lines of the whole recording
     * @return the squared envelope
     * @throws IllegalArgumentException if the band is out of range
     */
    public static SquaredEnvelope squared(Waveform wave, Band band) {
        return squared(Objects.requireNonNull(wave, "wave"), List.of(Objects.requireNonNull(band, "band"))).get(0);
    }

    /**
     * Computes the squared envelopes of several bands of a recording, which is transformed once for all of them.
     *
     * @param wave recording, at least 4 samples
     * @param bands one band or more, each up to half the sample rate and of at least two lines of the whole recording
     * @return one squared envelope a band, in the order of the bands
     * @throws IllegalArgumentException if a band is out of range
     */
    public static List<SquaredEnvelope> squared(Waveform wave, List<Band> bands) {
        Objects.requireNonNull(bands, "bands");
        Objects.requireNonNull(wave, "wave");
        SquaredEnvelopePlan plan = SquaredEnvelopePlan.of(wave.length(), wave.sampleRateHertz(), bands);
        plan.load(wave.samples(), 0);
        List<SquaredEnvelope> envelopes = new ArrayList<>();
        for (int i = 0; i < bands.size(); i++) {
            double[] squares = plan.squares(i, new double[plan.outputLength(i)]);
            envelopes.add(new SquaredEnvelope(wave, bands.get(i), plan.outputSampleRateHertz(i), squares));
        }
        return List.copyOf(envelopes);
    }
}
