/**
 * From a correction on paper to masses that fit the rotor: given positions, given sizes, several masses made one. Start
 * at {@link dev.vibra.balance.placement.Positions}. Plane geometry of vectors; no standard rules it, ISO 21940-2 names
 * the terms.
 *
 * @serial exclude
 */
package dev.vibra.balance.placement;
