package dev.vibra.bearing.lines;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Envelope lines of several bands of a recording. Of one whose length has a slow transform the last sixteenth or less
 * is left out.
 */
public final class BandEnvelopes {
    /** A band quieter than this part of the recording holds rounding noise, not vibration. */
    private static final double SILENCE = 1e-9;
    /** A step from end to begin that is so many times the usual one from sample to sample is a jump. */
    private static final double JUMP = 8;

    private BandEnvelopes() {}

    /**
     * Makes the lines.
     *
     * @param recording recording
     * @param bands bands, one or more
     * @param shaftHertz speed of rotation in Hz, finite, above zero
     * @param revolutionsPerBlock about so many revolutions make a block, above zero
     * @param highestHertz lines above it are dropped, Hz
     * @return lines for each band, in their order; empty where the band is silent
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static List<Optional<EnvelopeLines>> of(Waveform recording, List<Band> bands, double shaftHertz,
            double revolutionsPerBlock, double highestHertz) {
        Objects.requireNonNull(bands, "bands");
        Objects.requireNonNull(recording, "recording");
        Waveform wave = endsMeet(recording, RealTransform.fastLength(recording.length()));
        double quiet = SILENCE * wave.rms().si();
        double revolutions = wave.durationSeconds() * shaftHertz;
        double resolution = blocks(revolutions / revolutionsPerBlock) / wave.durationSeconds();
        return EnvelopeSpectrum.unlessSilent(Envelope.squared(wave, bands), resolution).stream()
                .map(one -> one.filter(spectrum -> spectrum.level().si() > quiet)
                        .map(spectrum -> EnvelopeLines.of(spectrum.upTo(highestHertz), shaftHertz))).toList();
    }

    /**
     * Takes a ramp away where the transform, which takes a recording as periodic, would see a jump from its end to its
     * begin: with a slow drift that would be the loudest impact of all.
     */
    private static Waveform endsMeet(Waveform recording, int length) {
        Waveform wave = recording.part(0, length);
        double[] samples = wave.samples();
        double jump = samples[length - 1] - samples[0];
        double squares = 0;
        for (int i = 1; i < length; i++) {
            squares += (samples[i] - samples[i - 1]) * (samples[i] - samples[i - 1]);
        }
        if (Math.abs(jump) <= JUMP * Math.sqrt(squares / length)) {
            return wave;
        }
        for (int i = 0; i < length; i++) {
            samples[i] -= jump * i / (length - 1);
        }
        return Waveform.ofSi(wave.quantity(), wave.sampleRateHertz(), samples).startingAt(wave.startSeconds());
    }

    /** Blocks side by side, a power of two of them: envelopes have such a length, and so have theirs. */
    private static double blocks(double wanted) {
        return Math.pow(2, Math.max(0, Math.rint(Math.log(wanted) / Math.log(2))));
    }
}
