package dev.vibra.transform;

/**
 * A long power of two as rows × columns: transform the columns, turn, transform the rows (Van Loan, section 3.2). Each
 * piece is short enough for a direct transform, or is composed itself.
 */
final class FourStepKernel extends Kernel {
    private final int rows;
    private final int columns;
    private final Kernel ofRows;
    private final Kernel ofColumns;
    private final double[] twiddles;
    private final double[] scratch;

    FourStepKernel(int length) {
        int exponent = Integer.numberOfTrailingZeros(length);
        rows = 1 << (exponent / 2);
        columns = length / rows;
        ofColumns = Kernel.of(rows);
        ofRows = columns == rows ? ofColumns : Kernel.of(columns);
        twiddles = new double[2 * length];
        for (int c = 0; c < columns; c++) {
            for (int k = 0; k < rows; k++) {
                setRoot(twiddles, c * rows + k, (long) c * k, length);
            }
        }
        scratch = new double[2 * length];
    }

    @Override
    void forward(double[] data, int offset) {
        Transpose.copy(data, offset, rows, columns, scratch, 0);
        for (int c = 0; c < columns; c++) {
            ofColumns.forward(scratch, 2 * c * rows);
        }
        Complex.multiply(scratch, 0, twiddles, 0, rows * columns);
        Transpose.copy(scratch, 0, columns, rows, data, offset);
        for (int r = 0; r < rows; r++) {
            ofRows.forward(data, offset + 2 * r * columns);
        }
        Transpose.copy(data, offset, rows, columns, scratch, 0);
        System.arraycopy(scratch, 0, data, offset, 2 * rows * columns);
    }
}
