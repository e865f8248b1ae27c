package dev.vibra.alarm;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Lives of machines, made: readings that run in, hang together, scatter in several ways, step to another lasting level,
 * and run away at the end in several shapes.
 */
final class AlarmLives {
    private static final int LENGTH = 150;

    private final Random random;
    private final double correlation;
    private final double scatter = 0.05;
    private double wander;

    AlarmLives(long seed, double correlation) {
        this.random = new Random(seed);
        this.correlation = correlation;
        this.wander = random.nextGaussian();
    }

    /**
     * One direction of a life.
     *
     * @param levels readings in mm/s
     * @param largestStep largest lasting ratio to the level after running in before the end began
     * @param end reading at which the run-away begins
     */
    record Life(double[] levels, double largestStep, int end) {}

    /** Two directions of one machine share their steps and their end, not their scatter. */
    List<Life> directions() {
        double share = 0.05 + 0.35 * random.nextDouble();
        int law = random.nextInt(3);
        double runIn = random.nextInt(2) * 1.5 * random.nextDouble();
        double settles = 2 + 10 * random.nextDouble();
        double step = random.nextInt(2) == 0 ? 1 : 0.6 + 1.2 * random.nextDouble();
        int at = 20 + random.nextInt(60);
        int end = 100 + random.nextInt(30);
        int shape = random.nextInt(3);
        double most = 6 + 10 * random.nextDouble();
        List<Life> lives = new ArrayList<>();
        for (int direction = 0; direction < 2; direction++) {
            double[] levels = new double[LENGTH];
            for (int i = 0; i < LENGTH; i++) {
                double course = (1 + runIn * Math.exp(-i / settles)) * (i >= at ? step : 1)
                        * growth(shape, most, Math.max(0, i - end) / (double) (LENGTH - 1 - end));
                levels[i] = course * disturbed(law, share);
            }
            lives.add(new Life(levels, Math.max(1, step), end));
        }
        return lives;
    }

    private static double growth(int shape, double most, double part) {
        return switch (shape) {
            case 0 -> Math.pow(most, part);
            case 1 -> 1 + (most - 1) * part * part * part;
            default -> 1 + (most - 1) * Math.floor(4 * part) / 4;
        };
    }

    private double disturbed(int law, double share) {
        wander = correlation * wander + Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
        return switch (law) {
            case 0 -> Math.max(scatter, 1 + share * wander);
            case 1 -> Math.exp(share * wander - share * share / 2);
            // Heavy tails: one reading in twenty scatters three times as far.
            default -> Math.max(scatter, 1 + share * wander * (random.nextInt(20) == 0 ? 3 : 1));
        };
    }

    private static Level level(double value) {
        return Level.of(value, Unit.MM_PER_S, Detector.RMS).within(Band.of(10, 1000));
    }

    /** The reading that raises the alarm; the baseline is the first ten in a row to which the rule doesn't object. */
    static Optional<Integer> alarm(Life life, StatisticalRule rule, int readings) {
        for (int begin = 0; begin + readings < life.end(); begin++) {
            List<Level> first = new ArrayList<>();
            for (int i = begin; i < begin + readings; i++) {
                first.add(level(life.levels()[i]));
            }
            Baseline baseline = Baseline.of("full load", first);
            if (rule.objectionTo(baseline).isEmpty()) {
                AlarmEvaluator watch = AlarmRule.of(rule.limit(baseline)).newEvaluator();
                for (int i = begin + readings; i < life.levels().length; i++) {
                    if (watch.update(level(life.levels()[i])) != AlarmState.NORMAL) {
                        return Optional.of(i);
                    }
                }
                return Optional.empty();
            }
        }
        return Optional.empty();
    }
}
