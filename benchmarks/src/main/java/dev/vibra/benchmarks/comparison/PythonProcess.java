package dev.vibra.benchmarks.comparison;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** The interpreter beside this program, and what it is asked; see the script for the words. */
final class PythonProcess implements AutoCloseable {
    /**
     * One thread, as here; and an allocator that keeps what it has got instead of asking the system for each large
     * array anew, which makes SciPy a third faster.
     */
    private static final Map<String, String> ENVIRONMENT = Map.of("OPENBLAS_NUM_THREADS", "1", "OMP_NUM_THREADS", "1",
            "MKL_NUM_THREADS", "1", "MALLOC_MMAP_THRESHOLD_", "33554432", "MALLOC_TRIM_THRESHOLD_", "1073741824",
            "MALLOC_TOP_PAD_", "67108864", "PYTHONDONTWRITEBYTECODE", "1");
    private static final String NEEDED =
            "python3 with SciPy 1.10 or newer is needed (another interpreter: -Dpython=...): ";

    /** There is no interpreter with what is needed. */
    static final class Missing extends IOException {
        private static final long serialVersionUID = 1;

        Missing(String message) {
            super(message);
        }
    }

    private final Process process;
    private final DataInputStream answers;
    private final Writer questions;
    private final String versions;
    private final Set<String> items;

    PythonProcess(String python, Path script, Path folder) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(python, script.toString(), folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().putAll(ENVIRONMENT);
        try {
            process = builder.start();
        } catch (IOException e) {
            throw new Missing(NEEDED + e.getMessage());
        }
        answers = new DataInputStream(new BufferedInputStream(process.getInputStream()));
        questions = process.outputWriter(StandardCharsets.UTF_8);
        versions = line();
        if (!versions.startsWith("Python")) {
            throw new Missing(NEEDED + versions);
        }
        items = Set.of(ask("items").split(" "));
    }

    /** Versions of interpreter and packages. */
    String versions() {
        return versions;
    }

    /** Work of one kind that the interpreter does. */
    Side side(String name) {
        return new Side() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public boolean has(String task) {
                return items.contains(name + ":" + task);
            }

            @Override
            public double[] seconds(String task, double span) {
                return Stream.of(ask("seconds " + name + ":" + task + " " + span).split(" "))
                        .mapToDouble(Double::parseDouble).toArray();
            }

            @Override
            public double[] result(String task) {
                return values(Integer.parseInt(ask("result " + name + ":" + task)));
            }
        };
    }

    private String ask(String question) {
        try {
            questions.write(question + "\n");
            questions.flush();
            return line();
        } catch (IOException e) {
            throw new UncheckedIOException("asked: " + question, e);
        }
    }

    private String line() throws IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        for (int b = answers.read(); b != '\n'; b = answers.read()) {
            if (b < 0) {
                throw new IOException("the interpreter ended; its message stands above");
            }
            text.write(b);
        }
        return text.toString(StandardCharsets.UTF_8);
    }

    private double[] values(int count) {
        double[] values = new double[count];
        try {
            ByteBuffer.wrap(answers.readNBytes(Double.BYTES * count)).order(ByteOrder.LITTLE_ENDIAN).asDoubleBuffer()
                    .get(values);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return values;
    }

    /** Ends the interpreter: it stops where its input does. */
    @Override
    public void close() throws IOException {
        questions.close();
    }
}
