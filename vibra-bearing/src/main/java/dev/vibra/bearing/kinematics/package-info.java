/**
 * Geometry of rolling bearings and the rates at which defects of their elements repeat. Start at {@link
 * dev.vibra.bearing.kinematics.BearingGeometry}. The rates follow P. D. McFadden and J. D. Smith (Tribology
 * International 17, 1984).
 *
 * @serial exclude
 */
package dev.vibra.bearing.kinematics;
