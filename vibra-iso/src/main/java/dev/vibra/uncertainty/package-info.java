/**
 * Measurement uncertainty: named contributions to the uncertainty of a level and their combination, propagation to any
 * computed result, and how it counts in a decision. Start at {@link dev.vibra.uncertainty.LevelUncertainty}, which
 * makes the {@link dev.vibra.uncertainty.UncertaintyBudget} of a judged recording. Follows JCGM 100:2008 (Guide to the
 * expression of uncertainty in measurement) and JCGM 106:2012 (its role in conformity assessment).
 *
 * @serial exclude
 */
package dev.vibra.uncertainty;
