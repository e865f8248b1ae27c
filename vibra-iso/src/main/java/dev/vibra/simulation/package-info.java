/**
 * Forward models of machines, sound and with each fault of the table of faults: forces by the physics of the fault,
 * driven through random supports, resonances, sensors and noise. Start at {@link
 * dev.vibra.simulation.SimulatedMachine}; a model is one row of {@code FaultModels} and one method with its equation.
 * Sizes are drawn widely, since no counted figures are published; where a range is common practice without a source,
 * the models say so.
 *
 * @serial exclude
 */
package dev.vibra.simulation;
