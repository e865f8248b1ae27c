/**
 * The recording as a value: samples of one channel with quantity, sample rate and start, or of several taken together.
 * Start at {@link dev.vibra.signal.Waveform}, which gives levels, integrates and cuts; everything behind it takes one.
 * Terms follow ISO 2041:2018.
 *
 * @serial exclude
 */
package dev.vibra.signal;
