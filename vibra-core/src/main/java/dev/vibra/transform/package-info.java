/**
 * Discrete Fourier transforms of any length that start no thread and allocate nothing once made. Start at {@link
 * dev.vibra.transform.RealTransform}; {@link dev.vibra.transform.ComplexTransform} is its complex sister, {@link
 * dev.vibra.transform.BandBank} many transforms at once.
 *
 * <p>How it works, from the outside in: a transform picks a {@code RealKernel} or a {@code Kernel} for its length. A
 * short power of two is handed to JTransforms. A length without prime factors above 13 is a matrix ({@code
 * SplitRealKernel}, {@code SplitKernel}): transform its columns, turn, transpose, transform the columns. {@code
 * RowTransform} does the columns of a matrix together, whole rows at a time, in the loops of {@code Butterflies} and
 * {@code Turns} that the compiler vectorises. Any other length is a convolution over such kernels ({@code
 * ChirpKernel}).
 *
 * @see "C. Van Loan, Computational Frameworks for the Fast Fourier Transform, SIAM 1992, chapters 1, 3 and section 4.2"
 */
package dev.vibra.transform;
