package dev.vibra.docs.survey.output;

import java.util.Objects;

/**
 * How a report is written.
 *
 * @param phrases its texts
 * @param withFigures true if figures are drawn, which takes most of the time
 * @param everyValue true if the figures of all points hold every value behind them
 * @param units units in which people read it
 */
public record ReportSettings(Phrases phrases, boolean withFigures, boolean everyValue, ShownUnits units) {
    /**
     * Checks that there are texts.
     *
     * @param phrases see the record
     * @param withFigures see the record
     * @param everyValue see the record
     * @param units see the record
     */
    public ReportSettings {
        Objects.requireNonNull(phrases, "phrases");
        Objects.requireNonNull(units, "units");
    }

    /** {@return English, with figures, all values where they are needed} */
    public static ReportSettings standard() {
        return new ReportSettings(Phrases.english(), true, false, ShownUnits.METRIC);
    }

    /** {@return the same with words and tables alone} */
    public ReportSettings withoutFigures() {
        return new ReportSettings(phrases, false, everyValue, units);
    }

    /** {@return the same with every value behind every figure} */
    public ReportSettings withEveryValue() {
        return new ReportSettings(phrases, withFigures, true, units);
    }

    /**
     * Changes the texts.
     *
     * @param other the texts
     * @return the same with these texts
     */
    public ReportSettings in(Phrases other) {
        return new ReportSettings(other, withFigures, everyValue, units);
    }

    /**
     * Changes the units.
     *
     * @param other the units
     * @return the same in these units
     */
    public ReportSettings in(ShownUnits other) {
        return new ReportSettings(phrases, withFigures, everyValue, other);
    }
}
