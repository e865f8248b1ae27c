/**
 * What is known of a machine before anything is measured: kind, power, support, rotor, bearings, gears, measuring
 * points and
 * a balancing job. Start at {@link dev.vibra.survey.machine.MachineDescription}; all values are in SI units and
 * everything
 * but the name may be missing. Terms follow ISO 13372:2012 (condition monitoring), ISO 21940-2:2017 (balancing) and
 * ISO 13373-1:2002 (measuring points).
 *
 * @serial exclude
 */
package dev.vibra.survey.machine;
