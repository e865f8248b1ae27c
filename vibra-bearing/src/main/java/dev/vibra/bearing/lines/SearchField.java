package dev.vibra.bearing.lines;

import java.util.Objects;

/** Lines of one band with those that are explained already, which count for nothing. */
public final class SearchField {
    private final SearchLines lines;
    private final boolean[] covered;

    private SearchField(SearchLines lines, boolean[] covered) {
        this.lines = lines;
        this.covered = covered;
    }

    /**
     * Lays a mask over lines.
     *
     * @param lines lines of a band
     * @param mask what is explained already
     * @return the field
     */
    public static SearchField of(SearchLines lines, LineMask mask) {
        return new SearchField(Objects.requireNonNull(lines, "lines"), Objects.requireNonNull(mask, "mask").on(lines));
    }

    /** {@return the lines} */
    public SearchLines lines() {
        return lines;
    }

    /**
     * Tells whether a line could be seen and has no other explanation.
     *
     * @param hertz frequency in Hz
     * @return false where the line doesn't count
     */
    public boolean holds(double hertz) {
        return lines.holds(hertz) && !covered[lines.lineAt(hertz)];
    }

    /** Returns the lines. */
    @Override
    public String toString() {
        return lines.toString();
    }
}
