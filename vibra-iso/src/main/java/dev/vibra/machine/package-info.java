/**
 * What is known of a machine before anything is measured: its parts, shafts, gears and bearings, the rates at which
 * they turn, mesh and pass, the measuring points and a balancing job. Start at
 * {@link dev.vibra.machine.MachineDescription}; everything but the name may be missing. Terms follow ISO 13372:2012
 * (condition monitoring), ISO 21940-2:2017 (balancing) and ISO 13373-1:2002 (measuring points).
 *
 * @serial exclude
 */
package dev.vibra.machine;
