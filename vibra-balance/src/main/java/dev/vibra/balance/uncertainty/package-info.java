/**
 * How far vectors may be off: covariances, ellipses, and the probability that all of them lie within limits. Start at
 * {@link dev.vibra.balance.uncertainty.VectorCovariance}. Follows JCGM 102:2011 (GUM, more than one output quantity).
 *
 * @serial exclude
 */
package dev.vibra.balance.uncertainty;
