/**
 * What two channels have to do with each other: cross spectrum, coherence, frequency response, and what an impact test
 * tells of natural frequencies and damping. Start at {@link dev.vibra.transfer.FrequencyResponse}. Definitions follow
 * J. S. Bendat, A. G. Piersol, <i>Random Data</i>, 4th ed., Wiley 2010, chapters 6 and 9, and ISO 7626-1:2011.
 *
 * @serial exclude
 */
package dev.vibra.transfer;
