package dev.vibra.docs.survey.demo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The demonstration machine as it is packed with the program. */
public final class DemoMachine {
    /** Name of the folder beside which the survey of the demonstration machine is written. */
    public static final String FOLDER = "vibra-demo";

    private static final List<String> FILES =
            List.of("machine.json", "fe-h.wav", "fe-v.wav", "fe-a.wav", "de-h.wav", "de-v.wav");

    private DemoMachine() {}

    /**
     * What is done in a folder.
     *
     * @param <T> what comes of it
     */
    @FunctionalInterface
    public interface Work<T> {
        /**
         * Does it.
         *
         * @param folder the folder
         * @return what comes of it
         * @throws IOException if a file can't be read or written
         */
        T in(Path folder) throws IOException;
    }

    /**
     * Unpacks the machine to a folder for temporary files, does something there, and removes the folder.
     *
     * @param work what is done
     * @param <T> what comes of it
     * @return what comes of it
     * @throws IOException if a file can't be read or written
     */
    public static <T> T unpacked(Work<T> work) throws IOException {
        Path folder = Files.createTempDirectory("vibra-demo");
        try {
            unpack(folder);
            return work.in(folder);
        } finally {
            remove(folder);
        }
    }

    private static void remove(Path folder) throws IOException {
        List<Path> files;
        try (var list = Files.list(folder)) {
            files = list.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(folder);
    }

    /**
     * Copies machine description and recordings into a folder.
     *
     * @param folder an existing folder; files of the same names are replaced
     * @throws IOException if a file can't be written
     */
    public static void unpack(Path folder) throws IOException {
        for (String name : FILES) {
            try (InputStream in = DemoMachine.class.getResourceAsStream(name)) {
                if (in == null) {
                    throw new IOException("the program is incomplete: " + name + " is missing");
                }
                Files.write(folder.resolve(name), in.readAllBytes());
            }
        }
    }
}
