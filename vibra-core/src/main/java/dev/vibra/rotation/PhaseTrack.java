package dev.vibra.rotation;

import dev.vibra.level.Percentiles;
import java.util.ArrayList;
import java.util.List;

/**
 * Correction of a course by the phases of the lines that follow it: each multiple is turned back along the course and
 * averaged under a Hann window of angle; what its phase still turns is the error of the course.
 */
final class PhaseTrack {
    /** Power over that of the noise that nine tenths of the blocks must reach for a phase to be followed safely. */
    private static final double LEAST_RATIO = 10;
    /** Revolutions by which two multiples of one shaft may differ beside noise; modes shift their phases. */
    private static final double AGREEMENT = 0.02;
    private static final double TWO_PI = 2 * Math.PI;

    private final double[] seconds;
    private final double[] revolutions;
    private final List<Integer> multiples = new ArrayList<>();
    private final double uncertainty;
    private final String reason;

    /** One multiple that stands out at all times: the error of the course by its phase, in revolutions. */
    private record Follower(int multiple, double[] error, double uncertainty) {
        /** Largest distance of the two courses, the mean taken out. */
        boolean agrees(Follower other) {
            double tolerance = AGREEMENT + 4 * Math.hypot(uncertainty, other.uncertainty);
            for (int j = 0; j < error.length; j++) {
                if (!(Math.abs(error[j] - other.error[j]) <= tolerance)) {
                    return false;
                }
            }
            return true;
        }
    }

    private PhaseTrack(ShaftAngle angle, LowRate low, int[] multiples) {
        int nodes = Math.max(4, (int) angle.revolutions() + 1);
        revolutions = new double[nodes];
        seconds = new double[nodes];
        for (int j = 0; j < nodes; j++) {
            revolutions[j] = angle.revolutions() * ((double) j / (nodes - 1));
            seconds[j] = angle.secondsAt(revolutions[j]);
        }
        List<Follower> followers = new ArrayList<>();
        AngleBlocks blocks = new AngleBlocks(angle, low, revolutions);
        for (int multiple : multiples) {
            Follower follower = follower(blocks, multiple);
            if (follower != null) {
                followers.add(follower);
            }
        }
        List<Follower> group = largestGroup(followers);
        reason = followers.isEmpty() ? "no multiple of the speed stands out at all times"
                : group.size() == 1 && followers.size() > 1 ? "the multiples of the speed don't keep together" : "";
        uncertainty = reason.isEmpty() ? correct(group) : 0;
    }

    static PhaseTrack along(ShaftAngle angle, LowRate low, int[] multiples) {
        return new PhaseTrack(angle, low, multiples);
    }

    /** Null where the multiple doesn't stand out. */
    private static Follower follower(AngleBlocks blocks, int multiple) {
        double[] line = blocks.means(blocks.turnedBack(multiple));
        double noise = blocks.noise(multiple);
        Percentiles powers = Percentiles.of(powers(line));
        if (!(powers.at(10) > LEAST_RATIO * noise) || !(powers.at(10) > 0)) {
            return null;
        }
        double ratio = noise > 0 ? powers.at(50) / noise : Double.POSITIVE_INFINITY;
        return new Follower(multiple, turned(line, multiple), 1 / (TWO_PI * multiple * Math.sqrt(2 * ratio)));
    }

    private static double[] powers(double[] line) {
        double[] powers = new double[line.length / 2];
        for (int j = 0; j < powers.length; j++) {
            powers[j] = line[2 * j] * line[2 * j] + line[2 * j + 1] * line[2 * j + 1];
        }
        return powers;
    }

    /** Phase in revolutions of the shaft, followed from block to block, its mean taken out. */
    private static double[] turned(double[] line, int multiple) {
        double[] turned = new double[line.length / 2];
        double before = 0;
        double mean = 0;
        for (int j = 0; j < turned.length; j++) {
            double phase = Math.atan2(line[2 * j + 1], line[2 * j]);
            before += Math.IEEEremainder(phase - before, TWO_PI);
            turned[j] = before / (TWO_PI * multiple);
            mean += turned[j] / turned.length;
        }
        for (int j = 0; j < turned.length; j++) {
            turned[j] -= mean;
        }
        return turned;
    }

    /** Those that keep together with one of them; where two groups are as large, the surer. */
    private static List<Follower> largestGroup(List<Follower> all) {
        List<Follower> largest = List.of();
        for (Follower one : all) {
            List<Follower> group = all.stream().filter(one::agrees).toList();
            if (group.size() > largest.size()
                    || group.size() == largest.size() && certainty(group) > certainty(largest)) {
                largest = group;
            }
        }
        return largest;
    }

    private static double certainty(List<Follower> group) {
        return group.stream().mapToDouble(PhaseTrack::weight).sum();
    }

    /** No phase is surer than a ten-thousandth of a revolution. */
    private static double weight(Follower one) {
        return 1 / (one.uncertainty * one.uncertainty + 1e-8);
    }

    /** Turns the angles by the weighted mean of the errors and returns its standard uncertainty. */
    private double correct(List<Follower> group) {
        double weights = certainty(group);
        for (Follower one : group) {
            multiples.add(one.multiple);
            for (int j = 0; j < revolutions.length; j++) {
                revolutions[j] += weight(one) / weights * one.error[j];
            }
        }
        double first = revolutions[0];
        for (int j = 0; j < revolutions.length; j++) {
            revolutions[j] -= first;
        }
        return 1 / Math.sqrt(weights);
    }

    /** Tells whether the lines tell an angle that always goes on. */
    boolean stands() {
        return reason().isEmpty();
    }

    String reason() {
        for (int j = 1; j < revolutions.length && reason.isEmpty(); j++) {
            if (!(revolutions[j] > revolutions[j - 1])) {
                return "the phases of the lines run backward";
            }
        }
        return reason;
    }

    ShaftAngle angle() {
        return ShaftAngle.through(revolutions, seconds);
    }

    List<Integer> multiples() {
        return multiples;
    }

    double uncertaintyRevolutions() {
        return uncertainty;
    }
}
