package dev.vibra.integration;

import dev.vibra.quantity.Quantity;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * How far are levels from short recordings off, and does the stated error hold? Run by name:
 * {@code mvn -q -B -pl vibra-core test -Dtest=MotionStudy -Dmotion.records=500}.
 */
class MotionStudy {
    @Test
    void levelsOfShortRecordings() {
        int records = Integer.getInteger("motion.records", 200);
        for (Quantity target : new Quantity[] {Quantity.ACCELERATION, Quantity.VELOCITY, Quantity.DISPLACEMENT}) {
            for (double periods : new double[] {7, 8, 9, 12, 20, 40}) {
                MotionRecords simulated = new MotionRecords(periods, target);
                for (MotionRecords.Kind kind : MotionRecords.Kind.values()) {
                    report(target, periods, kind, simulated, records);
                }
            }
        }
    }

    private static void report(Quantity target, double periods, MotionRecords.Kind kind, MotionRecords simulated,
            int records) {
        double[] error = new double[records];
        double[] share = new double[records];
        int held = 0;
        for (int i = 0; i < records; i++) {
            MotionRecords.Outcome outcome = simulated.simulate(kind, 1_000_003L * (i + 5000) + kind.ordinal());
            error[i] = Math.max(outcome.rms(), outcome.peakToPeak());
            share[i] = error[i] / outcome.stated();
            held += outcome.holds() ? 1 : 0;
        }
        Arrays.sort(error);
        Arrays.sort(share);
        System.out.printf(Locale.ROOT,
                "%s of %.0f periods, %s: error 50 %% %.4f, 95 %% %.4f; of the stated one 95 %% %.2f; held %d of %d%n",
                target, periods, kind, error[records / 2], error[records * 95 / 100], share[records * 95 / 100], held,
                records);
    }
}
