/**
 * Rolling bearings: the rates at which defects of their elements repeat, the envelope spectrum of a band in which they
 * ring, a verdict for each element with its evidence, and the signal that a defect makes. Start at {@link
 * dev.vibra.bearing.kinematics.BearingGeometry}. Kinematics and method follow P. D. McFadden and J. D. Smith (Tribology
 * International 17, 1984) and R. B. Randall and J. Antoni (Mechanical Systems and Signal Processing 25, 2011); terms
 * follow ISO 13373-2.
 *
 * @serial exclude
 */
package dev.vibra.bearing;

