package dev.vibra.docs.fuzz;

import java.util.List;
import java.util.SplittableRandom;

/** The random choices of one input: the same seed makes the same choices. */
final class Dice {
    private final SplittableRandom random;

    Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    /** From 0 up to the bound, which is left out. */
    int below(int bound) {
        return random.nextInt(bound);
    }

    int between(int lowest, int highest) {
        return lowest + random.nextInt(highest - lowest + 1);
    }

    long bits() {
        return random.nextLong();
    }

    /** From 0 to 1. */
    double real() {
        return random.nextDouble();
    }

    double between(double lowest, double highest) {
        return lowest + (highest - lowest) * random.nextDouble();
    }

    boolean oneIn(int count) {
        return random.nextInt(count) == 0;
    }

    <T> T pick(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    @SafeVarargs
    final <T> T pick(T... choices) {
        return choices[random.nextInt(choices.length)];
    }

    /** Mostly small, evenly spread over the magnitudes up to the largest. */
    int size(int largest) {
        return (int) Math.expm1(random.nextDouble() * Math.log1p(largest));
    }
}
