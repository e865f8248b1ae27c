package dev.vibra.diagnosis.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import java.util.SplittableRandom;

/** A bearing's train of knocks: intervals walk at random, strength follows the load zone; a worn cage swings the noise. */
final class BearingKnocks implements Source {
    private final Tap tap;
    private final BearingElement element;
    private final double perTurn;
    private final double cage;
    private final double ratio;
    private final double jitter;
    private final double zone;
    private final long seed;

    BearingKnocks(Tap tap, BearingElement element, KinematicFrequencies rates, double ratio, SplittableRandom random) {
        this.tap = tap;
        this.element = element;
        this.ratio = ratio;
        double slip = random.nextDouble(-0.012, 0.004);
        this.perTurn = rates.of(element) / rates.shaftHertz() * (1 + slip);
        this.cage = rates.cageHertz() / rates.shaftHertz() * (1 + slip);
        this.jitter = random.nextDouble(0.002, 0.02);
        this.zone = random.nextDouble(0.5, 1.5);
        this.seed = random.nextLong();
    }

    double perTurn() {
        return perTurn;
    }

    @Override
    public void addTo(Forces forces, double factor) {
        double[] shaft = forces.clock().shaft();
        double[] force = forces.along(tap);
        SplittableRandom random = new SplittableRandom(seed);
        if (element == BearingElement.CAGE) {
            for (int i = 0; i < force.length; i++) {
                force[i] += factor * 0.3 * random.nextGaussian() * Math.pow(1 + Sine.cos(cage * ratio * shaft[i]), zone);
            }
            return;
        }
        double next = shaft[0] * ratio + random.nextDouble() / perTurn;
        for (int i = 1; i < force.length; i++) {
            double turns = shaft[i] * ratio;
            if (turns >= next) {
                force[i] += factor * strength(turns) * (1 + 0.15 * random.nextGaussian());
                next += Math.max(0.3, 1 + jitter * random.nextGaussian()) / perTurn;
            }
        }
    }

    private double strength(double turns) {
        return switch (element) {
            case INNER_RACE -> Math.pow(Math.max(0, 0.15 + 0.85 * Sine.cos(turns)), zone);
            case ROLLING_ELEMENT -> Math.pow(Math.max(0, 0.15 + 0.85 * Sine.cos(cage * turns)), zone);
            default -> 1;
        };
    }
}
