package dev.vibra.balance;

import dev.vibra.evidence.Remark;
import java.io.Serializable;
import java.util.List;

/**
 * Record of a balancing job as plain data: what was read, what was fitted, what it led to, and who may rely on what.
 * Every number carries its unit in its name; angles and phases are in the convention.
 *
 * @param convention how phases and angles are counted, in words
 * @param speedsRevolutionsPerMinute speeds of each run; empty if not named
 * @param runs runs in order
 * @param coefficients influence coefficients; empty if runs are still missing
 * @param corrections corrections for the rotor as it is now; empty if runs are still missing
 * @param ellipses how far each correction may be off; empty if the job was told no scatter
 * @param residuals residual unbalance by the last final run; empty before it, or without radii
 * @param bearingResiduals the same as seen in the bearing planes; empty if the job was not told where they are
 * @param remainingShare vibration after over vibration before; NaN before the final run
 * @param gradeRequired grade asked for, as in {@code G6.3}; empty without a tolerance
 * @param gradeReached grade reached with its evidence; empty before the final run, or without tolerance or radii
 * @param gradeProbability probability that the residual unbalance is within tolerance; NaN where it is not known
 * @param remarks doubts
 * @param reliance what the numbers may be used for, and what not
 * @param cautions cautions for work on the machine
 * @see "ISO 21940-13:2012, reporting"
 */
public record JobRecord(String convention, List<Double> speedsRevolutionsPerMinute, List<RunEntry> runs,
        List<CoefficientEntry> coefficients, List<MassEntry> corrections, List<EllipseEntry> ellipses,
        List<ResidualEntry> residuals, List<ResidualEntry> bearingResiduals, double remainingShare,
        String gradeRequired, String gradeReached, double gradeProbability, List<Remark> remarks,
        List<String> reliance, List<String> cautions) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param convention how phases and angles are counted, in words
     * @param speedsRevolutionsPerMinute speeds of each run; empty if not named
     * @param runs runs in order
     * @param coefficients influence coefficients; empty if runs are still missing
     * @param corrections corrections for the rotor as it is now; empty if runs are still missing
     * @param ellipses how far each correction may be off; empty if the job was told no scatter
     * @param residuals residual unbalance by the last final run; empty before it, or without radii
     * @param bearingResiduals the same as seen in the bearing planes; empty if the job was not told where they are
     * @param remainingShare vibration after over vibration before; NaN before the final run
     * @param gradeRequired grade asked for, as in {@code G6.3}; empty without a tolerance
     * @param gradeReached grade reached with its evidence; empty before the final run, or without tolerance or radii
     * @param gradeProbability probability that the residual unbalance is within tolerance; NaN where it is not known
     * @param remarks doubts
     * @param reliance what the numbers may be used for, and what not
     * @param cautions cautions for work on the machine
     */
    public JobRecord {
        speedsRevolutionsPerMinute = List.copyOf(speedsRevolutionsPerMinute);
        runs = List.copyOf(runs);
        coefficients = List.copyOf(coefficients);
        corrections = List.copyOf(corrections);
        ellipses = List.copyOf(ellipses);
        residuals = List.copyOf(residuals);
        bearingResiduals = List.copyOf(bearingResiduals);
        remarks = List.copyOf(remarks);
        reliance = List.copyOf(reliance);
        cautions = List.copyOf(cautions);
    }

    /**
     * One run.
     *
     * @param name what the run was for
     * @param masses masses on the rotor beyond its first state
     * @param readings readings, runout taken off
     */
    public record RunEntry(String name, List<MassEntry> masses, List<ReadingEntry> readings) implements Serializable {
        /**
         * Copies the lists.
         *
         * @param name what the run was for
         * @param masses masses on the rotor beyond its first state
         * @param readings readings, runout taken off
         */
        public RunEntry {
            masses = List.copyOf(masses);
            readings = List.copyOf(readings);
        }
    }

    /**
     * One mass.
     *
     * @param plane name of the plane
     * @param grams mass in g
     * @param angleDegrees angle in degrees
     * @param radiusMillimetres radius in mm; NaN if left open
     */
    public record MassEntry(String plane, double grams, double angleDegrees, double radiusMillimetres)
            implements Serializable {}

    /**
     * One reading.
     *
     * @param sensor name of the sensor, with the speed where there are several
     * @param amplitude amplitude in the unit
     * @param unit symbol of the unit in plain letters
     * @param detector detector
     * @param phaseDegrees phase in degrees
     */
    public record ReadingEntry(String sensor, double amplitude, String unit, String detector, double phaseDegrees)
            implements Serializable {}

    /**
     * One influence coefficient.
     *
     * @param sensor name of the sensor, with the speed where there are several
     * @param plane name of the plane
     * @param amplitudePerGram amplitude in the sensor's unit and detector per g at the radius of the plane
     * @param phaseDegrees phase in degrees
     */
    public record CoefficientEntry(String sensor, String plane, double amplitudePerGram, double phaseDegrees)
            implements Serializable {}

    /**
     * Ellipse about a correction that holds the right one with a stated probability.
     *
     * @param plane name of the plane
     * @param majorGrams half of the long axis in g at the radius of the plane
     * @param minorGrams half of the short axis in g
     * @param majorDegrees direction of the long axis in degrees, in the convention, below 180
     * @param coverage probability
     */
    public record EllipseEntry(String plane, double majorGrams, double minorGrams, double majorDegrees,
            double coverage) implements Serializable {}

    /**
     * Residual unbalance of one plane or bearing.
     *
     * @param plane name of the plane or bearing
     * @param gramMillimetres residual unbalance in g·mm
     * @param permissibleGramMillimetres permissible residual unbalance in g·mm; NaN without a tolerance
     */
    public record ResidualEntry(String plane, double gramMillimetres, double permissibleGramMillimetres)
            implements Serializable {}

    /** Returns what the record holds in one line. */
    @Override
    public String toString() {
        return "balancing record: " + runs.size() + " run(s), " + corrections.size() + " correction(s)"
                + (gradeReached.isEmpty() ? "" : ", " + gradeReached);
    }
}
