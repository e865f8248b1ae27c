/**
 * The pieces of work that are measured, by JMH and beside SciPy alike: start at {@link
 * dev.vibra.benchmarks.work.RoutePlans}, the analysis of one recording of a measuring route. Each piece writes its
 * figures into an array of its own, so that they can be compared.
 */
package dev.vibra.benchmarks.work;
