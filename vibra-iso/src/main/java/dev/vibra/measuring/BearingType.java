package dev.vibra.measuring;

/** What carries the shaft; it decides between sensors on the housing and probes at the shaft. */
public enum BearingType {
    /** Balls or rollers: stiff, so that the housing tells what the shaft does. */
    ROLLING,
    /** Oil film: the shaft moves in its clearance, much of it unseen at the housing. */
    FLUID_FILM
}
