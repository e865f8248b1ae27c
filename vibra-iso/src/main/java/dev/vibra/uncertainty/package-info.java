/**
 * Measurement uncertainty of a level: named contributions and their combination. Start at {@link
 * dev.vibra.uncertainty.UncertaintyBudget}. Follows JCGM 100:2008 (Guide to the expression of uncertainty in
 * measurement).
 *
 * @serial exclude
 */
package dev.vibra.uncertainty;
