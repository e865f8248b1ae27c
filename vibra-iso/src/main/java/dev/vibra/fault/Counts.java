package dev.vibra.fault;

import dev.vibra.internal.Require;
import dev.vibra.internal.TableText;
import dev.vibra.symptom.Site;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * How often simulated machines with a fault, and sound ones, show each symptom: counts, smoothed. Immutable.
 *
 * <p>A symptom is counted beside one other, the one it hangs on most (a tree of dependence, learned from the same
 * machines), so that two that always come together don't weigh twice. No machine is like its model: whatever the
 * counts say, some answers are seen or missing for reasons that no model has, so that no probability leaves 0.02 to 0.8
 * when answers are weighed (common practice, no source; 0.005 for bearings, whose knocks are held against chance before
 * they count as heard). So one answer never settles a diagnosis, and what a fault doesn't show speaks less against it
 * than what it shows speaks for it.
 *
 * @see "N. Friedman, D. Geiger, M. Goldszmidt, Machine Learning 29 (1997) 131-163, tree-augmented naive Bayes"
 * @see "C. K. Chow, C. N. Liu, IEEE Trans. Inf. Theory 14 (1968) 462-467"
 */
public final class Counts {
    /** Least probability that a symptom is seen, and that it isn't, where answers are weighed. */
    private static final double SEEN_ANYWAY = 0.02;
    private static final double HEARD_ANYWAY = 0.005;
    private static final double MISSED_ANYWAY = 0.2;
    /** Standard errors within which two shares count as one; one in 370 differs by more when it doesn't (normal). */
    private static final double CHANCE = 3;
    /** How many machines the sound ones count for beside those with the fault. */
    private static final double TOWARDS_SOUND = 2;
    /** How many machines the count without the other symptom counts for beside the count with it. */
    private static final double TOWARDS_ALONE = 4;

    private static final Counts STANDARD = parse(FaultTable.resource("counts.txt"));

    private final Draws draws;
    private final Map<String, Map<String, Cell>> cells;

    private Counts(Draws draws, Map<String, Map<String, Cell>> cells) {
        this.draws = draws;
        this.cells = cells;
    }

    /**
     * What was drawn, and what was fitted to the half of it that was held back.
     *
     * @param seed first seed
     * @param machines number of machines
     * @param exponent how far symptoms beside the strongest one count, 0 to 1, so that confidences come true
     * @param highestNone confidence that nothing is wrong up to which a fault is told where a line alone is high
     * @param highestNoneQuiet the same where no line is: a quiet machine is told a fault only where it is clear
     */
    public record Draws(long seed, int machines, double exponent, double highestNone, double highestNoneQuiet) {
        /**
         * Checks the figures.
         *
         * @param seed see the record
         * @param machines see the record
         * @param exponent see the record
         * @param highestNone see the record
         * @param highestNoneQuiet see the record
         */
        public Draws {
            Require.atLeast("machines", machines, 0);
            Require.within("exponent", exponent, 0, 1, "");
            Require.within("highestNone", highestNone, 0, 1, "");
            Require.within("highestNoneQuiet", highestNoneQuiet, 0, 1, "");
        }
    }

    /** Counts of one symptom beside the one that it hangs on; where that isn't measured it is counted alone. */
    record Cell(String given, int[] counts) {
        int all() {
            return Arrays.stream(counts).sum();
        }

        int seen() {
            return counts[1] + counts[3] + counts[5];
        }

        /** Two shares differ beyond what drawing so few machines makes: the test of two proportions. */
        boolean differsFrom(Cell other) {
            double pooled = (seen() + other.seen()) / (double) (all() + other.all());
            double error = Math.sqrt(pooled * (1 - pooled) * (1.0 / all() + 1.0 / other.all()));
            return Math.abs(seen() / (double) all() - other.seen() / (double) other.all()) > CHANCE * error;
        }
    }

    /** {@return the counts of the library} */
    public static Counts standard() {
        return STANDARD;
    }

    /**
     * Reads counts.
     *
     * @param text sections {@code [draws]} and {@code [counts]}
     * @return the counts
     * @throws IllegalArgumentException if the text has another form; the message names the line
     */
    public static Counts parse(String text) {
        Map<String, List<String>> columns = new LinkedHashMap<>();
        columns.put("draws", List.of("seed", "machines", "exponent", "highest none", "quiet"));
        columns.put("counts", List.of("fault", "symptom", "given", "alone no", "alone yes", "no no", "no yes", "yes no",
                "yes yes"));
        TableText tables = TableText.parse("counts of symptoms", text, columns);
        Map<String, Map<String, Cell>> cells = new HashMap<>();
        for (TableText.Row row : tables.rows("counts")) {
            int[] counts = new int[6];
            for (int k = 0; k < counts.length; k++) {
                counts[k] = row.read(columns.get("counts").get(3 + k), Integer::parseInt);
            }
            cells.computeIfAbsent(row.text("fault"), key -> new HashMap<>()).put(row.text("symptom"),
                    new Cell(row.text("given"), counts));
        }
        if (tables.rows("draws").size() != 1) {
            throw new IllegalArgumentException("counts of symptoms must have one row of [draws]: "
                    + tables.rows("draws").size());
        }
        TableText.Row draws = tables.rows("draws").get(0);
        return new Counts(new Draws(draws.read("seed", Long::parseLong), draws.read("machines", Integer::parseInt),
                draws.read("exponent", Double::parseDouble), draws.read("highest none", Double::parseDouble),
                draws.read("quiet", Double::parseDouble)), cells);
    }

