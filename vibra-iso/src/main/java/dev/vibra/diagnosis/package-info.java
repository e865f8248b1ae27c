/**
 * What may be wrong with a machine, on what evidence, and which measurement would decide. Start at
 * {@link dev.vibra.diagnosis.Hypotheses}, the list of what is looked for; a new fault is a class of its own and a row
 * there. Terms follow ISO 13379-1:2012 and ISO 13372:2012 (diagnostics: symptom, hypothesis, confidence).
 *
 * @serial exclude
 */
package dev.vibra.diagnosis;
