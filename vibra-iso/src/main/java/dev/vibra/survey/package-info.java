/**
 * The survey of a whole machine: recordings and a machine description in; levels, severity, findings, one condition and
 * advice out, with no file touched. Start at {@link dev.vibra.survey.Survey}. The stages follow ISO 13374-1:2003
 * (health assessment, advisory generation).
 *
 * @serial exclude
 */
package dev.vibra.survey;
