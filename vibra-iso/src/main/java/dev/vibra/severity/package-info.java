/**
 * Vibration severity: which published criterion holds for a machine, and in which zone a level lies. Start at {@link
 * dev.vibra.severity.Severity}; the limits and the rules of the choice are rows of one text table, {@code criteria.txt}
 * beside these classes, to which {@link dev.vibra.severity.CriterionTables} adds tables of your own. Follows ISO
 * 20816-3:2022, ISO 10816-3:2009 and ISO 10816-1:1995, and on request standards for one kind of machine such as ISO
 * 10816-7:2009 and ISO 14694:2003, whose values are taken from public secondary sources with their confidence said in
 * each verdict.
 *
 * @serial exclude
 */
package dev.vibra.severity;
