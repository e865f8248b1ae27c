/**
 * What of the values of a machine's points counts as a symptom: typed questions, asked at the places where a fault can
 * sit, and answered by seen, not seen or not measured. Start at {@link dev.vibra.symptom.Questions}, which makes a
 * question of its text in the table of faults; a symptom of a new kind is one record and one row there. Terms follow
 * ISO 13372:2012 (symptom: perception that a fault may be present, no proof) and ISO 13379-1:2012.
 *
 * @serial exclude
 */
package dev.vibra.symptom;
