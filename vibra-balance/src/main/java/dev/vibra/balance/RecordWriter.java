package dev.vibra.balance;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.influence.Run;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.List;

/** Writes a job down. */
final class RecordWriter {
    private final Setup setup;
    private final Layout layout;

    RecordWriter(Setup setup) {
        this.setup = setup;
        this.layout = setup.layout();
    }

    /** Keeps the readings of a job that nothing can be worked out of, with the reason. */
    JobRecord writeWithout(List<Run> runs, String reason) {
        return write(runs, null, null, null, List.of(Remark.note("not-determined", reason, 0, 0)));
    }

    JobRecord write(List<Run> runs, InfluenceCoefficients alpha, Corrections corrections, Verification proof) {
        return write(runs, alpha, corrections, proof, List.of());
    }

    private JobRecord write(List<Run> runs, InfluenceCoefficients alpha, Corrections corrections, Verification proof,
            List<Remark> first) {
        List<Remark> remarks = new ArrayList<>(first);
        if (corrections != null) {
            remarks.addAll(corrections.remarks());
        }
        if (proof != null) {
            remarks.addAll(proof.remarks());
        }
        JobRecord.Plan plan = new JobRecord.Plan(layout.convention().toString(),
                layout.speeds().stream().map(RotationSpeed::revolutionsPerMinute).toList(),
                setup.tolerance().map(BalanceTolerance::grade).orElse(null));
        return new JobRecord(plan, runs.stream().map(this::run).toList(),
                alpha == null ? List.of() : coefficients(alpha), corrections, proof, remarks, reliance());
    }

    private JobRecord.RunEntry run(Run run) {
        List<JobRecord.MassEntry> masses = new ArrayList<>();
        for (int j = 0; j < run.added().size(); j++) {
            if (!run.added().get(j).equals(Phasor.ZERO)) {
                masses.add(new JobRecord.MassEntry(layout.planes().get(j), setup.mass(j, run.added().get(j))));
            }
        }
        List<JobRecord.ReadingEntry> readings = new ArrayList<>();
        for (int i = 0; i < run.readings().size(); i++) {
            VibrationVector v = setup.vector(i, run.readings().get(i));
            readings.add(new JobRecord.ReadingEntry(layout.rowName(i), v.amplitude(), v.unit().plainSymbol(),
                    v.detector().toString(), v.phaseDegrees()));
        }
        return new JobRecord.RunEntry(run.name(), masses, readings);
    }

    private List<JobRecord.CoefficientEntry> coefficients(InfluenceCoefficients alpha) {
        InfluenceCoefficients shown = alpha.shownAs(layout);
        List<JobRecord.CoefficientEntry> out = new ArrayList<>();
        for (int i = 0; i < layout.rows(); i++) {
            for (int j = 0; j < layout.planes().size(); j++) {
                out.add(new JobRecord.CoefficientEntry(layout.rowName(i), layout.planes().get(j), shown.perGram(i, j),
                        shown.phaseDegrees(i, j)));
            }
        }
        return out;
    }

    private List<String> reliance() {
        String coefficients = setup.stored().isPresent()
                ? "The coefficients are those of an earlier job; they hold only if speed, load, bearings, support and"
                + " sensors are the same as then."
                : "The coefficients hold for this rotor in these bearings on this support, at the speeds and load of"
                + " the runs, with the sensors where they were.";
        return List.of(coefficients,
                "Residual unbalance and grade are worked out of vibration and coefficients in the correction planes of"
                + " this job. They serve the crew and the owner; an acceptance that asks for a balancing machine, or"
                + " for vibration limits of the whole machine, is not replaced by them.",
                "ISO 21940-11 holds for rotors with rigid behaviour; for flexible rotors ISO 21940-12 applies.");
    }
}
