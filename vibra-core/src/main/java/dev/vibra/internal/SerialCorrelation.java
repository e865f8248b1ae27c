package dev.vibra.internal;

/** How far neighbours in a row hang together. */
public final class SerialCorrelation {
    private SerialCorrelation() {}

    /**
     * Correlates each residual with the next; of any size, since only their ratios count.
     *
     * @param residuals what a mean or a line leaves over, finite, in the order of time
     * @return correlation from -1 to 1; 0 if there is no scatter
     */
    public static double of(double[] residuals) {
        double largest = 0;
        for (double residual : residuals) {
            largest = Math.max(largest, Math.abs(residual));
        }
        if (largest == 0) {
            return 0;
        }
        double products = 0;
        double squares = 0;
        double before = 0;
        for (double residual : residuals) {
            double scaled = residual / largest;
            squares += scaled * scaled;
            products += scaled * before;
            before = scaled;
        }
        return products / squares;
    }
}
