package dev.vibra.machine;

import java.io.Serializable;
import java.util.function.Consumer;

/** Fields that a {@code with} chain writes once, before the value that holds them is handed out. */
abstract class Facts implements Serializable, Cloneable {
    private static final long serialVersionUID = 1;

    /** Returns a copy of some facts with a change. */
    @SuppressWarnings("unchecked")
    static <F extends Facts> F changed(F facts, Consumer<F> change) {
        try {
            F copy = (F) ((Facts) facts).clone();
            change.accept(copy);
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }
}
