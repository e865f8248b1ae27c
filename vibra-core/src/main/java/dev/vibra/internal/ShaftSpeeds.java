package dev.vibra.internal;

/** When two shafts count as one: coupled parts have a shaft each in a description. */
public final class ShaftSpeeds {
    private static final double SAME = 1e-3;

    private ShaftSpeeds() {}

    /**
     * Tells whether two shafts turn at one speed.
     *
     * @param one speed or ratio of a shaft
     * @param other speed or ratio of another one, not 0
     * @return true within a thousandth
     */
    public static boolean areSame(double one, double other) {
        return Math.abs(one / other - 1) < SAME;
    }
}
