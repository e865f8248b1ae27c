/**
 * Figures of a survey as PNG pictures of double resolution: waveform, spectra with the lines that carry evidence, and
 * the severity of each point on the scale of its zones. Start at {@link dev.vibra.docs.survey.chart.SpectrumFigure};
 * every axis is labelled with quantity and unit. Colours follow M. Okabe and K. Ito, Color Universal Design (2008), and
 * nothing is told by colour alone.
 */
package dev.vibra.docs.survey.chart;
