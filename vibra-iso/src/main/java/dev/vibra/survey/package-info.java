/**
 * The survey of a whole machine: recordings and a machine description in, levels, severity, bearing verdicts, findings
 * and
 * advice out, with no file touched. Start at {@link dev.vibra.survey.Survey}; descriptor names and units are those that
 * the
 * survey writes to its files. The stages follow ISO 13374-1:2003 (condition monitoring, data processing): from the
 * recording
 * to descriptors, state, health and advice.
 *
 * @serial exclude
 */
package dev.vibra.survey;
