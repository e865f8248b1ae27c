/**
 * From pulses of a tachometer to speed, and from time to angle of the shaft: computed order tracking, synchronous
 * averages and what they leave, vectors over speed, orbits. Start at {@link dev.vibra.rotation.Tachometer} and
 * {@link dev.vibra.rotation.ShaftAngle}; without pulses, {@link dev.vibra.rotation.SpeedEstimate} reads the speed from
 * the vibration, and {@link dev.vibra.rotation.TrackedAngle} the angle. Order tracking follows K. R. Fyfe, E. D. S.
 * Munck, <i>Mech. Syst. Signal Process.</i> 11 (1997) 187-205.
 *
 * @serial exclude
 */
package dev.vibra.rotation;
