/**
 * Balance tolerances of rotors with rigid behaviour: grades, permissible residual unbalance, its share in each plane,
 * and the grade that a residual unbalance reaches. Start at {@link dev.vibra.balance.tolerance.BalanceTolerance}.
 * Follows ISO 21940-11:2016 (formerly ISO 1940-1), with keys after ISO 21940-32 and errors after ISO 21940-14; what was
 * not checked against a second source says so.
 *
 * @serial exclude
 */
package dev.vibra.balance.tolerance;
