/**
 * Octave and one-third-octave bands. Start at {@link dev.vibra.octave.OctaveBands} for levels of a recording; {@link
 * dev.vibra.octave.OctaveBand} gives mid-band and edge frequencies. Frequencies and limits follow IEC 61260-1:2014.
 *
 * @serial exclude
 */
package dev.vibra.octave;
