/**
 * The library beside SciPy, FFTW and JTransforms on the same input, alternating: start at {@link
 * dev.vibra.benchmarks.comparison.Comparison}. Figures must agree, and ratios of processor time must keep the limits of
 * a file, or the run fails.
 */
package dev.vibra.benchmarks.comparison;
