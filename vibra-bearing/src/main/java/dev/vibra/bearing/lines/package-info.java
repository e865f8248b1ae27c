/**
 * Lines of an envelope spectrum held against noise, singly and as families of one rate. Start at {@link
 * dev.vibra.bearing.lines.EnvelopeLines}. The floor and the law of noise are those of {@link dev.vibra.lines}.
 *
 * @serial exclude
 */
package dev.vibra.bearing.lines;
