/**
 * Names and numbers that describe one recording, as a table. Start at {@link dev.vibra.descriptor.Descriptors}:
 * {@code Descriptors.standard().of(waveform).values()} gives plain numbers under stable names; what they are made of is
 * made once, in {@link dev.vibra.descriptor.Signals}. Terms follow ISO 13372:2012 and ISO 13374-1:2003 (descriptors).
 *
 * @serial exclude
 */
package dev.vibra.descriptor;
