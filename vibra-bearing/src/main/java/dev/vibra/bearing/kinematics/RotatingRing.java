package dev.vibra.bearing.kinematics;

/** Ring of a bearing that turns with the shaft speed while the other one stands still. */
public enum RotatingRing {
    /** The inner ring turns, the usual case: the shaft turns in a fixed housing. */
    INNER("inner"),
    /** The outer ring turns: a wheel hub, a pulley or a roller on a fixed axle. */
    OUTER("outer");

    private final String label;

    RotatingRing(String label) {
        this.label = label;
    }

    /** Returns the name as written in files, {@code inner} or {@code outer}. */
    @Override
    public String toString() {
        return label;
    }
}
