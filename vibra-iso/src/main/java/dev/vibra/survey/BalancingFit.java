package dev.vibra.survey;

import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.internal.Digits;
import dev.vibra.machine.RotorData;
import dev.vibra.point.Omission;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a balancing job that can be worked out leaves open all the same, by itself or for this rotor. */
final class BalancingFit {
    /** The library's own bound: within it a coefficient hardly changes, unless a critical speed is near. */
    private static final double SPEED_SHARE = 0.05;

    private BalancingFit() {}

    static List<Omission> of(BalancingJob job, Corrections corrections, RotorData rotor,
            Optional<RotationSpeed> service) {
        List<Omission> out = new ArrayList<>();
        int planes = job.layout().planes().size();
        if (rotor.isOverhung() && planes > 1 && !job.knowsBearings()) {
            out.add(missing("shares of the tolerance",
                    "equal shares are taken; those of an overhung rotor need its places along the axis"));
        }
        rotor.planes().stream().filter(wanted -> wanted > planes).forEach(wanted -> out.add(missing("couple unbalance",
                "the rotor is said to have " + wanted + " correction planes and the job has " + planes)));
        service.flatMap(speed -> otherSpeed(job, speed)).ifPresent(out::add);
        if (job.tolerance().isEmpty()) {
            out.add(missing("balance grade", "it needs mass and balance grade of the rotor and a speed"));
        }
        if (!job.endsWithFinalRun()) {
            out.add(missing("residual unbalance", "there is no final run"));
        } else if (corrections.presentUnbalance().isEmpty()) {
            out.add(missing("residual unbalance",
                    "it needs the radius of each plane, and planes that can be told apart"));
        }
        return List.copyOf(out);
    }

    private static Optional<Omission> otherSpeed(BalancingJob job, RotationSpeed service) {
        double runs = service.revolutionsPerMinute();
        return job.layout().speeds().stream().map(RotationSpeed::revolutionsPerMinute)
                .min(Comparator.comparingDouble(read -> Math.abs(read / runs - 1)))
                .filter(nearest -> Math.abs(nearest / runs - 1) > SPEED_SHARE)
                .map(read -> missing("vibration at service speed", "the job was read at "
                        + Digits.compact(read, 5) + " r/min and the machine runs at " + Digits.compact(runs, 5)
                        + " r/min: a rotor that bends between them needs readings at both"));
    }

    private static Omission missing(String part, String reason) {
        return new Omission(Omission.Subject.BALANCING, part, reason);
    }
}
