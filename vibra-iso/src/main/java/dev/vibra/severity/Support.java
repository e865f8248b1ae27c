package dev.vibra.severity;

/**
 * How a machine stands, in the direction of the measurement; one machine can be rigid in one direction and flexible in
 * another.
 *
 * <p>Rigid: the lowest natural frequency of machine and support together lies at least 25 % above the main excitation,
 * usually the rotation frequency. Flexible: all others.
 *
 * @see "ISO 20816-1:2016 and ISO 20816-3:2022 on the classification by support"
 */
public enum Support {
    /** Lowest natural frequency of machine and support at least 25 % above the main excitation. */
    RIGID,
    /** Any support that is not rigid. */
    FLEXIBLE;

    /**
     * Finds a support by its plain name.
     *
     * @param name {@code rigid} or {@code flexible}
     * @return the support
     * @throws IllegalArgumentException if the name is another one
     */
    public static Support ofName(String name) {
        for (Support support : values()) {
            if (support.toString().equals(name)) {
                return support;
            }
        }
        throw new IllegalArgumentException("support must be one of rigid, flexible: " + name);
    }

    /** Returns the plain name, {@code rigid} or {@code flexible}. */
    @Override
    public String toString() {
        return this == RIGID ? "rigid" : "flexible";
    }
}
