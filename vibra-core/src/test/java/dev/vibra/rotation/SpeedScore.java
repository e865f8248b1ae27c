package dev.vibra.rotation;

import dev.vibra.quantity.RotationSpeed;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Counts how often estimates of the speeds of simulated machines are right, by what was known of each machine. */
final class SpeedScore {
    /** What is told beforehand. */
    enum Known {
        /** Nothing. */
        NOTHING,
        /** A nominal speed up to 5 % from the truth; for what doesn't turn as well. */
        PLATE,
        /** The mains, and that an induction motor of unknown poles is on them; only where that is so. */
        MOTOR;

        Optional<SpeedKnowledge> of(SimulatedMachine machine, int number) {
            SpeedKnowledge none = SpeedKnowledge.none();
            return switch (this) {
                case NOTHING -> Optional.of(none);
                case PLATE -> Optional.of(none.withNominal(
                        RotationSpeed.ofHertz(machine.hertz() * (0.95 + 0.1 * (number * 0.618034 % 1)))));
                case MOTOR -> machine.isMotor()
                        ? Optional.of(none.withMains(machine.mainsHertz()).withInductionMotor()) : Optional.empty();
            };
        }
    }

    /** Confidences of ten tenths and how many of them were right. */
    private static final class Tenths {
        private final int[] count = new int[10];
        private final double[] told = new double[10];
        private final int[] right = new int[10];

        void add(double confidence, boolean isRight) {
            int tenth = (int) Math.min(9, 10 * confidence);
            count[tenth]++;
            told[tenth] += confidence;
            right[tenth] += isRight ? 1 : 0;
        }
    }

    private final Map<Known, Tenths> best = new EnumMap<>(Known.class);
    private final Tenths all = new Tenths();
    private final Map<Known, int[]> given = new EnumMap<>(Known.class);
    private final Map<SimulatedMachine.Sort, int[]> sorts = new EnumMap<>(SimulatedMachine.Sort.class);
    private int precise;

    /** Estimates the speed with every sort of knowledge. */
    void add(SimulatedMachine machine, int number) {
        LineSet lines = SpeedEstimate.lines(machine.wave()).orElseThrow();
        for (Known known : Known.values()) {
            known.of(machine, number).ifPresent(knowledge -> add(machine, known, SpeedEstimate.of(lines, knowledge)));
        }
    }

    private void add(SimulatedMachine machine, Known known, SpeedEstimate estimate) {
        for (SpeedCandidate candidate : estimate.candidates()) {
            all.add(candidate.confidence(), machine.turnsAt(candidate.speed().hertz()));
        }
        boolean right = !estimate.candidates().isEmpty()
                && machine.turnsAt(estimate.candidates().get(0).speed().hertz());
        best.computeIfAbsent(known, key -> new Tenths()).add(estimate.confidence(), right);
        int[] counts = given.computeIfAbsent(known, key -> new int[3]);
        int[] ofSort = sorts.computeIfAbsent(machine.sort(), key -> new int[3]);
        counts[0]++;
        if (known == Known.NOTHING) {
            ofSort[0]++;
        }
        if (estimate.speed().isPresent()) {
            counts[1]++;
            counts[2] += right ? 0 : 1;
            SpeedCandidate found = estimate.candidates().get(0);
            double off = Math.abs(found.speed().hertz() - machine.hertz());
            precise += right && off <= 2 * found.standardUncertaintyHertz() ? 1 : 0;
            if (known == Known.NOTHING) {
                ofSort[1]++;
                ofSort[2] += right ? 0 : 1;
            }
        }
    }

    int estimates(Known known) {
        return given.get(known)[0];
    }

    int told(Known known) {
        return given.get(known)[1];
    }

    int wrong(Known known) {
        return given.get(known)[2];
    }

    /** Share of the right speeds told whose error is within twice the standard uncertainty. */
    double precision() {
        int right = 0;
        for (Known known : Known.values()) {
            right += told(known) - wrong(known);
        }
        return (double) precise / right;
    }

    /** Number of candidates, of whatever knowledge and rank, with a confidence in a tenth. */
    int count(int tenth) {
        return all.count[tenth];
    }

    /** Mean confidence in a tenth. */
    double confidence(int tenth) {
        return all.told[tenth] / all.count[tenth];
    }

    /** Share of right ones in a tenth. */
    double right(int tenth) {
        return (double) all.right[tenth] / all.count[tenth];
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        given.forEach((known, counts) -> text.append(String.format(Locale.ROOT,
                "%-8s %5d recordings, %5d speeds given, %3d wrong (%.2f %% of recordings, %.2f %% of speeds)%n", known,
                counts[0], counts[1], counts[2], 100.0 * counts[2] / counts[0], 100.0 * counts[2] / counts[1])));
        sorts.forEach((sort, counts) -> text.append(String.format(Locale.ROOT,
                "  nothing known, %-13s %4d recordings, %4d speeds given, %2d wrong%n", sort, counts[0], counts[1],
                counts[2])));
        text.append(String.format(Locale.ROOT, "within two standard uncertainties: %.3f%n", precision()));
        text.append("confidence: count, mean told, right; of all candidates, then of the best by knowledge\n");
        for (int tenth = 0; tenth < 10; tenth++) {
            text.append(String.format(Locale.ROOT, "%.1f to %.1f %s", 0.1 * tenth, 0.1 * tenth + 0.1,
                    row(all, tenth)));
            for (Tenths some : best.values()) {
                text.append(row(some, tenth));
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static String row(Tenths tenths, int tenth) {
        return tenths.count[tenth] == 0 ? "  |     -               " : String.format(Locale.ROOT,
                "  | %5d  %.3f  %.3f", tenths.count[tenth], tenths.told[tenth] / tenths.count[tenth],
                (double) tenths.right[tenth] / tenths.count[tenth]);
    }
}
