package dev.vibra.machine;

import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.function.Consumer;

/** Fields that a {@code with} chain writes once, before the value that holds them is handed out. */
abstract class Facts implements Serializable, Cloneable {
    private static final long serialVersionUID = 1;

    /** Copies the collections and checks all values, before a changed copy or one from a stream is handed out. */
    abstract void check();

    static String textOrNull(String name, String text) {
        return text == null ? null : Require.notBlank(name, text);
    }

    static void countOrNull(String name, Integer count) {
        if (count != null) {
            Require.atLeast(name, count, 1);
        }
    }

    final Object readResolve() {
        return changed(this, same -> {});
    }

    /** Returns a copy of some facts with a change. */
    @SuppressWarnings("unchecked")
    static <F extends Facts> F changed(F facts, Consumer<F> change) {
        try {
            F copy = (F) ((Facts) facts).clone();
            change.accept(copy);
            copy.check();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }
}
