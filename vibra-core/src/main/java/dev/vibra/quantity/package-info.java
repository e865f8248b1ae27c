/**
 * What a number of vibration means: quantity, unit, detector, frequency band and rotation speed, and the {@link
 * dev.vibra.quantity.Level} that carries them together. Start at {@link
 * dev.vibra.quantity.Level}; all values inside the library are in SI units, a {@link
 * dev.vibra.quantity.Unit} appears only where a number enters or leaves. Terms follow ISO 2041:2018 (vocabulary of
 * mechanical vibration) and ISO 2954:2012 (vibration severity instruments).
 *
 * @serial exclude
 */
package dev.vibra.quantity;
