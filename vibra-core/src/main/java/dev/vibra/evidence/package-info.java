/**
 * What a result says beside its numbers: {@link dev.vibra.evidence.Remark} for a doubt with its figure and its limit,
 * {@link dev.vibra.evidence.Confidence} for how far the source of a limit can be relied on. Start at the remarks of a
 * recording check. The terms are the library's own.
 *
 * @serial exclude
 */
package dev.vibra.evidence;
