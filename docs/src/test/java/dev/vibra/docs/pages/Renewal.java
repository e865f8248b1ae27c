package dev.vibra.docs.pages;

import java.nio.file.Path;
import java.util.List;

/** A change that makes the page say what the session gave. */
sealed interface Renewal {
    /** Puts other lines in the place of some; {@code firstLine} counts from 1. */
    record Lines(int firstLine, int count, List<String> replacement) implements Renewal {}

    /** Puts the figure that the session made over the committed one. */
    record Figure(Path made, Path committed) implements Renewal {}
}
