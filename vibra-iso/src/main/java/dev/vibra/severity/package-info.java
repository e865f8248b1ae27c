/**
 * Vibration severity: which published criterion holds for a machine, and in which zone a level lies. Start at {@link
 * dev.vibra.severity.Severity}; the limits and the rules of the choice are rows of one text table, {@code criteria.txt}
 * beside these classes, to which {@link dev.vibra.severity.CriterionTables} adds tables of your own. Follows ISO
 * 20816-3:2022, ISO 10816-7:2009 for pumps, ISO 14694:2003 for fans and ISO 10816-1:1995, and on request other
 * standards for one kind of machine, whose values are taken from public secondary sources with their confidence said in
 * each verdict.
 *
 * @serial exclude
 */
package dev.vibra.severity;
