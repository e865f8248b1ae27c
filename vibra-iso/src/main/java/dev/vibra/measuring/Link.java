package dev.vibra.measuring;

/** What joins a part of a machine train to the part before it. */
public enum Link {
    /** Coupling between shafts in line. */
    COUPLING,
    /** Rotor of one part on the shaft of the other. */
    COMMON_SHAFT,
    /** Belts between parallel shafts. */
    BELT,
    /** Gears: the part turns at another speed, or its shaft lies beside. */
    GEAR
}
