/**
 * Inputs that nobody chose: recordings, machine descriptions, whole surveys and calls of the public API, made from a
 * seed and mutated. Start at {@link dev.vibra.docs.fuzz.Fuzzer}; {@code FuzzTest} runs a fixed part of them with every
 * build, {@code FuzzRun} as many as are wanted and one again by its seed, {@code SoakRun} hours of signal.
 */
package dev.vibra.docs.fuzz;
