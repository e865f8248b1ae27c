/**
 * JMH benchmarks of the numerical kernels, one class a subject. Start at {@link
 * dev.vibra.benchmarks.TransformBenchmark}; each class comment gives the command that runs it. Sizes are those met in
 * practice, powers of two or not.
 */
package dev.vibra.benchmarks;
