/**
 * Averaged spectra with their scaling said: lines as rms, zero-to-peak or peak-to-peak amplitude, power spectral
 * density, band levels and peaks. Start at {@link dev.vibra.spectrum.Spectrum}; {@link dev.vibra.spectrum.SpectrumPlan}
 * is the reusable workspace beneath. The method is that of P. D. Welch, <i>IEEE Trans. Audio Electroacoust.</i> 15
 * (1967) 70-73; scaling follows ISO 18431-1:2005.
 *
 * @serial exclude
 */
package dev.vibra.spectrum;
