/**
 * Influence coefficients: how much vibration at each sensor a unit of unbalance in each plane causes, and the unbalance
 * that cancels a vibration. Start at {@link dev.vibra.balance.influence.InfluenceCoefficients}; {@link
 * dev.vibra.balance.influence.InfluenceFit} finds them from runs. The method follows T. P. Goodman, A Least-Squares
 * Method for Computing Balance Corrections, J. Eng. Ind. 86 (1964), and ISO 21940-2 for its terms.
 *
 * @serial exclude
 */
package dev.vibra.balance.influence;
