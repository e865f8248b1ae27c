/**
 * Recursive filters as cascades of second-order sections, designed and run. Start at {@link
 * dev.vibra.filter.Butterworth}, which makes a {@link dev.vibra.filter.SectionCascade}; its {@link
 * dev.vibra.filter.CascadeFilter} filters blocks of any size. Designs follow A. V. Oppenheim, R. W. Schafer,
 * <i>Discrete-Time Signal Processing</i>, 3rd ed., Prentice Hall 2010, section 7.3.
 *
 * @serial exclude
 */
package dev.vibra.filter;
