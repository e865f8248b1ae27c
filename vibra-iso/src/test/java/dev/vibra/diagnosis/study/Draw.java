package dev.vibra.diagnosis.study;

import java.util.List;
import java.util.SplittableRandom;

/** Draws that the parts of the study share. */
final class Draw {
    private Draw() {}

    static double logarithmic(SplittableRandom random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }

    static boolean chance(SplittableRandom random, double probability) {
        return random.nextDouble() < probability;
    }

    static <T> T one(SplittableRandom random, List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
