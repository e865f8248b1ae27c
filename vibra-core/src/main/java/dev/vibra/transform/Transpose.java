package dev.vibra.transform;

/** Transposition of a matrix of complex numbers, in tiles that stay in the first-level cache. */
final class Transpose {
    private static final int TILE = 16;

    private Transpose() {}

    /** Writes the transpose of a rows × columns matrix. */
    static void copy(double[] from, int fromOffset, int rows, int columns, double[] to, int toOffset) {
        for (int r0 = 0; r0 < rows; r0 += TILE) {
            int r1 = Math.min(rows, r0 + TILE);
            for (int c0 = 0; c0 < columns; c0 += TILE) {
                tile(from, fromOffset, columns, to, toOffset, rows, r0, r1, c0, Math.min(columns, c0 + TILE));
            }
        }
    }

    private static void tile(double[] from, int fromOffset, int columns, double[] to, int toOffset, int rows,
            int r0, int r1, int c0, int c1) {
        for (int c = c0; c < c1; c++) {
            int target = toOffset + 2 * (c * rows + r0);
            for (int r = r0; r < r1; r++) {
                int source = fromOffset + 2 * (r * columns + c);
                to[target] = from[source];
                to[target + 1] = from[source + 1];
                target += 2;
            }
        }
    }
}
