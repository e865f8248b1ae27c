package dev.vibra.diagnosis.study;

/** A rigid rotor in two bearings of a casing: five degrees of freedom, since it turns without hindrance. */
final class Rotor {
    private final String id;
    private final int part;
    private final double ratio;
    private final double sense;
    private final int first;
    private final double centre;
    private final double mass;
    private final double bearingStiffness;
    private final double oblate;
    private final double[] bearings;
    private final double offset;

    /** What it is: shaft and part, turns for one of the motor, where its bearings and its centre lie along its part. */
    record Layout(String id, int part, double ratio, double sense, double[] bearings, double centre, double offset) {}

    private Rotor(Layout layout, int first, double mass, double bearingStiffness, double oblate) {
        this.oblate = oblate;
        this.id = layout.id();
        this.part = layout.part();
        this.ratio = layout.ratio();
        this.sense = layout.sense();
        this.bearings = layout.bearings();
        this.centre = layout.centre();
        this.offset = layout.offset();
        this.first = first;
        this.mass = mass;
        this.bearingStiffness = bearingStiffness;
    }

    /** Mounts a rotor whose bearings are so stiff that it would bounce in them at a frequency. */
    static Rotor in(Structure structure, Casing casing, Layout layout, double mass, double bounceHertz, double oblate) {
        int first = structure.mass(mass);
        structure.mass(mass);
        structure.mass(mass);
        double length = Math.abs(layout.bearings()[1] - layout.bearings()[0]);
        structure.mass(mass * length * length / 8);
        structure.mass(mass * length * length / 8);
        double stiffness = mass * Math.pow(2 * Math.PI * bounceHertz, 2) / 2;
        Rotor rotor = new Rotor(layout, first, mass, stiffness, oblate);
        for (int end = 0; end < 2; end++) {
            double z = layout.bearings()[end];
            structure.spring("bearing", rotor.x(z).minus(casing.x(0, z)), stiffness);
            structure.spring("bearing", rotor.y(z).minus(casing.y(layout.offset(), z)), stiffness * oblate);
        }
        structure.spring("bearing", rotor.z().minus(casing.z(layout.offset(), 0)), stiffness * 0.7);
        return rotor;
    }

    String id() {
        return id;
    }

    int part() {
        return part;
    }

    double ratio() {
        return ratio;
    }

    /** Signed turns for one of the motor. */
    double turning() {
        return sense * ratio;
    }

    double mass() {
        return mass;
    }

    double bearingStiffness() {
        return bearingStiffness;
    }

    double uprightStiffness() {
        return oblate * bearingStiffness;
    }

    double bearing(int end) {
        return bearings[end];
    }

    double centre() {
        return centre;
    }

    double offset() {
        return offset;
    }

    boolean overhung() {
        return centre > Math.max(bearings[0], bearings[1]) || centre < Math.min(bearings[0], bearings[1]);
    }

    Tap x(double z) {
        return Tap.of(first).plus(z - centre, Tap.of(first + 4));
    }

    Tap y(double z) {
        return Tap.of(first + 1).plus(-(z - centre), Tap.of(first + 3));
    }

    Tap z() {
        return Tap.of(first + 2);
    }

    /** Tilting about the level (0) and the upright (1) axis. */
    Tap tilt(int axis) {
        return Tap.of(first + 3 + axis);
    }
}
