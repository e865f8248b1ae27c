package dev.vibra.transform;

import java.util.Arrays;

/**
 * Two neighbouring levels of a {@link BandBank}. A band of the deeper level is {@code parts} rows of lines, w lines a
 * row: transformed over the rows, turned, transposed, transformed along the columns (see {@link SplitKernel}).
 *
 * <p>With a and b the values of two neighbouring bands, a[t] + b[t] is value 2t of the band of both. For its odd values
 * the differences of the lines of both, turned by half a step, are transformed beside them.
 */
final class BandPair {
    /** Lines to be copied; null if they stand in the rows already. */
    private final Rows lines;
    private final int parts;
    private final int half;
    private final RowTransform along;
    private final RowTransform acrossParts;
    /** Rows of the even bands, of the odd bands and of the differences. */
    private final Rows rows;
    /** For each band its rows, to be transformed over. */
    private final Rows[] bands;
    private final Rows turned;
    private final Rows columns;
    private final Rows halfSteps;
    private final Rows factors;
    private final BandMoments moments;
    /** Rows of columns at the start and at the end that aren't counted. */
    private final int ends;

    /**
     * Real and imaginary parts of the lines change places, so that a forward transform of them is the inverse.
     *
     * @param copied whether the lines must be left alone; one part a band leaves them alone anyway
     * @param differences rows that pairs may share, as they use them one after the other
     */
    BandPair(Rows lines, boolean copied, Rows differences, RowTransform along, Rows columns, int parts) {
        this.lines = copied ? lines.swapped() : null;
        this.along = along;
        this.columns = columns;
        this.parts = parts;
        half = lines.re().length / 2;
        int width = along.length();
        acrossParts = new RowTransform(parts, width);
        rows = new Rows(new double[3 * half][], new double[3 * half][]);
        takeOver(copied ? Rows.of(2 * half, width) : lines.swapped());
        System.arraycopy(differences.re(), 0, rows.re(), 2 * half, half);
        System.arraycopy(differences.im(), 0, rows.im(), 2 * half, half);
        bands = new Rows[3 * half / parts];
        int[] order = new int[3 * half];
        for (int b = 0; b < bands.length; b++) {
            bands[b] = rows.part(b * parts, (b + 1) * parts);
            for (int k = 0; k < parts; k++) {
                order[b * parts + k] = b * parts + acrossParts.places()[k];
            }
        }
        turned = rows.ordered(order);
        moments = new BandMoments(half, parts);
        ends = endsOf(width, parts);
        halfSteps = Rows.of(parts, width);
        factors = Rows.of(parts, width);
        long values = (long) width * parts;
        Roots ofHalves = new Roots(2 * values);
        Roots roots = new Roots(values);
        for (int k = 0; k < parts; k++) {
            ofHalves.fill((long) k * width, 1, 1, halfSteps.re()[k], halfSteps.im()[k]);
            roots.fill(0, k, 1, factors.re()[k], factors.im()[k]);
        }
    }

    /** Four values at least, a value for each part being a row; an eighth of the rows at most. */
    static int endsOf(int width, int parts) {
        return Math.min(parts == 1 ? 4 : 1, width / 8);
    }

    /** Sums don't ask for the order of what they sum. The sums above are null if there is no level above. */
    void measure(double[] squares, double[] fourths, double[] squaresAbove, double[] fourthsAbove) {
        loadRows();
        for (Rows band : bands) {
            acrossParts.run(band, along.length());
        }
        if (parts > 1) {
            turn(turned, factors, 0, 3 * half);
        }
        turned.transposeInto(columns);
        along.run(columns, 3 * half);
        leaveOutEnds();
        moments.clear();
        for (int row = 0; row < along.length(); row += 4) {
            moments.add(columns, row);
        }
        moments.write(squares, fourths, squaresAbove, fourthsAbove);
    }

    private void leaveOutEnds() {
        int[] places = along.places();
        for (int k = 0; k < ends; k++) {
            clear(places[k]);
            clear(places[places.length - 1 - k]);
        }
    }

    private void clear(int row) {
        Arrays.fill(columns.re()[row], 0);
        Arrays.fill(columns.im()[row], 0);
    }

    /** The row of the lines that stands in a row. */
    private int lineOf(int row) {
        int inHalf = row % half;
        return inHalf / parts * 2 * parts + inHalf % parts + (row < half ? 0 : parts);
    }

    private void takeOver(Rows source) {
        for (int row = 0; row < 2 * half; row++) {
            rows.re()[row] = source.re()[lineOf(row)];
            rows.im()[row] = source.im()[lineOf(row)];
        }
    }

    private void loadRows() {
        for (int row = 0; lines != null && row < 2 * half; row++) {
            System.arraycopy(lines.re()[lineOf(row)], 0, rows.re()[row], 0, along.length());
            System.arraycopy(lines.im()[lineOf(row)], 0, rows.im()[row], 0, along.length());
        }
        for (int row = 0; row < half; row++) {
            subtract(rows.re()[row], rows.re()[half + row], rows.re()[2 * half + row]);
            subtract(rows.im()[row], rows.im()[half + row], rows.im()[2 * half + row]);
        }
        turn(rows, halfSteps, 2 * half, 3 * half);
    }

    private static void subtract(double[] a, double[] b, double[] out) {
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i] - b[i];
        }
    }

    /** Two rows at a time; there is an even number of them. */
    private void turn(Rows of, Rows by, int from, int to) {
        for (int row = from; row < to; row += 2) {
            int p = row % parts;
            int q = (row + 1) % parts;
            Turns.turn(Turns.ROTATE, of.re()[row], of.im()[row], of.re()[row + 1], of.im()[row + 1], by.re()[p],
                    by.im()[p], by.re()[q], by.im()[q], 1, 0, along.length());
        }
    }
}
