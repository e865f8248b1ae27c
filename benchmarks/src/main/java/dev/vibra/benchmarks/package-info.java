/**
 * JMH benchmarks, one class a subject, of the work that stands in {@link dev.vibra.benchmarks.work}. Start at {@link
 * dev.vibra.benchmarks.RouteBenchmark}; each class comment gives the command that runs it. Sizes are those met in
 * practice, powers of two or not.
 */
package dev.vibra.benchmarks;
