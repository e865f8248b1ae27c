package dev.vibra.balance.tolerance;

import dev.vibra.evidence.Confidence;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Row of the table of grades: which machines it is meant for, in the library's own words.
 *
 * @param grade grade of the row
 * @param machines machine types
 * @param confidence how well the row was checked; the list of machines is from memory in every row
 * @see "ISO 21940-11:2016, Table 1"
 */
public record GradeRow(BalanceGrade grade, String machines, Confidence confidence) implements Serializable {
    private static final List<GradeRow> TABLE = List.of(
            row(0.4, "gyroscopes; spindles and drives of high-precision systems", Confidence.FIRM),
            row(1, "audio and video drives; grinding-machine drives", Confidence.FIRM),
            row(2.5, "compressors; computer drives; electric motors and generators of shaft height 80 mm or more above"
                    + " 950 r/min; gas and steam turbines; machine-tool drives; textile machines",
                    Confidence.FIRM),
            row(6.3, "aircraft gas turbines; centrifuges; electric motors and generators of shaft height 80 mm or more"
                    + " up to 950 r/min, and smaller motors; fans; gears; general machinery; machine tools; paper"
                    + " machines; process plant; pumps; turbochargers; water turbines", Confidence.FIRM),
            row(16, "agricultural machines; crushers; drive shafts; crankshaft drives, inherently balanced, rigidly"
                    + " mounted",
                    Confidence.FIRM),
            row(40, "car wheels, rims and drive shafts; crankshaft drives, inherently balanced, elastically mounted",
                    Confidence.UNVERIFIED),
            row(100, "complete reciprocating engines of cars, trucks and locomotives", Confidence.SECONDARY),
            row(250, "crankshaft drives, inherently unbalanced, rigidly mounted", Confidence.UNVERIFIED),
            row(630, "crankshaft drives, inherently unbalanced, elastically mounted", Confidence.UNVERIFIED),
            row(1600, "crankshaft drives of large slow marine diesel engines, inherently balanced",
                    Confidence.UNVERIFIED),
            row(4000, "crankshaft drives of large slow marine diesel engines, inherently unbalanced",
                    Confidence.FIRM));

    /**
     * Checks the parts.
     *
     * @param grade grade of the row
     * @param machines machine types
     * @param confidence how well the row was checked; the list of machines is from memory in every row
     */
    public GradeRow {
        Objects.requireNonNull(grade, "grade");
        Objects.requireNonNull(machines, "machines");
        Objects.requireNonNull(confidence, "confidence");
    }

    private static GradeRow row(double grade, String machines, Confidence confidence) {
        return new GradeRow(BalanceGrade.of(grade), machines, confidence);
    }

    /**
     * Returns the table, finest grade first.
     *
     * @return all rows
     */
    public static List<GradeRow> table() {
        return TABLE;
    }

    /**
     * Finds the finest grade of the table that holds a value.
     *
     * @param millimetresPerSecond specific unbalance times angular speed in mm/s
     * @return the finest grade at or above the value, a billionth above it being rounding; empty above the coarsest
     *     grade, and for NaN
     */
    public static Optional<BalanceGrade> finestHolding(double millimetresPerSecond) {
        double value = millimetresPerSecond / (1 + BalanceGrade.ROUNDING);
        return TABLE.stream().map(GradeRow::grade).filter(g -> value <= g.millimetresPerSecond())
                .findFirst();
    }

    /** Returns grade and machines. */
    @Override
    public String toString() {
        return grade + ": " + machines + " (" + confidence + ")";
    }
}
