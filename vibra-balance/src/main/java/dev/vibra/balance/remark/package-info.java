/**
 * What a result says beside its numbers: doubts with their figures, and cautions for people near the machine. Start at
 * {@link dev.vibra.balance.remark.Remark} and {@link dev.vibra.balance.remark.Caution}. The cautions follow the risks
 * that ISO 21940-13 (balancing in situ) has a crew consider; wording and choice are the library's own.
 *
 * @serial exclude
 */
package dev.vibra.balance.remark;
