package dev.vibra.state;

/** How a block of a stream came after what had come before. */
public enum Arrival {
    /** It is the first, or begins where the last one ended. */
    IN_ORDER,
    /** Samples are missing before it: what filters had in them is thrown away, they settle anew. */
    GAP,
    /** Its beginning had come already; only the new part was taken in. */
    OVERLAP,
    /** All of it had come already, or belongs before that: nothing was taken in. */
    LATE
}
