package dev.vibra.docs.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * An input that is bytes, so that a part of it can be tried too.
 *
 * @param how what is done with the bytes, in words
 * @param bytes the bytes
 * @param action what is done with the bytes
 */
record ByteInput(String how, byte[] bytes, Action action) implements Target.Input {
    /** Does something with bytes and names the outcome. */
    interface Action {
        String with(byte[] bytes) throws Exception;
    }

    @Override
    public String shown() {
        return how + ", " + bytes.length + " bytes: " + Shown.escaped(new String(bytes,
                StandardCharsets.ISO_8859_1), 600);
    }

    @Override
    public long size() {
        return bytes.length;
    }

    @Override
    public void attempt(Consumer<String> outcomes) throws Exception {
        outcomes.accept(action.with(bytes));
    }

    /** Without the part of the given number, of so many equal parts; empty if parts would be smaller than a byte. */
    Optional<ByteInput> without(int part, int parts) {
        if (parts > bytes.length) {
            return Optional.empty();
        }
        int from = (int) ((long) bytes.length * part / parts);
        int to = (int) ((long) bytes.length * (part + 1) / parts);
        byte[] rest = Arrays.copyOf(bytes, bytes.length - (to - from));
        System.arraycopy(bytes, to, rest, from, bytes.length - to);
        return Optional.of(new ByteInput(how, rest, action));
    }
}
