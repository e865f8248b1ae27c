/**
 * The meter at the console: several values of one channel, each interval on a line, out of a file or out of raw samples
 * on standard input. Start at {@link dev.vibra.docs.survey.meter.MeterCommand}; it is a thin layer over
 * {@link dev.vibra.channel.Channel}, and its values bear the names of {@link dev.vibra.descriptor.Descriptors}.
 */
package dev.vibra.docs.survey.meter;
