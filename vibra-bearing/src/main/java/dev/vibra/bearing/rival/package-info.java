/**
 * What else may make the lines of a defect: rotation and its parts, sidebands, multiples of what is found already,
 * another rate. Start at {@link dev.vibra.bearing.rival.RivalSearch}.
 *
 * @serial exclude
 */
package dev.vibra.bearing.rival;
