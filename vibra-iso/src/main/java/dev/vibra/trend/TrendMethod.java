package dev.vibra.trend;

/** How the line is laid through the readings. */
public enum TrendMethod {
    /**
     * Median of all slopes (Theil, Sen) and of all means of two residuals (Hodges, Lehmann): up to a quarter of wild
     * readings do little harm.
     */
    ROBUST,
    /** Least squares: the sharpest interval where the scatter is normal and no reading is wild. */
    LEAST_SQUARES
}
