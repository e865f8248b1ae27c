/**
 * The spectrum of the logarithmic spectrum, in which a whole family of harmonics or sidebands is one line. Start at
 * {@link dev.vibra.cepstrum.Cepstrum}. Definitions and uses follow R. B. Randall, <i>Mech. Syst. Signal Process.</i> 97
 * (2017) 3-19.
 *
 * @serial exclude
 */
package dev.vibra.cepstrum;
