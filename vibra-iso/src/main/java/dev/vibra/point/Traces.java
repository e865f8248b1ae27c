package dev.vibra.point;

import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/**
 * The signals behind the numbers of a point, for figures: much larger than the numbers, and dropped where not needed.
 */
public final class Traces implements Serializable {
    private static final long serialVersionUID = 2;

    private final Waveform waveform;
    private final Spectrum velocity;

    private Traces(Waveform waveform, Spectrum velocity) {
        this.waveform = Objects.requireNonNull(waveform, "waveform");
        this.velocity = velocity;
    }

    private Object readResolve() {
        return new Traces(waveform, velocity);
    }

    /**
     * Keeps the recording alone.
     *
     * @param waveform recording
     * @return traces without spectrum
     */
    public static Traces of(Waveform waveform) {
        return new Traces(waveform, null);
    }

    /**
     * Adds the velocity spectrum.
     *
     * @param spectrum spectrum read as velocity
     * @return traces with that spectrum
     */
    public Traces withVelocity(Spectrum spectrum) {
        return new Traces(waveform, Objects.requireNonNull(spectrum, "spectrum"));
    }

    /** {@return the recording} */
    public Waveform waveform() {
        return waveform;
    }

    /** {@return the velocity spectrum, if it was made} */
    public Optional<Spectrum> velocity() {
        return Optional.ofNullable(velocity);
    }

    /** Returns what there is. */
    @Override
    public String toString() {
        return "traces: " + waveform + (velocity == null ? "" : "; velocity spectrum");
    }
}
