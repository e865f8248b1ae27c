/**
 * One measuring channel inside an acquisition product: blocks go in; readings, alarms and interruptions come out. Start
 * at {@link dev.vibra.channel.ChannelSettings}. A channel belongs to one thread at a time, allocates nothing while
 * blocks go in, and can be stopped and resumed at any sample.
 *
 * @serial exclude
 */
package dev.vibra.channel;
