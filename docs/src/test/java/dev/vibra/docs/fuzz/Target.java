package dev.vibra.docs.fuzz;

import java.util.function.Consumer;

/** Something that is fed with inputs. */
interface Target {
    /** As in {@code -Dfuzz.target=NAME}. */
    String name();

    /** Makes an input of nothing but the random choices, so that its seed brings it back. */
    Input input(Dice dice);

    /** What one input may cost. */
    Cost limit();

    /** One input; whatever is thrown by an attempt is a finding. */
    interface Input {
        /** The input for people: short, printable, enough to see what it is. */
        String shown();

        /** Its size in bytes, which its cost may depend on. */
        long size();

        /**
         * Tries it and names the outcome, or all of them, in a few words; further findings are suppressed in the first.
         */
        void attempt(Consumer<String> outcomes) throws Exception;
    }

    /**
     * Bounds of one input.
     *
     * @param bytes allocated, whatever the size of the input
     * @param bytesPerByte allocated on top for each byte of the input
     * @param seconds processor time
     */
    record Cost(long bytes, long bytesPerByte, double seconds) {}
}
