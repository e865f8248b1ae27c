/**
 * Forward model: the acceleration that a bearing with known defects makes in a machine. Start at {@link
 * dev.vibra.bearing.synthesis.BearingSignal}.
 *
 * @serial exclude
 */
package dev.vibra.bearing.synthesis;
