package dev.vibra.docs.pages;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Stands in for {@link System#out} while a page runs; the local engine of JShell knows no other way. */
final class CapturedOutput implements AutoCloseable {
    /** Enough for every page that a person reads; an endless loop must not fill the memory. */
    static final int LIMIT = 1_000_000;

    private final PrintStream former = System.out;
    private final Limited bytes = new Limited();

    CapturedOutput() {
        System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    }

    /** Returns what was printed since the last call. */
    String take() {
        synchronized (bytes) {
            String text = bytes.kept.toString(StandardCharsets.UTF_8);
            bytes.kept.reset();
            return text;
        }
    }

    @Override
    public void close() {
        System.setOut(former);
    }

    /** Throws out of the statement that prints, which ends it. */
    private static final class Limited extends OutputStream {
        private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

        @Override
        public synchronized void write(int b) {
            write(new byte[] {(byte) b}, 0, 1);
        }

        @Override
        public synchronized void write(byte[] b, int offset, int length) {
            if (kept.size() + length > LIMIT) {
                throw new IllegalStateException("page printed more than " + LIMIT + " bytes in one block");
            }
            kept.write(b, offset, length);
        }
    }
}
