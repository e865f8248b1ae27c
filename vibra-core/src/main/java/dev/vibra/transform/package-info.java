/**
 * Discrete Fourier transforms of any length that start no thread and allocate nothing once made. Start at {@link
 * dev.vibra.transform.RealTransform}; {@link dev.vibra.transform.ComplexTransform} is underneath. Short powers of two
 * are handed to JTransforms; longer and other lengths are composed of them (C. Van Loan, <i>Computational Frameworks
 * for the Fast Fourier Transform</i>, SIAM 1992, sections 2.2, 3.2 and 4.2).
 */
package dev.vibra.transform;
