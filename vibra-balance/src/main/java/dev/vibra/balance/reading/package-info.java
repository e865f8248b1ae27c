/**
 * Readings worth balancing on: repeated readings with their scatter and steadiness, and the vector at rotation
 * frequency out of a recording with tachometer marks. Start at {@link dev.vibra.balance.reading.RepeatedReading}.
 * Follows ISO 21940-13 in asking for repeated readings; the least-squares fit is that of any textbook on harmonic
 * analysis.
 *
 * @serial exclude
 */
package dev.vibra.balance.reading;