    /** {@return what was drawn} */
    public Draws draws() {
        return draws;
    }

    /**
     * Names the row of sound machines as seen from a kind of site.
     *
     * @param kind kind of site
     * @return its id, as in {@code none/shaft}
     */
    public static String soundAt(Site.Kind kind) {
        return "none/" + Objects.requireNonNull(kind, "kind");
    }

    /**
     * Finds the symptom that another one is counted beside.
     *
     * @param kind kind of site from which both are seen
     * @param symptom code of a symptom
     * @return code of the other; empty if it is counted alone
     */
    public Optional<String> given(Site.Kind kind, String symptom) {
        Objects.requireNonNull(symptom, "symptom");
        return Optional.ofNullable(cell(soundAt(kind), symptom)).map(Cell::given).filter(given -> !given.equals("-"));
    }

    private Cell cell(String fault, String symptom) {
        return cells.getOrDefault(fault, Map.of()).get(symptom);
    }

    /**
     * Returns the share of simulated machines with a fault that show a symptom, smoothed.
     *
     * @param fault a fault
     * @param symptom code of a symptom
     * @return above 0, below 1; empty where it was never counted
     */
    public Optional<Double> share(Fault fault, String symptom) {
        Objects.requireNonNull(fault, "fault");
        Objects.requireNonNull(symptom, "symptom");
        Cell sound = cell(soundAt(fault.site()), symptom);
        Cell cell = cell(fault.id(), symptom);
        return sound == null || cell == null || sound.all() == 0 || cell.all() == 0 ? Optional.empty()
                : Optional.of(alone(cell, alone(sound, 0.5)));
    }

    /**
     * Returns the share of sound simulated machines that show a symptom, smoothed.
     *
     * @param kind kind of site from which it is seen
     * @param symptom code of a symptom
     * @return above 0, below 1; empty where it was never counted
     */
    public Optional<Double> soundShare(Site.Kind kind, String symptom) {
        Cell sound = cell(soundAt(kind), Objects.requireNonNull(symptom, "symptom"));
        return sound == null || sound.all() == 0 ? Optional.empty() : Optional.of(alone(sound, 0.5));
    }

    /**
     * Returns on how many simulated machines with a fault a symptom was looked for.
     *
     * @param fault id of a fault, or {@link #soundAt}
     * @param symptom code of a symptom
     * @return seen and all
     */
    public int[] seenOf(String fault, String symptom) {
        Cell cell = cell(Objects.requireNonNull(fault, "fault"), Objects.requireNonNull(symptom, "symptom"));
        return cell == null ? new int[2] : new int[] {cell.seen(), cell.all()};
    }

    /**
     * Weighs an answer: logarithm of its probability with a fault over that without any.
     *
     * @param fault the fault
     * @param symptom code of the symptom
     * @param seen the answer
     * @param given answer to the symptom that it hangs on, if that was measured
     * @return natural logarithm; 0 where it was never counted, or where chance alone makes the shares differ as they do
     */
    public double logRatio(Fault fault, String symptom, boolean seen, Optional<Boolean> given) {
        Objects.requireNonNull(fault, "fault");
        Objects.requireNonNull(symptom, "symptom");
        Objects.requireNonNull(given, "given");
        Cell sound = cell(soundAt(fault.site()), symptom);
        Cell cell = cell(fault.id(), symptom);
        if (sound == null || cell == null || sound.all() == 0 || cell.all() == 0 || !sound.differsFrom(cell)) {
            return 0;
        }
        double soundAlone = alone(sound, 0.5);
        double least = fault.site() == Site.Kind.BEARING ? HEARD_ANYWAY : SEEN_ANYWAY;
        double with = bounded(beside(cell, alone(cell, soundAlone), given), least);
        double without = bounded(beside(sound, soundAlone, given), least);
        return seen ? Math.log(with / without) : Math.log((1 - with) / (1 - without));
    }

    private static double alone(Cell cell, double prior) {
        return (cell.seen() + TOWARDS_SOUND * prior) / (cell.all() + TOWARDS_SOUND);
    }

    private static double beside(Cell cell, double alone, Optional<Boolean> given) {
        if (given.isEmpty()) {
            return alone;
        }
        int from = given.get() ? 4 : 2;
        return (cell.counts()[from + 1] + TOWARDS_ALONE * alone)
                / (cell.counts()[from] + cell.counts()[from + 1] + TOWARDS_ALONE);
    }

    private static double bounded(double probability, double least) {
        return Math.max(least, Math.min(1 - MISSED_ANYWAY, probability));
    }

    /** Returns how much was drawn. */
    @Override
    public String toString() {
        return "counts of " + draws.machines + " simulated machines, seed " + draws.seed;
    }
}
