package dev.vibra.channel;

/** What a reading of a channel is good for. Only a sound one is held against alarm limits. */
public enum ReadingQuality {
    /** At least half of the interval was measured, behind settled filters, and nothing speaks against it. */
    SOUND,
    /** More than half of the interval is missing, or went by while filters settled. */
    INCOMPLETE,
    /** All samples are equal: a dead sensor or cable reads like a machine at rest. */
    NO_SIGNAL,
    /** Samples reached the full scale; clipped acceleration gives wrong levels, velocity above all. */
    OVERLOADED
}
