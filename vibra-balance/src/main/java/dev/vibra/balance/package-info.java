/**
 * Field balancing as a crew does it: initial run, trial runs, corrections, proof. Start at {@link
 * dev.vibra.balance.Balancing#inPlanes(String...)}; values, coefficients, tolerances, placement and rotor models have
 * packages of their own. Follows the influence coefficient method of Goodman (1964) and, for terms and steps, ISO
 * 21940-2 and ISO 21940-13.
 *
 * @serial exclude
 */
package dev.vibra.balance;
