/**
 * Faults as data: what can be wrong, by which symptoms it shows, and how often, counted from simulated machines. Start at
 * {@link dev.vibra.fault.FaultTable}; a new fault is a row of {@code faults.txt} and a forward model, its weights come
 * from counting. Terms follow ISO 13372:2012 and ISO 13379-1:2012 (from memory, unverified).
 *
 * @serial exclude
 */
package dev.vibra.fault;
