package dev.vibra.measuring;

/** How the shaft of a machine lies. */
public enum Orientation {
    /** Shaft lies level. */
    HORIZONTAL,
    /** Shaft stands upright. */
    VERTICAL
}
