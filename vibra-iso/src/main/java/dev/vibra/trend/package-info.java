/**
 * Trend of readings and the time until it reaches a limit. Start at {@link dev.vibra.trend.Trend}: {@code
 * Trend.of(readings).timeTo(limit)} gives an interval, or says why the readings support none; {@link
 * dev.vibra.trend.ChangePoint} finds where a trend begins. Follows ISO 13381-1 in the main, with the robust line of
 * Theil and Sen, least squares, and Fieller's interval for the crossing.
 *
 * @serial exclude
 */
package dev.vibra.trend;
