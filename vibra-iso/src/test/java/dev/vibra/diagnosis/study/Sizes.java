package dev.vibra.diagnosis.study;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * How loud a machine is in health, as parts of the boundary B/C: the whole is spread about 0.38, so that some 4 % lie in
 * zone C. No single source takes more than 0.6 of the boundary: a line that does is a fault by any practice.
 */
final class Sizes {
    static final double MOST = 0.6;
    /**
     * Share of the boundary B/C from which on a line is a fault by level: half of the energy that it allows. Below, sound
     * machines have such lines too.
     */
    static final double LEAST = 0.7;

    private final double whole;
    private final SplittableRandom random;
    private final Map<String, Double> sizes = new HashMap<>();

    private Sizes(double whole, SplittableRandom random) {
        this.whole = whole;
        this.random = random;
    }

    static Sizes draw(SplittableRandom random) {
        return new Sizes(0.38 * Math.exp(0.55 * random.nextGaussian()), random);
    }

    double of(String name) {
        double loudest = switch (name.split(" ")[0]) {
            case "unbalance" -> 0.8;
            case "multiples" -> 0.12;
            case "coupling" -> 0.2;
            case "noise" -> 0.9;
            case "passing", "magnetic", "mesh" -> 0.5;
            default -> 0.15;
        };
        double quietest = name.startsWith("unbalance") ? 0.2 : name.equals("noise") ? 0.1 : 0.03;
        return sizes.computeIfAbsent(name, n -> Math.min(MOST, whole * Draw.logarithmic(random, quietest, loudest)));
    }
}
