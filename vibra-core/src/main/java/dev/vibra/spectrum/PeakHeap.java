package dev.vibra.spectrum;

/**
 * The largest of many in arrays of the caller: the least of them lies first, each above those at twice its number. Of
 * two peaks of one size the lower frequency counts as the larger.
 */
final class PeakHeap {
    private PeakHeap() {}

    /** Adds a value to a heap that has room and returns how many it holds. */
    static int push(double[] heap, int held, double value) {
        int at = held;
        while (at > 0 && value < heap[(at - 1) / 2]) {
            heap[at] = heap[(at - 1) / 2];
            at = (at - 1) / 2;
        }
        heap[at] = value;
        return held + 1;
    }

    /** Puts a value in place of the least. */
    static int replace(double[] heap, int held, double value) {
        int at = 0;
        for (int next = 1; next < held; next = 2 * at + 1) {
            int lower = next + 1 < held && heap[next + 1] < heap[next] ? next + 1 : next;
            if (heap[lower] >= value) {
                break;
            }
            heap[at] = heap[lower];
            at = lower;
        }
        heap[at] = value;
        return held;
    }

    /** Adds a peak, in place of the least if there is no more room and it is larger, and returns how many there are. */
    static int add(double[] hertz, double[] rms, int held, int room, double at, double size) {
        if (held < room) {
            int place = held;
            while (place > 0 && less(at, size, hertz[(place - 1) / 2], rms[(place - 1) / 2])) {
                hertz[place] = hertz[(place - 1) / 2];
                rms[place] = rms[(place - 1) / 2];
                place = (place - 1) / 2;
            }
            hertz[place] = at;
            rms[place] = size;
            return held + 1;
        }
        if (less(hertz[0], rms[0], at, size)) {
            sink(hertz, rms, held, at, size);
        }
        return held;
    }

    private static void sink(double[] hertz, double[] rms, int held, double at, double size) {
        int place = 0;
        for (int next = 1; next < held; next = 2 * place + 1) {
            boolean second = next + 1 < held && less(hertz[next + 1], rms[next + 1], hertz[next], rms[next]);
            int lower = second ? next + 1 : next;
            if (!less(hertz[lower], rms[lower], at, size)) {
                break;
            }
            hertz[place] = hertz[lower];
            rms[place] = rms[lower];
            place = lower;
        }
        hertz[place] = at;
        rms[place] = size;
    }

    private static boolean less(double hertz, double rms, double otherHertz, double otherRms) {
        return rms < otherRms || rms == otherRms && hertz > otherHertz;
    }

    /** Turns the heap of peaks into a list, the largest first. */
    static void sort(double[] hertz, double[] rms, int held) {
        for (int rest = held - 1; rest > 0; rest--) {
            double at = hertz[rest];
            double size = rms[rest];
            hertz[rest] = hertz[0];
            rms[rest] = rms[0];
            sink(hertz, rms, rest, at, size);
        }
    }
}
