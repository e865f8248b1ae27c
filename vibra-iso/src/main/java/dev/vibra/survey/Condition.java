package dev.vibra.survey;

import dev.vibra.diagnosis.Rank;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Optional;

/**
 * How a machine stands: the worst of what is known, and what that is. Immutable.
 *
 * @see "ISO 13374-1:2003, health assessment; ISO 20816-1:2016, criteria I (magnitude) and II (change)"
 */
public final class Condition implements Serializable {
    private static final long serialVersionUID = 1;

    private final Rank rank;
    private final List<String> because;
    private final boolean mayServeAsBaseline;

    private Condition(Rank rank, List<String> because, boolean mayServeAsBaseline) {
        this.rank = rank;
        this.because = Require.copy("because", because);
        this.mayServeAsBaseline = mayServeAsBaseline;
    }

    private Object readResolve() {
        return new Condition(rank, because, mayServeAsBaseline);
    }

    static Condition of(Rank rank, List<String> because, boolean mayServeAsBaseline) {
        return new Condition(rank, because, mayServeAsBaseline);
    }

    static Condition notDetermined(List<String> because) {
        return new Condition(null, because, false);
    }

    /** {@return how urgent it is; empty where no point has a verdict} */
    public Optional<Rank> rank() {
        return Optional.ofNullable(rank);
    }

    /** {@return the rank in words, or {@code not determined}} */
    public String word() {
        return rank().map(Rank::toString).orElse("not determined");
    }

    /** {@return what leads to it, the worst first, each without full stop} */
    public List<String> because() {
        return because;
    }

    /** {@return true if the machine is healthy as far as looked at, and soundly recorded} */
    public boolean mayServeAsBaseline() {
        return mayServeAsBaseline;
    }

    /** Returns word and reasons. */
    @Override
    public String toString() {
        return word() + (because.isEmpty() ? "" : ": " + String.join("; ", because));
    }
}
