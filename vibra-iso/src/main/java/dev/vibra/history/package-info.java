/**
 * The visits of a machine one after the other: how each number went, whether it reaches an alarm or a trip value, since
 * when it changes, and when it may reach its limit.
 *
 * @serial exclude
 * @see "ISO 13372:2012 (baseline, alarm, trip), ISO 13381-1 (prognosis with confidence)"
 */
package dev.vibra.history;
