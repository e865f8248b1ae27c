/**
 * One transform of a whole recording for many answers: levels of velocity and displacement in bands, envelope spectra,
 * the search for the most impulsive band. Start at {@link dev.vibra.record.WholeRecord}; {@link
 * dev.vibra.record.RecordPlan} is the same for embedders, one per thread, and allocates nothing. What is computed on
 * the lines stands with its kind: {@link dev.vibra.integration.MotionPlan}, {@link
 * dev.vibra.envelope.EnvelopeSpectrumPlan}, {@link dev.vibra.bandmap.DyadicMapPlan}.
 *
 * @serial exclude
 */
package dev.vibra.record;
