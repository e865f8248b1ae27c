package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingGeometry;
import java.util.SplittableRandom;

/** Draws that the parts of the study share. */
final class Draw {
    private Draw() {}

    static double logarithmic(SplittableRandom random, double from, double to) {
        return from * StrictMath.pow(to / from, random.nextDouble());
    }

    /** Amplitude ratio of a level drawn evenly in dB. */
    static double gain(SplittableRandom random, double fromDecibels, double toDecibels) {
        return StrictMath.pow(10, random.nextDouble(fromDecibels, toDecibels) / 20);
    }

    static boolean chance(SplittableRandom random, double probability) {
        return random.nextDouble() < probability;
    }

    /** 7 to 20 elements that fit round the pitch circle, ratio 0.12 to 0.35, half of them with a contact angle. */
    static BearingGeometry geometry(SplittableRandom random) {
        int elements = random.nextInt(7, 21);
        double widest = Math.min(0.35, 0.95 * StrictMath.sin(Math.PI / elements));
        double ratio = random.nextDouble(0.12, widest);
        double angle = random.nextBoolean() ? random.nextDouble(0, 40) : 0;
        return BearingGeometry.of(elements, 100 * ratio, 100, angle);
    }

    /** The longest length up to a limit that has no prime factor above five. */
    static int fastLength(int atMost) {
        int length = atMost - atMost % 2;
        while (rest(length) > 1) {
            length -= 2;
        }
        return length;
    }

    private static int rest(int length) {
        int rest = length;
        for (int prime : new int[] {2, 3, 5}) {
            while (rest % prime == 0) {
                rest /= prime;
            }
        }
        return rest;
    }
}
