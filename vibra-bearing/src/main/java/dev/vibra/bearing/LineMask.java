package dev.vibra.bearing;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/** Frequencies that have another explanation, each with the same half width; lines there carry no evidence. */
final class LineMask {
    private final double[] sorted;
    private final double halfWidth;

    LineMask(double halfWidth, DoubleStream hertz) {
        this.halfWidth = halfWidth;
        this.sorted = hertz.sorted().toArray();
    }

    LineMask with(DoubleStream more) {
        return new LineMask(halfWidth, DoubleStream.concat(Arrays.stream(sorted), more));
    }

    boolean covers(double hertz) {
        int at = Arrays.binarySearch(sorted, hertz);
        int next = at >= 0 ? at : -at - 1;
        return next < sorted.length && sorted[next] - hertz <= halfWidth
                || next > 0 && hertz - sorted[next - 1] <= halfWidth;
    }
}
