package dev.vibra.bearing.proportion;

import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.internal.Digits;
import java.util.Optional;
import java.util.stream.IntStream;

/** What else than a bearing makes a pulsation: the shaft, parts of its speed, given rates, currents. */
final class OtherOrigins {
    /** A rubbing or loose machine shows these parts of its speed. */
    private static final int[] PARTS = {2, 3, 4};
    private static final int HIGHEST_MULTIPLE = 20;
    private static final double BINS = 2;
    /** Deviation of a line frequency from its nominal value; common practice, no source. */
    private static final double MAINS = 1e-3;
    private static final double LOG_STANDING = Math.log(1e-3);

    private final UnknownBearingSettings settings;

    OtherOrigins(UnknownBearingSettings settings) {
        this.settings = settings;
    }

    /**
     * Cause of a pulsation other than a bearing.
     *
     * @param cause words
     * @param base rate whose multiples it explains, Hz
     */
    record Origin(String cause, double base) {}

    /**
     * Finds the cause of a pulsation.
     *
     * @param lines lines of its band
     * @param hertz its rate
     * @param sidebands its sidebands: those of a cage, or at a speed that shows no lines, prove a bearing
     * @return the cause; empty if there is none
     */
    Optional<Origin> of(SearchLines lines, double hertz, SidebandSearch sidebands) {
        Shaft shaft = sidebands.shaft();
        boolean carried = sidebands.found().stream().anyMatch(side -> side.isPlain() && !side.isSpeed());
        boolean turns = sidebands.found().stream().anyMatch(side -> side.isPlain() && side.isSpeed());
        Optional<Origin> speed = carried && !shaft.read() ? Optional.empty()
                : multiple(lines, hertz, shaft.hertz(), shaft.reach(), "the speed");
        return speed.or(() -> part(lines, hertz, shaft))
                .or(() -> given(lines, hertz, shaft))
                .or(() -> turns || carried ? Optional.empty() : currents(lines, hertz));
    }

    private Optional<Origin> given(SearchLines lines, double hertz, Shaft shaft) {
        return settings.otherRatesHertz().stream()
                .map(rate -> multiple(lines, hertz, rate, shaft.reach(),
                        "the given rate of " + Digits.compact(rate, 5) + " Hz"))
                .flatMap(Optional::stream).findFirst();
    }

    private Optional<Origin> currents(SearchLines lines, double hertz) {
        return settings.lineFrequenciesHertz().stream()
                .filter(line -> Math.abs(hertz - 2 * line) <= BINS * lines.resolutionHertz() + MAINS * hertz)
                .map(line -> new Origin("twice the line frequency of " + Digits.compact(line, 5) + " Hz", 2 * line))
                .findFirst();
    }

    private static Optional<Origin> multiple(SearchLines lines, double hertz, double base, double reach,
            String name) {
        double number = Math.rint(hertz / base);
        boolean hit = number >= 1 && number <= HIGHEST_MULTIPLE
                && Math.abs(hertz - number * base) <= BINS * lines.resolutionHertz() + reach * hertz;
        return hit ? Optional.of(new Origin((number == 1 ? "" : (long) number + " times ") + name, base))
                : Optional.empty();
    }

    /**
     * A part of the speed is recognised at its first multiples, where no race strikes, and then explains all others;
     * and, unless it is the part itself, only where two lines of that part stand beside it.
     */
    private static Optional<Origin> part(SearchLines lines, double hertz, Shaft shaft) {
        for (int parts : PARTS) {
            double base = shaft.hertz() / parts;
            Optional<Origin> hit = multiple(lines, hertz, base, shaft.reach(), "the speed over " + parts);
            boolean own = hertz < 1.5 * base || standing(lines, hertz, base, parts) >= 2;
            if (hit.isPresent() && own && hertz < Plausible.LOWEST_STRIKE * shaft.hertz()) {
                return hit;
            }
        }
        return Optional.empty();
    }

    private static long standing(SearchLines lines, double hertz, double base, int parts) {
        return IntStream.rangeClosed(1, 4 * parts).filter(k -> k % parts != 0).mapToDouble(k -> k * base)
                .filter(f -> Math.abs(f - hertz * Math.rint(f / hertz)) > lines.spreadHertz())
                .filter(f -> lines.holds(f) && lines.logProbability(lines.lineAt(f)) < LOG_STANDING).count();
    }
}
