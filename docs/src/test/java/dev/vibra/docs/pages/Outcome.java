package dev.vibra.docs.pages;

import java.util.Optional;

/**
 * What one statement gave: a value as JShell shows it, what it adds to the output of its block, an exception, or the
 * reason why it did not run.
 */
record Outcome(String source, Optional<String> value, Optional<String> prints, Optional<Thrown> thrown,
        Optional<String> broken) {
    /** An exception by its class and message. */
    record Thrown(String className, String message) {
        String simpleName() {
            return className.substring(Math.max(className.lastIndexOf('.'), className.lastIndexOf('$')) + 1);
        }

        @Override
        public String toString() {
            return simpleName() + ": " + message;
        }
    }

    static Outcome broken(String source, String reason) {
        return new Outcome(source, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(reason));
    }

    static Outcome thrown(String source, String className, String message) {
        return new Outcome(source, Optional.empty(), Optional.empty(), Optional.of(new Thrown(className, message)),
                Optional.empty());
    }
}
