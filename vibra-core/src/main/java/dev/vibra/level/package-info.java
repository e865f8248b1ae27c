/**
 * Numbers that describe the amplitude of a signal without its frequency. Start at {@link dev.vibra.level.Moments}:
 * mean, rms, peak values, crest factor, skewness and kurtosis of an array. Definitions follow ISO 2041:2018 and J. S.
 * Bendat, A. G. Piersol, <i>Random Data</i>, 4th ed., Wiley 2010, chapter 3.
 *
 * @serial exclude
 */
package dev.vibra.level;
