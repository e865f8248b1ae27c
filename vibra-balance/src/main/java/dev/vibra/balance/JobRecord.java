package dev.vibra.balance;

import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.evidence.Remark;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Record of a balancing job: what was read, what was fitted, what it led to, and who may rely on what. Every number
 * carries its unit in its name; angles and phases are in the convention.
 *
 * @see "ISO 21940-13:2012, reporting"
 */
@SuppressWarnings("serial") // the lists are unmodifiable copies, which are serializable
public final class JobRecord implements Serializable {
    private static final long serialVersionUID = 1;

    private final Plan plan;
    private final List<RunEntry> runs;
    private final List<CoefficientEntry> coefficients;
    private final Corrections corrections; // null where runs are still missing
    private final Verification verification; // null before the final run
    private final List<Remark> remarks;
    private final List<String> reliance;

    JobRecord(Plan plan, List<RunEntry> runs, List<CoefficientEntry> coefficients, Corrections corrections,
            Verification verification, List<Remark> remarks, List<String> reliance) {
        this.plan = Objects.requireNonNull(plan, "plan");
        this.runs = Require.copy("runs", runs);
        this.coefficients = Require.copy("coefficients", coefficients);
        this.corrections = corrections;
        this.verification = verification;
        this.remarks = Require.copy("remarks", remarks);
        this.reliance = Require.copy("reliance", reliance);
    }

    private Object readResolve() {
        return new JobRecord(plan, runs, coefficients, corrections, verification, remarks, reliance);
    }

    /** What was set before the first run; the grade is null without a tolerance. */
    record Plan(String convention, List<Double> speedsRevolutionsPerMinute, BalanceGrade grade)
            implements Serializable {
        Plan {
            Objects.requireNonNull(convention, "convention");
            speedsRevolutionsPerMinute = Require.copy("speedsRevolutionsPerMinute", speedsRevolutionsPerMinute);
            speedsRevolutionsPerMinute.forEach(speed -> Require.positive("speed", speed, "r/min"));
        }
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
            Objects.requireNonNull(name, "name");
            masses = Require.copy("masses", masses);
            readings = Require.copy("readings", readings);
        }
    }

    /**
     * One mass.
     *
     * @param plane name of the plane
     * @param mass mass, angle in the convention and, where it is known, radius
     */
    public record MassEntry(String plane, PlacedMass mass) implements Serializable {
        /**
         * Checks that both are there.
         *
         * @param plane see the record
         * @param mass see the record
         */
        public MassEntry {
            Objects.requireNonNull(plane, "plane");
            Objects.requireNonNull(mass, "mass");
        }
    }

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
            implements Serializable {
        /**
         * Checks the values.
         *
         * @param sensor see the record
         * @param amplitude see the record
         * @param unit see the record
         * @param detector see the record
         * @param phaseDegrees see the record
         * @throws IllegalArgumentException if a value is out of range
         */
        public ReadingEntry {
            Objects.requireNonNull(sensor, "sensor");
            Require.notNegative("amplitude", amplitude, Objects.requireNonNull(unit, "unit"));
            Objects.requireNonNull(detector, "detector");
            Require.finite("phaseDegrees", phaseDegrees);
        }
    }

    /**
     * One influence coefficient.
     *
     * @param sensor name of the sensor, with the speed where there are several
     * @param plane name of the plane
     * @param amplitudePerGram amplitude in the sensor's unit and detector per g at the radius of the plane
     * @param phaseDegrees phase in degrees
     */
    public record CoefficientEntry(String sensor, String plane, double amplitudePerGram, double phaseDegrees)
            implements Serializable {
        /**
         * Checks the values.
         *
         * @param sensor see the record
         * @param plane see the record
         * @param amplitudePerGram see the record
         * @param phaseDegrees see the record
         * @throws IllegalArgumentException if a value is out of range
         */
        public CoefficientEntry {
            Objects.requireNonNull(sensor, "sensor");
            Objects.requireNonNull(plane, "plane");
            Require.notNegative("amplitudePerGram", amplitudePerGram, "");
            Require.finite("phaseDegrees", phaseDegrees);
        }
    }

    /**
     * Returns how phases and angles are counted.
     *
     * @return convention in words
     */
    public String convention() {
        return plan.convention();
    }

    /**
     * Returns the speeds of each run.
     *
     * @return speeds in revolutions per minute; empty if not named
     */
    public List<Double> speedsRevolutionsPerMinute() {
        return plan.speedsRevolutionsPerMinute();
    }

    /**
     * Returns the grade that was asked for.
     *
     * @return grade; empty without a tolerance
     */
    public Optional<BalanceGrade> gradeRequired() {
        return Optional.ofNullable(plan.grade());
    }

    /**
     * Returns the runs.
     *
     * @return runs in order
     */
    public List<RunEntry> runs() {
        return runs;
    }

    /**
     * Returns the influence coefficients.
     *
     * @return coefficients; empty if runs are still missing
     */
    public List<CoefficientEntry> coefficients() {
        return coefficients;
    }

    /**
     * Returns the corrections for the rotor as it is now, with how far each may be off.
     *
     * @return corrections; empty if runs are still missing or nothing can be worked out of them
     */
    public Optional<Corrections> corrections() {
        return Optional.ofNullable(corrections);
    }

    /**
     * Returns what the last final run proved: vibration and unbalance that remain, the grade reached.
     *
     * @return verification; empty before the final run
     */
    public Optional<Verification> verification() {
        return Optional.ofNullable(verification);
    }

    /**
     * Returns the doubts.
     *
     * @return remarks; empty if there is nothing to doubt
     */
    public List<Remark> remarks() {
        return remarks;
    }

    /**
     * Returns what the numbers may be used for, and what not.
     *
     * @return sentences
     */
    public List<String> reliance() {
        return reliance;
    }

    /**
     * Returns the cautions for work on the machine.
     *
     * @return all of them
     */
    public List<Caution> cautions() {
        return List.of(Caution.values());
    }

    /** Returns what the record holds in one line. */
    @Override
    public String toString() {
        String text = "balancing record: " + runs.size() + " run(s), "
                + (corrections == null ? 0 : corrections.list().size()) + " correction(s)";
        return verification().flatMap(Verification::gradeReached).map(grade -> text + ", " + grade).orElse(text);
    }
}
