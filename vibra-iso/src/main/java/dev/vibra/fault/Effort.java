package dev.vibra.fault;

import java.util.Objects;

/** What a measurement or test asks of a machine, the gentlest first. */
public enum Effort {
    /** The machine runs as it does. */
    RUNNING("running", "while the machine runs as it does, from outside its guards"),
    /** Speed, load or flow are changed, or the power is cut. */
    OPERATION("operation", "by those who run the process, within what maker and process allow"),
    /** The machine stands still. */
    STOP("stop", "with the machine stopped, isolated and secured against starting");

    private final String label;
    private final String caution;

    Effort(String label, String caution) {
        this.label = label;
        this.caution = caution;
    }

    static Effort ofName(String name) {
        Objects.requireNonNull(name, "name");
        for (Effort effort : values()) {
            if (effort.label.equals(name)) {
                return effort;
            }
        }
        throw new IllegalArgumentException("effort must be one of running, operation, stop: " + name);
    }

    /** {@return under which caution it may be done, as in {@code with the machine stopped, isolated …}} */
    public String caution() {
        return caution;
    }

    /** Returns the word in the table of faults. */
    @Override
    public String toString() {
        return label;
    }
}
