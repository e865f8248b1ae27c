package dev.vibra.diagnosis.study;

/** Rates of a plant. */
final class Rates {
    private Rates() {}

    /** True if a frequency lies near a multiple, or half a multiple, of a shaft or of the belt, or near line rates. */
    static boolean near(Plant plant, double hertz, double relative) {
        for (int rotor = 0; rotor < plant.rotors.size(); rotor++) {
            double half = 2 * hertz / plant.hertz(rotor);
            if (Math.abs(half - Math.max(1, Math.rint(half))) < relative * half) {
                return true;
            }
        }
        if (plant.drive != null) {
            double order = hertz / (plant.drive.perTurn() * plant.motorHertz());
            if (Math.abs(order - Math.max(1, Math.rint(order))) < relative * order) {
                return true;
            }
        }
        double line = hertz / plant.lineHertz;
        return Math.abs(line - Math.max(1, Math.rint(line))) < relative * line;
    }
}
