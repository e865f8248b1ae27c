package dev.vibra.rotation;

import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The lines at the first multiples of a speed, followed from one line on, each telling the speed better. */
final class ShaftLines {
    static final int MULTIPLES = 10;
    /** How often a shaft shows its multiples (common practice, no source). */
    private static final double[] SHOWN = {0.95, 0.6, 0.45, 0.35, 0.3, 0.25, 0.2, 0.2, 0.2, 0.2};
    private static final double WANDER = 1e-4;
    private static final double HALF_A_LINE = 0.6;
    /** A half order is weaker than the whole orders beside it; an equal one is a multiple of half the speed. */
    private static final double WEAKER = 0.7;

    private final LineSet lines;
    private final SpeedKnowledge known;
    private final int[] found = new int[MULTIPLES + 1];
    private double hertz;
    private double error;

    ShaftLines(LineSet lines, SpeedKnowledge known, double hertz, double error) {
        this.lines = lines;
        this.known = known;
        this.hertz = hertz;
        this.error = error;
        Arrays.fill(found, -1);
        follow();
    }

    private void follow() {
        double weighted = 0;
        double weights = 0;
        double widest = error;
        for (int n = 1; n <= MULTIPLES; n++) {
            found[n] = lines.near(n * hertz, tolerance(n));
            if (found[n] >= 0) {
                // A tenth of a line at least, so that no line that merely lies near pulls the others.
                double sigma = Math.max(lines.errorHertz(found[n]), 0.1 * lines.resolutionHertz());
                weighted += n * lines.hertz(found[n]) / (sigma * sigma);
                weights += n * n / (sigma * sigma);
                hertz = weighted / weights;
                error = Math.min(widest, Math.sqrt(1 / weights));
            }
        }
    }

    double hertz() {
        return hertz;
    }

    /** Index of the line at a multiple, or -1. */
    int line(int multiple) {
        return found[multiple];
    }

    List<Integer> multiples() {
        List<Integer> numbers = new ArrayList<>();
        for (int n = 1; n <= MULTIPLES; n++) {
            if (found[n] >= 0) {
                numbers.add(n);
            }
        }
        return numbers;
    }

    /** Distance at which a line still counts as a multiple, in Hz. */
    double tolerance(double multiple) {
        return Math.min(0.2 * hertz, HALF_A_LINE * lines.resolutionHertz() + 2 * multiple * error);
    }

    /** Tells whether there are lines and all of them may be hum. */
    boolean isHum() {
        List<Integer> numbers = multiples();
        return !numbers.isEmpty() && numbers.stream().allMatch(n -> mayBeHum(found[n]));
    }

    boolean mayBeHum(int line) {
        return known.mayBeHum(lines.hertz(line), HALF_A_LINE * lines.resolutionHertz());
    }

    /**
     * Logarithm of how much likelier the lines at a multiple are if the shaft turns at this speed than by chance: the
     * chance that a line at least as far over the floor falls there among those around. Hum tells nothing.
     */
    double evidence(int multiple) {
        if ((multiple + 0.5) * hertz > lines.highestHertz()) {
            return 0;
        }
        double chance = chance(multiple);
        if (found[multiple] >= 0) {
            return mayBeHum(found[multiple]) ? 0 : Math.log(SHOWN[multiple - 1] / chance);
        }
        double shown = SHOWN[multiple - 1] * visibility(multiple);
        return Math.log((1 - shown) / (1 - chance));
    }

    private double chance(int multiple) {
        double reach = Math.max(0.6 * hertz, 20 * lines.resolutionHertz());
        double least = found[multiple] >= 0 ? lines.over(found[multiple]) : 0;
        int stronger = lines.strongerAround(multiple * hertz, reach, least);
        return Math.min(0.5, (stronger + 0.5) * tolerance(multiple) / reach);
    }

    /** Where the strongest line stands little over the floor, the others may well be below it. */
    private double visibility(int multiple) {
        double strongest = 1;
        for (int n : multiples()) {
            strongest = Math.max(strongest, lines.over(found[n]));
        }
        double visible = Math.max(0.1, Math.min(1, Math.log(strongest / 3) / Math.log(30)));
        return multiple == 1 ? Math.max(0.5, visible) : visible;
    }

    /** Size of the largest of the first four multiples; 0 if none was found. */
    double largest() {
        double largest = 0;
        for (int n = 1; n <= 4; n++) {
            largest = found[n] >= 0 ? Math.max(largest, lines.size(found[n])) : largest;
        }
        return largest;
    }

    /** Sum of the nepers by which odd multiples stay below their neighbours, as half orders of twice the speed do. */
    double alternation() {
        double sum = 0;
        for (int n = 1; n <= 5; n += 2) {
            if (found[n] >= 0 && found[n + 1] >= 0) {
                double above = Math.log(lines.size(found[n + 1]));
                double below = n == 1 || found[n - 1] < 0 ? above : Math.log(lines.size(found[n - 1]));
                sum += Math.max(0, Math.min(3, 0.5 * (above + below) - Math.log(lines.size(found[n]))));
            }
        }
        return sum;
    }

    /** Tells whether a line is a multiple of the speed, a half order weaker than its neighbours, or hum. */
    boolean explain(int line) {
        double multiple = Math.rint(lines.hertz(line) / hertz);
        return multiple >= 1 && isNear(line, multiple) || isHalfOrder(line) || mayBeHum(line);
    }

    /** Number of half orders below four times the speed that are there and weaker than the whole ones beside them. */
    int halfOrders() {
        int count = 0;
        for (int n = 0; n < 4; n++) {
            int line = lines.near((n + 0.5) * hertz, tolerance(n + 0.5));
            count += line >= 0 && !mayBeHum(line) && isHalfOrder(line) ? 1 : 0;
        }
        return count;
    }

    private boolean isHalfOrder(int line) {
        int below = (int) (lines.hertz(line) / hertz);
        double size = 0;
        for (int n = Math.max(1, below); n <= Math.min(MULTIPLES, below + 1); n++) {
            size = found[n] >= 0 ? Math.max(size, lines.size(found[n])) : size;
        }
        return isNear(line, below + 0.5) && lines.size(line) < WEAKER * size;
    }

    private boolean isNear(int line, double multiple) {
        return Math.abs(lines.hertz(line) - multiple * hertz) <= tolerance(multiple);
    }

    /**
     * The speed by weighted least squares over the multiples, each at its refined frequency, and its standard
     * uncertainty: widened where the multiples scatter more than they should, and by one part in ten thousand for a
     * speed that wanders.
     */
    SpeedCandidate refined(double confidence) {
        List<Integer> numbers = multiples();
        double weights = 0;
        double weighted = 0;
        double squares = 0;
        for (int n : numbers) {
            double weight = Math.pow(lines.errorHertz(found[n]), -2);
            double at = lines.refinedHertz(found[n]);
            weights += n * n * weight;
            weighted += n * at * weight;
            squares += at * at * weight;
        }
        double speed = numbers.isEmpty() ? hertz : weighted / weights;
        double scatter = numbers.size() < 2 ? 1
                : Math.max(1, (squares - weighted * weighted / weights) / (numbers.size() - 1));
        double uncertainty = numbers.isEmpty() ? error : Math.sqrt(scatter / weights);
        return new SpeedCandidate(RotationSpeed.ofHertz(speed), Math.hypot(uncertainty, WANDER * speed), confidence,
                numbers);
    }
}
