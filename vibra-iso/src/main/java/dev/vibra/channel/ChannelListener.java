package dev.vibra.channel;

import dev.vibra.alarm.AlarmState;
import dev.vibra.state.Arrival;

/**
 * Told what happens while blocks go into a {@link Channel}, in the thread that pushes. It reads the channel, and must
 * not push into it. What it doesn't ask for does nothing.
 */
public interface ChannelListener {
    /**
     * A reading is complete; the levels are those of its interval until this returns.
     *
     * @param channel the channel: {@link Channel#levels()}, {@link Channel#quality()}, {@link Channel#coverage()}
     */
    default void reading(Channel channel) {}

    /**
     * A rule has changed its state by the reading that is complete; {@link #reading} follows.
     *
     * @param channel the channel
     * @param rule number of the rule, from 0, in the order of the settings
     * @param before state before the reading
     * @param now state after it
     */
    default void alarm(Channel channel, int rule, AlarmState before, AlarmState now) {}

    /**
     * The spectra of an interval are complete; they are those of the interval until this returns.
     *
     * @param channel the channel: {@link Channel#spectrum(int)}, {@link Channel#envelope(int)}
     */
    default void spectra(Channel channel) {}

    /**
     * A block didn't follow the one before it.
     *
     * @param channel the channel
     * @param how a gap before it, an overlap, or a block that came late
     * @param samples samples that are missing, or were left out since they had come already
     */
    default void interrupted(Channel channel, Arrival how, long samples) {}
}
