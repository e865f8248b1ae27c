package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes a set of files into a folder, all of them or none. Everything is written beside its place first; only then are
 * the files moved there, each in one step, and a move that fails takes back those before it.
 */
public final class OutputFolder {
    private final Path folder;
    private final Placing placing;
    private final List<Path> leftovers = new ArrayList<>();
    private final Map<Path, Path> replaced = new LinkedHashMap<>();
    private final List<Path> placed = new ArrayList<>();

    private OutputFolder(Path folder, Placing placing) {
        this.folder = folder;
        this.placing = placing;
    }

    /**
     * Writes files into a folder that is made if it is not there.
     *
     * @param folder folder to write to
     * @param files content by file name
     * @throws IOException if a file can't be written; the folder then is as it was before
     */
    public static void write(Path folder, Map<String, byte[]> files) throws IOException {
        write(folder, files, (from, to) -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE));
    }

    /** Puts a finished file in its place. */
    interface Placing {
        void move(Path from, Path to) throws IOException;
    }

    static void write(Path folder, Map<String, byte[]> files, Placing placing) throws IOException {
        boolean made = Files.notExists(folder);
        Files.createDirectories(folder);
        OutputFolder output = new OutputFolder(folder, placing);
        try {
            output.writeAll(files);
            output.tidy();
        } catch (IOException e) {
            output.takeBack(e);
            attempt(output::tidy, e);
            if (made) {
                attempt(() -> Files.deleteIfExists(folder), e);
            }
            throw e;
        }
    }

    private void writeAll(Map<String, byte[]> files) throws IOException {
        Map<Path, Path> written = new LinkedHashMap<>();
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path target = folder.resolve(file.getKey());
            if (Files.isDirectory(target)) {
                throw new IOException(target + " is a folder; a file of that name is to be written");
            }
            Path part = beside(target, ".part");
            Files.write(part, file.getValue(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            written.put(part, target);
        }
        for (Map.Entry<Path, Path> file : written.entrySet()) {
            place(file.getKey(), file.getValue());
        }
    }

    private void place(Path part, Path target) throws IOException {
        if (Files.exists(target)) {
            Path before = beside(target, ".before");
            Files.copy(target, before, StandardCopyOption.COPY_ATTRIBUTES);
            replaced.put(target, before);
        }
        placing.move(part, target);
        placed.add(target);
    }

    /** A name in the same folder, so that the move stays within one file system. */
    private Path beside(Path target, String ending) {
        Path path = target.resolveSibling("." + target.getFileName() + "-" + ProcessHandle.current().pid() + ending);
        leftovers.add(path);
        return path;
    }

    private void takeBack(IOException cause) {
        for (Path target : placed) {
            Path before = replaced.get(target);
            if (before == null) {
                attempt(() -> Files.deleteIfExists(target), cause);
            } else {
                attempt(() -> Files.move(before, target, StandardCopyOption.ATOMIC_MOVE), cause);
            }
        }
    }

    private void tidy() throws IOException {
        for (Path path : leftovers) {
            Files.deleteIfExists(path);
        }
    }

    private interface Action {
        void run() throws IOException;
    }

    private static void attempt(Action action, IOException cause) {
        try {
            action.run();
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }
}
