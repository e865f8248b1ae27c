package dev.vibra.quantity;

/**
 * How the number of a {@link Level} came about. Near the ends of a band the methods differ by up to 29 %: a limit holds
 * for levels of the method that it was made with.
 */
public enum LevelMethod {
    /** Read from an instrument or a store by whoever gives it; nothing is known but what was said. */
    STATED("stated by the caller", ""),
    /** Through the chain of a vibration-severity instrument: what severity limits mean. */
    SEVERITY_CHAIN("severity chain of ISO 2954", ""),
    /** All samples as they are, nothing taken off. */
    WHOLE_SIGNAL("whole signal", ""),
    /** Limited to a band without phase shift, all of it counted up to the ends. */
    ZERO_PHASE_BAND("zero-phase band", "zero-phase"),
    /** Lines of a spectrum between two frequencies, added by Parseval's relation. */
    SPECTRUM_BAND("lines of a spectrum, added", "lines added"),
    /** One line or order. */
    SPECTRUM_LINE("one line of a spectrum", ""),
    /** Band-pass filter of a fraction of an octave. */
    OCTAVE_FILTER("octave filter", "octave filter"),
    /** Carrier behind an envelope. */
    ENVELOPE("envelope", "envelope"),
    /** Converted from another motion or detector as if the vibration were one sine. */
    SINE_CONVERSION("converted as one sine", "as one sine");

    private final String label;
    private final String mark;

    LevelMethod(String label, String mark) {
        this.label = label;
        this.mark = mark;
    }

    /** What a printed level says of it; empty for what needs no word. */
    String mark() {
        return mark;
    }

    /** Returns the method in words, as in {@code severity chain of ISO 2954}. */
    @Override
    public String toString() {
        return label;
    }
}
