package dev.vibra.diagnosis.study;

/** Cosine by a table, within 3e-7. */
final class Sine {
    private static final int SIZE = 4096;
    private static final double[] TABLE = new double[SIZE + 2];

    static {
        for (int i = 0; i < TABLE.length; i++) {
            TABLE[i] = Math.cos(2 * Math.PI * i / SIZE);
        }
    }

    private Sine() {}

    /** Cosine of an angle in turns. */
    static double cos(double turns) {
        double place = (turns - Math.floor(turns)) * SIZE;
        int before = (int) place;
        return TABLE[before] + (place - before) * (TABLE[before + 1] - TABLE[before]);
    }
}
