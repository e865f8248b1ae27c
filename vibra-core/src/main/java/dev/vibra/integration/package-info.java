/**
 * From acceleration to velocity and displacement and back, limited to a band, by two independent ways. Start at {@link
 * dev.vibra.integration.BandLimitingChain}, the time-domain chain of ISO 2954:2012 that severity is measured with;
 * {@link dev.vibra.integration.SpectralIntegration} does a whole recording in the frequency domain and is flat up to
 * the ends of the band. The second way follows A. Brandt, R. Brincker, <i>Measurement</i> 58 (2014) 511-519, who
 * compare such methods.
 *
 * @serial exclude
 */
package dev.vibra.integration;
