package dev.vibra.channel;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.Objects;

/**
 * Envelope spectrum that a channel makes.
 *
 * @param band band that is demodulated, up to half the sample rate
 * @param resolutionHertz distance of its lines in Hz, finite, above zero
 */
public record EnvelopeRequest(Band band, double resolutionHertz) implements Serializable {
    /**
     * Checks the parts.
     *
     * @param band see the record
     * @param resolutionHertz see the record
     */
    public EnvelopeRequest {
        Objects.requireNonNull(band, "band");
        Require.positive("resolutionHertz", resolutionHertz, "Hz");
    }

    /** Returns band and resolution. */
    @Override
    public String toString() {
        return "envelope of " + band + ", lines " + resolutionHertz + " Hz apart";
    }
}
