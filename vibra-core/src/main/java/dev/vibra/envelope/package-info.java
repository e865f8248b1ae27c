/**
 * Amplitude envelope of a band, as used to find impacts that ring a resonance. Start at {@link
 * dev.vibra.envelope.Envelope}. The envelope is the magnitude of the analytic signal, made by a one-sided spectrum (S.
 * L. Marple, <i>IEEE Trans. Signal Process.</i> 47 (1999) 2600-2603); its use on bearings follows R. B. Randall, J.
 * Antoni, <i>Mech. Syst. Signal Process.</i> 25 (2011) 485-520.
 *
 * @serial exclude
 */
package dev.vibra.envelope;
