/**
 * Bearings whose geometry isn't known: which numbers of rolling elements and which diameter ratios would explain the
 * pulsations of a recording, and what would decide. Start at {@link dev.vibra.bearing.proportion.UnknownBearing}.
 * Kinematics follow P. D. McFadden and J. D. Smith (Tribology International 17, 1984), modulation by the load zone the
 * same authors (Journal of Sound and Vibration 96, 1984).
 *
 * @serial exclude
 */
package dev.vibra.bearing.proportion;
