/**
 * Vectors of balancing and the senses in which their angles are counted: vibration at rotation frequency, and masses on
 * a rotor. Start at {@link dev.vibra.balance.vector.VibrationVector} and {@link dev.vibra.balance.vector.PlacedMass}.
 * Terms follow ISO 21940-2 (vocabulary of balancing) and ISO 2041 (vocabulary of vibration).
 *
 * @serial exclude
 */
package dev.vibra.balance.vector;
