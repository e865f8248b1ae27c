/**
 * How far a recording repeats in a hidden way: spectral lines of noise that belong together because a rate modulates
 * the noise, over carrier frequency and cyclic frequency. Start at {@link dev.vibra.cyclic.SpectralCoherence}; {@link
 * dev.vibra.cyclic.SpectralCoherencePlan} is the engine beneath. The estimate is the frequency-smoothed cyclic
 * periodogram of W. A. Gardner, <i>IEEE Trans. Acoust. Speech Signal Process.</i> 34 (1986) 1111-1123; its use on
 * machines follows J. Antoni, <i>Mech. Syst. Signal Process.</i> 21 (2007) 597-630.
 *
 * @serial exclude
 */
package dev.vibra.cyclic;
