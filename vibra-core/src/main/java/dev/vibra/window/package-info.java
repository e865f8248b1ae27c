/**
 * Window functions for spectra and their figures of merit. Start at {@link dev.vibra.window.Window}. Windows are
 * periodic (as long as the transform, the repeated end point left off); the figures follow their definitions in F. J.
 * Harris, <i>Proc. IEEE</i> 66 (1978) 51-83, the flat top follows ISO 18431-2:2004.
 *
 * @serial exclude
 */
package dev.vibra.window;
