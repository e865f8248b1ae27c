package dev.vibra.docs.survey.demo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The demonstration machine as it is packed with the program. */
public final class DemoMachine {
    /** Name of the folder beside which the survey of the demonstration machine is written. */
    public static final String FOLDER = "vibra-demo";

    private static final List<String> FILES = List.of("machine.json", "fe-h.wav", "fe-v.wav", "fe-a.wav", "de-h.wav",
            "de-v.wav", "de-a.wav", "m-de-h.wav", "m-de-v.wav", "m-de-a.wav", "m-nde-h.wav", "tacho.wav",
            "m-tacho.wav", "down-fe-h.wav", "down-fe-v.wav", "down-tacho.wav");
    private static final List<String> VISITS = List.of("2025-03-12", "2025-04-09", "2025-05-07", "2025-06-04",
            "2025-07-02", "2025-07-30", "2025-08-27", "2025-09-24", "2025-10-22", "2025-11-19", "2025-12-17",
            "2026-01-14", "2026-02-11");

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

    static void remove(Path folder) throws IOException {
        List<Path> inside;
        try (var walk = Files.walk(folder)) {
            inside = walk.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : inside) {
            Files.delete(path);
        }
    }

    /**
     * Copies machine description, recordings and earlier results into a folder.
     *
     * @param folder an existing folder; files of the same names are replaced
     * @throws IOException if a file can't be written
     */
    public static void unpack(Path folder) throws IOException {
        for (String name : files()) {
            try (InputStream in = DemoMachine.class.getResourceAsStream(name)) {
                if (in == null) {
                    throw new IOException("the program is incomplete: " + name + " is missing");
                }
                Path file = folder.resolve(name);
                Files.createDirectories(file.getParent());
                Files.write(file, in.readAllBytes());
            }
        }
    }

    /** All that is packed, as paths below this class. */
    static List<String> files() {
        return Stream.concat(FILES.stream(), VISITS.stream().map(day -> "earlier/" + day + ".json")).toList();
    }
}
