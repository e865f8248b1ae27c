/**
 * Balancing one plane by amplitudes alone, where no phase can be read: an initial run and two or more runs with one
 * trial mass at different angles. Start at {@link dev.vibra.balance.phaseless.AmplitudeRuns}. Follows the three-run and
 * four-run constructions with circles that handbooks of maintenance give, solved as equations.
 *
 * @serial exclude
 */
package dev.vibra.balance.phaseless;
