/**
 * What surveys are worth on recordings whose faults are known: labels in, a table of right and wrong out. Start at
 * {@link dev.vibra.score.Scorecard}. Bounds of the shares follow Clopper and Pearson (1934).
 *
 * @serial exclude
 */
package dev.vibra.score;
