package dev.vibra.diagnosis.study;

import java.util.SplittableRandom;

/** Pull of belts between two pulleys: a thick or slack place of each belt passes both pulleys once in each of its turns. */
final class BeltForce implements Source {
    private final Tap pull;
    private final double[] perTurn;
    private final double[] places;
    private final double second;
    private final double width;
    private final double flutter;
    private final long seed;

    BeltForce(Tap pull, double perTurn, int belts, double spread, double flutter, SplittableRandom random) {
        this.pull = pull;
        this.perTurn = new double[belts];
        this.places = new double[belts];
        for (int i = 0; i < belts; i++) {
            this.perTurn[i] = perTurn * (1 + spread * random.nextDouble(-1, 1));
            places[i] = random.nextDouble();
        }
        this.second = random.nextDouble(0.3, 0.5);
        this.width = random.nextDouble(0.05, 0.2);
        this.flutter = flutter;
        this.seed = random.nextLong();
    }

    @Override
    public void addTo(Forces forces, double factor) {
        double[] shaft = forces.clock().shaft();
        double[] force = forces.along(pull);
        SplittableRandom random = new SplittableRandom(seed);
        double slow = 0;
        double keep = Math.exp(-2 / forces.clock().rate());
        double push = Math.sqrt(1 - keep * keep);
        for (int i = 0; i < force.length; i++) {
            slow = keep * slow + push * random.nextGaussian();
            for (int belt = 0; belt < places.length; belt++) {
                force[i] += factor * (1 + flutter * slow) * bump(shaft[i] * perTurn[belt] + places[belt]);
            }
        }
    }

    /** Pull at a place of the belt in turns. */
    double bump(double turns) {
        double at = turns - Math.floor(turns);
        return hill(at / width) + hill((at - second) / width);
    }

    private static double hill(double at) {
        return at > 0 && at < 1 ? 0.5 - 0.5 * Sine.cos(at) : 0;
    }
}
