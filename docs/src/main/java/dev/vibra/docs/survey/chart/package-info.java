/**
 * Figures of a survey, drawn once for a page as SVG and for a file as PNG: waveform, spectra with the lines that carry
 * evidence, the severity of each point on the scale of its zones, vectors, curves of any kind. Start at
 * {@link dev.vibra.docs.survey.chart.SpectrumFigure}; every axis is labelled with quantity and unit. Colours follow
 * M. Okabe and K. Ito, Color Universal Design (2008), and nothing is told by colour alone.
 */
package dev.vibra.docs.survey.chart;
