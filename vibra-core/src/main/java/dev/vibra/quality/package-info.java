/**
 * Is the recording sound? Start at {@link dev.vibra.quality.RecordingCheck}, which turns a waveform into named remarks
 * with their figures. The checks follow the data-qualification advice of J. S. Bendat, A. G. Piersol, <i>Random
 * Data</i>, 4th ed., Wiley 2010, section 10.4; their limits are common practice, no source, unless a method says
 * otherwise.
 *
 * @serial exclude
 */
package dev.vibra.quality;
