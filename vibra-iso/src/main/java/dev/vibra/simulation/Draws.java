package dev.vibra.simulation;

import java.util.List;
import java.util.SplittableRandom;

/** Random figures of a seed, the same on every machine. */
final class Draws {
    private final SplittableRandom random;

    private Draws(SplittableRandom random) {
        this.random = random;
    }

    static Draws of(long seed) {
        return new Draws(new SplittableRandom(seed));
    }

    /** A stream of its own, so that drawing more in one place changes nothing elsewhere. */
    Draws split() {
        return new Draws(random.split());
    }

    SplittableRandom source() {
        return random;
    }

    long seed() {
        return random.nextLong();
    }

    double uniform(double lowest, double highest) {
        return lowest + (highest - lowest) * random.nextDouble();
    }

    double logUniform(double lowest, double highest) {
        return StrictMath.exp(uniform(StrictMath.log(lowest), StrictMath.log(highest)));
    }

    double normal(double mean, double deviation) {
        return mean + deviation * random.nextGaussian();
    }

    /** The logarithm is normal with the deviation given. */
    double logNormal(double median, double deviation) {
        return median * StrictMath.exp(deviation * random.nextGaussian());
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** A phase or direction, all equally likely. */
    double angle() {
        return uniform(-Math.PI, Math.PI);
    }

    int sign() {
        return chance(0.5) ? 1 : -1;
    }

    int between(int lowest, int highest) {
        return random.nextInt(lowest, highest + 1);
    }

    <T> T pick(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
