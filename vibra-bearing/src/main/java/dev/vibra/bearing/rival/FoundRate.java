package dev.vibra.bearing.rival;

import dev.vibra.bearing.kinematics.BearingElement;

/**
 * A rate of the bearing that is found already.
 *
 * @param element element it belongs to
 * @param hertz rate as found, Hz
 * @param depth depth of the pulsation
 */
public record FoundRate(BearingElement element, double hertz, double depth) {}
