/**
 * Lines of a spectrum that belong together, and how sure it is that a line is one. Start at {@link
 * dev.vibra.lines.HarmonicFamily}; {@link dev.vibra.lines.NoiseFloor} tells what noise alone would read. The statistics
 * of spectral lines follow J. S. Bendat, A. G. Piersol, <i>Random Data</i>, 4th ed., Wiley 2010, section 8.5.
 *
 * @serial exclude
 */
package dev.vibra.lines;
