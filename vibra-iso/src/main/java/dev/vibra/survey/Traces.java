package dev.vibra.survey;

import dev.vibra.bearing.EnvelopeSpectrum;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The signals behind the numbers of a point, for figures: much larger than the numbers, and left out where not needed.
 */
public final class Traces implements Serializable {
    private static final long serialVersionUID = 1;

    private final Waveform waveform;
    private final Spectrum velocity;
    private final List<EvidenceLine> velocityLines;
    private final EnvelopeSpectrum envelope;
    private final List<EvidenceLine> envelopeLines;

    private Traces(Waveform waveform, Spectrum velocity, List<EvidenceLine> velocityLines, EnvelopeSpectrum envelope,
            List<EvidenceLine> envelopeLines) {
        this.waveform = Objects.requireNonNull(waveform, "waveform");
        this.velocity = velocity;
        this.velocityLines = List.copyOf(velocityLines);
        this.envelope = envelope;
        this.envelopeLines = List.copyOf(envelopeLines);
    }

    /**
     * Starts with the waveform alone.
     *
     * @param waveform recording
     * @return traces without spectra
     */
    public static Traces of(Waveform waveform) {
        return new Traces(waveform, null, List.of(), null, List.of());
    }

    /**
     * Adds the velocity spectrum.
     *
     * @param spectrum spectrum read as velocity
     * @param lines frequencies searched in it
     * @return traces with that spectrum
     */
    public Traces withVelocity(Spectrum spectrum, List<EvidenceLine> lines) {
        return new Traces(waveform, Objects.requireNonNull(spectrum, "spectrum"), lines, envelope, envelopeLines);
    }

    /**
     * Adds the envelope spectrum.
     *
     * @param spectrum spectrum of the envelope
     * @param lines frequencies searched in it
     * @return traces with that spectrum
     */
    public Traces withEnvelope(EnvelopeSpectrum spectrum, List<EvidenceLine> lines) {
        return new Traces(waveform, velocity, velocityLines, Objects.requireNonNull(spectrum, "spectrum"), lines);
    }

    /**
     * Returns the recording.
     *
     * @return the waveform
     */
    public Waveform waveform() {
        return waveform;
    }

    /**
     * Returns the velocity spectrum.
     *
     * @return the spectrum, if it was made
     */
    public Optional<Spectrum> velocity() {
        return Optional.ofNullable(velocity);
    }

    /**
     * Returns the frequencies searched in the velocity spectrum.
     *
     * @return lines, found or not
     */
    public List<EvidenceLine> velocityLines() {
        return velocityLines;
    }

    /**
     * Returns the envelope spectrum.
     *
     * @return the spectrum, if it was made
     */
    public Optional<EnvelopeSpectrum> envelope() {
        return Optional.ofNullable(envelope);
    }

    /**
     * Returns the frequencies searched in the envelope spectrum.
     *
     * @return lines, found or not
     */
    public List<EvidenceLine> envelopeLines() {
        return envelopeLines;
    }

    /** Returns what there is. */
    @Override
    public String toString() {
        return "traces: " + waveform + (velocity == null ? "" : "; velocity spectrum")
                + (envelope == null ? "" : "; envelope spectrum");
    }
}
