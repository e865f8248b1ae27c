/**
 * Forward models of signals: tones, noise, impacts that ring a resonance, and what sensors and converters do to them.
 * Start at {@link dev.vibra.synthesis.Synthesis}. Everything random takes a seed and repeats; the formulas are those of
 * S. S. Rao, <i>Mechanical Vibrations</i>, for the single-degree-of-freedom impulse response.
 *
 * @serial exclude
 */
package dev.vibra.synthesis;
