/**
 * Where to measure on a machine and how to mount the sensor. Start at {@link dev.vibra.measuring.MeasuringPlan} for the
 * points of a {@link dev.vibra.measuring.MachineLayout}, and at {@link dev.vibra.measuring.Mounting} and {@link
 * dev.vibra.measuring.MountedResonance} for the sensor. Follows in general terms ISO 13373-1:2002 (points and
 * directions) and ISO 5348:2021 (mounting), with common practice marked as such.
 *
 * @serial exclude
 */
package dev.vibra.measuring;
