/**
 * Rotors that can be computed: the vibration that a known unbalance causes, for tests, teaching and demonstrations
 * without hardware. Start at {@link dev.vibra.balance.rotor.Rotor}; {@link dev.vibra.balance.rotor.JeffcottRotor} is
 * the simplest. Follows the equations of motion as in S. S. Rao, Mechanical Vibrations, and G. Genta, Dynamics of
 * Rotating Systems.
 *
 * @serial exclude
 */
package dev.vibra.balance.rotor;
