package dev.vibra.rotation;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/** Distances between the strongest lines, in rising order: what the shaft modulates has sidebands as far apart. */
final class LineSpacings {
    private static final int STRONGEST = 100;

    private final LineSet lines;
    private final double[] distance;
    private final int[] lower;

    LineSpacings(LineSet lines, double farthest) {
        this.lines = lines;
        int[] chosen = IntStream.range(0, lines.count()).boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -lines.over(i))).limit(STRONGEST)
                .mapToInt(i -> i).sorted().toArray();
        long[] pairs = new long[chosen.length * chosen.length / 2];
        int count = 0;
        for (int i = 0; i < chosen.length; i++) {
            double low = lines.hertz(chosen[i]);
            for (int j = i + 1; j < chosen.length && lines.hertz(chosen[j]) - low < farthest; j++) {
                // Positive floats sort as their bits do.
                long bits = Float.floatToIntBits((float) (lines.hertz(chosen[j]) - low));
                pairs[count++] = bits << 32 | chosen[i];
            }
        }
        Arrays.sort(pairs, 0, count);
        distance = Arrays.stream(pairs, 0, count).mapToDouble(p -> Float.intBitsToFloat((int) (p >> 32))).toArray();
        lower = Arrays.stream(pairs, 0, count).mapToInt(p -> (int) p).toArray();
    }

    int count() {
        return distance.length;
    }

    double distance(int pair) {
        return distance[pair];
    }

    /** Number of pairs this far apart that are not themselves low multiples of the distance. */
    int count(double hertz, double tolerance) {
        int found = 0;
        for (int i = from(hertz - tolerance); i < distance.length && distance[i] <= hertz + tolerance; i++) {
            double multiple = Math.rint(lines.hertz(lower[i]) / hertz);
            boolean harmonic = multiple >= 1 && multiple <= ShaftLines.MULTIPLES
                    && Math.abs(lines.hertz(lower[i]) - multiple * hertz) <= 2 * tolerance;
            found += harmonic ? 0 : 1;
        }
        return found;
    }

    /** Distances per Hz within a quarter of one, without its own. */
    double density(double hertz, double tolerance) {
        double reach = 0.25 * hertz;
        int around = from(hertz + reach) - from(hertz - reach) - (from(hertz + tolerance) - from(hertz - tolerance));
        return (around + 0.5) / (2 * (reach - tolerance));
    }

    private int from(double lowest) {
        int found = Arrays.binarySearch(distance, lowest);
        return found < 0 ? -found - 1 : found;
    }
}
