package dev.vibra.bearing.lines;

import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.internal.Require;
import java.util.Objects;

/** Lines of one envelope spectrum made ready for a search. */
public final class EnvelopeLines extends SearchLines {
    /** Near the width of the band the squared envelope of noise runs out, and the floor with it. */
    private static final double USABLE_SHARE_OF_WIDTH = 0.9;

    private final EnvelopeSpectrum spectrum;

    private EnvelopeLines(EnvelopeSpectrum spectrum, double shaftHertz) {
        super(squares(spectrum), spectrum.resolutionHertz(), spectrum.equivalentAverages(), shaftHertz,
                USABLE_SHARE_OF_WIDTH * spectrum.band().widthHertz());
        this.spectrum = spectrum;
    }

    private static double[] squares(EnvelopeSpectrum spectrum) {
        double[] squares = spectrum.depths();
        for (int i = 0; i < squares.length; i++) {
            squares[i] *= squares[i];
        }
        return squares;
    }

    /**
     * Holds the lines of a spectrum against noise.
     *
     * @param spectrum envelope spectrum
     * @param shaftHertz speed of rotation in Hz, finite, above zero: the floor is taken over 2.5 orders to either side
     * @return the lines
     * @throws IllegalArgumentException if the speed is out of range
     */
    public static EnvelopeLines of(EnvelopeSpectrum spectrum, double shaftHertz) {
        Objects.requireNonNull(spectrum, "spectrum");
        return new EnvelopeLines(spectrum, Require.positive("shaftHertz", shaftHertz, "Hz"));
    }

    /** {@return the spectrum} */
    public EnvelopeSpectrum spectrum() {
        return spectrum;
    }

    /** Returns the spectrum in a line. */
    @Override
    public String toString() {
        return "lines of the " + spectrum;
    }
}
