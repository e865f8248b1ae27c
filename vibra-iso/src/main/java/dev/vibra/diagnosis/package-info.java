/**
 * What may be wrong with a machine, on what evidence, and which measurement would decide. Start at
 * {@link dev.vibra.diagnosis.Diagnosis}, or at {@link dev.vibra.diagnosis.Faults} for the reference of patterns; a new fault
 * is rows of the table in {@code dev.vibra.fault} and a forward model. Terms follow ISO 13379-1:2012 and ISO 13372:2012
 * (diagnostics: symptom, hypothesis, confidence).
 *
 * @serial exclude
 */
package dev.vibra.diagnosis;
