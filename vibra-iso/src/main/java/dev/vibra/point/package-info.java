/**
 * One recording at one measuring point, as a chain of values: is it sound, how fast did the shaft turn, which levels
 * and lines does it show, what do the bearing's elements say, which zone is it in. Start at
 * {@link dev.vibra.point.PointExamination}, which makes a {@link dev.vibra.point.PointSurvey} of a waveform. The stages
 * follow ISO 13374-1:2003 (data acquisition to state detection).
 *
 * @serial exclude
 */
package dev.vibra.point;
