package dev.vibra.diagnosis.study;

/** Mode arithmetic of a wheel with blades among guide vanes: k = n·blades - m·vanes. */
final class VaneModes {
    private VaneModes() {}

    /** The k nearest to zero of a multiple n of the passing rate. */
    static int lowest(int n, int blades, int vanes) {
        int rest = Math.floorMod(n * blades, vanes);
        return rest <= vanes / 2 ? rest : rest - vanes;
    }
}
