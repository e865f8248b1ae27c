/**
 * Change against a baseline, alarm and trip setting, and the watching of a level that flickers. Start at {@link
 * dev.vibra.alarm.AlarmSetting} for the settings and {@link dev.vibra.alarm.Change} for the question whether something
 * has changed; {@link dev.vibra.alarm.AlarmEvaluator} watches a stream of readings. Follows ISO 20816-1:2016 (criterion
 * II, change) and ISO 20816-3:2022 (ALARM and TRIP); not a machine protection system in itself.
 *
 * @serial exclude
 */
package dev.vibra.alarm;
