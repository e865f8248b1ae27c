/**
 * Stopping a stream and going on later, bit for bit: after a restart of the process, on another machine, by turns.
 *
 * <p>Start at {@link dev.vibra.state.Resumable}, which every meter and stream filter is; {@link
 * dev.vibra.state.StreamState} is what it hands out, {@link dev.vibra.state.Arrival} and {@link
 * dev.vibra.state.Continuity} say whether the blocks of a stream followed each other.
 *
 * @serial exclude
 */
package dev.vibra.state;
