package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Exchanges the set of files in a folder for a new one. The new files are written and synced in a folder of their own
 * beside their places, which then gets its final name: from there on the exchange is known to have begun. The old files
 * are moved into it, the sealing one first, and the new ones out of it, the sealing one last. So whatever stands beside
 * a seal is of the same run, wherever a process is killed; the next one that writes takes an unfinished exchange back.
 */
public final class OutputFolder {
    private static final Pattern STAGED = Pattern.compile("\\.vibra-(survey|score)-[0-9a-f]{32}(\\.part)?");
    private static final String PART = ".part";

    private final Path folder;
    private final Disk disk;

    private OutputFolder(Path folder, Disk disk) {
        this.folder = folder;
        this.disk = disk;
    }

    /**
     * Checks that a set would replace nothing but an earlier one.
     *
     * @param folder folder to write to, which need not be there
     * @param set the set
     * @param inputs files that the survey reads, which must not be overwritten whatever they hold
     * @throws ForeignFileException if a file in a place of the set is none of ours, or is one of the inputs
     * @throws IOException if a folder is in such a place, or nothing can be written into the folder
     */
    public static void check(Path folder, OutputSet set, Collection<Path> inputs) throws IOException {
        if (Files.exists(folder)) {
            Disk disk = new Disk();
            disk.makeFolder(folder);
            new OutputFolder(folder, disk).alone(() -> look(folder, set, inputs));
        }
    }

    private static void look(Path folder, OutputSet set, Collection<Path> inputs) throws IOException {
        for (String name : set.names()) {
            Path target = folder.resolve(name);
            if (Files.isDirectory(target)) {
                throw new IOException(target + " is a folder; a file of that name is to be written");
            }
            for (Path input : inputs) {
                if (Files.exists(target) && Files.exists(input) && Files.isSameFile(target, input)) {
                    throw new ForeignFileException(target + " would be overwritten, and the survey reads it as "
                            + input.getFileName() + "; name another folder with --out");
                }
            }
            if (Files.exists(target, LinkOption.NOFOLLOW_LINKS) && !set.isOurs(name, target)) {
                throw new ForeignFileException(target + " would be overwritten, and it is no result of an earlier"
                        + " survey; move it away or name another folder with --out");
            }
        }
    }

    /**
     * Writes a set into a folder that is made if it is not there. One who writes into the same folder at the same time
     * waits; the last one stays.
     *
     * @param folder folder to write to
     * @param set the set
     * @param files content by file name, in the order of the set
     * @param inputs files that must not be overwritten
     * @throws ForeignFileException as {@link #check} says
     * @throws IOException if a file can't be written; the folder then is as it was before
     */
    public static void write(Path folder, OutputSet set, Map<String, Content> files, Collection<Path> inputs)
            throws IOException {
        write(folder, set, files, inputs, new Disk());
    }

    static void write(Path folder, OutputSet set, Map<String, Content> files, Collection<Path> inputs, Disk disk)
            throws IOException {
        boolean made = disk.makeFolder(folder);
        OutputFolder output = new OutputFolder(folder, disk);
        try {
            output.alone(() -> {
                look(folder, set, inputs);
                output.recover();
                look(folder, set, inputs);
                output.exchange(set, files);
            });
        } catch (IOException | RuntimeException | Error e) {
            if (made) {
                attempt(() -> disk.delete(folder), e);
            }
            throw e;
        }
    }

    /** Acts on a folder that is there, while nobody else who writes results does. */
    static void alone(Path folder, Action action) throws IOException {
        new OutputFolder(folder, new Disk()).alone(action);
    }

    /** Acts while nobody else does in this folder: else a file seems to be missing that is only on its way. */
    private void alone(Action action) throws IOException {
        // The one object that all threads of a process have in common for a folder, whatever class loader they use.
        synchronized (("dev.vibra.docs " + folder.toRealPath()).intern()) {
            FolderLock lock = FolderLock.of(folder, disk);
            try {
                action.run();
            } finally {
                lock.close();
            }
        }
    }

    /** Takes unfinished exchanges back and their leftovers away: whoever began them is dead, the lock is ours. */
    private void recover() throws IOException {
        List<Path> staged;
        try (Stream<Path> all = Files.list(folder)) {
            staged = all.filter(path -> STAGED.matcher(path.getFileName().toString()).matches() && Stream.of(path,
                    before(path), next(path)).allMatch(OutputFolder::isNoLink)).toList();
        }
        for (Path path : staged) {
            takeBack(path);
        }
    }

    /** A link could lead anywhere. */
    private static boolean isNoLink(Path path) {
        return Files.notExists(path, LinkOption.NOFOLLOW_LINKS) || Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS);
    }

    private void exchange(OutputSet set, Map<String, Content> files) throws IOException {
        byte[] random = new byte[16];
        new SecureRandom().nextBytes(random);
        Path staged = folder.resolve(".vibra-" + set.label() + "-" + HexFormat.of().formatHex(random));
        try {
            write(sibling(staged, PART), files);
            disk.move(sibling(staged, PART), staged);
            for (String name : reversed(set.names())) {
                moveIfThere(folder.resolve(name), before(staged).resolve(name));
            }
            for (String name : set.names()) {
                disk.sync(folder);
                disk.move(next(staged).resolve(name), folder.resolve(name));
            }
            disk.sync(folder);
        } catch (IOException | RuntimeException | Error e) {
            attempt(() -> takeBack(Files.exists(staged) ? staged : sibling(staged, PART)), e);
            throw e;
        }
        try {
            remove(staged);
        } catch (IOException e) {
            // The new set is whole; the next one who writes takes the rest away.
        }
    }

    private void write(Path unfinished, Map<String, Content> files) throws IOException {
        disk.makeFolder(before(unfinished));
        disk.makeFolder(next(unfinished));
        for (Map.Entry<String, Content> file : files.entrySet()) {
            disk.write(next(unfinished).resolve(file.getKey()), file.getValue());
        }
        disk.sync(next(unfinished));
        disk.sync(unfinished);
    }

    /** Puts the old files back unless the new set is sealed. Each step may be the last: the next one goes on there. */
    private void takeBack(Path staged) throws IOException {
        Matcher name = STAGED.matcher(staged.getFileName().toString());
        OutputSet set = OutputSet.labelled(name.matches() ? name.group(1) : "");
        if (name.group(2) == null && Files.exists(next(staged).resolve(set.seal()))) {
            for (String file : set.names()) {
                Path place = folder.resolve(file);
                if (Files.notExists(next(staged).resolve(file)) && set.isOurs(file, place)) {
                    disk.move(place, next(staged).resolve(file));
                }
                moveIfThere(before(staged).resolve(file), place);
            }
        }
        remove(staged);
    }

    /** Takes a staged set away, known as unfinished from the first step on. */
    private void remove(Path staged) throws IOException {
        Path rest = staged;
        if (!staged.toString().endsWith(PART)) {
            rest = sibling(staged, PART);
            disk.move(staged, rest);
        }
        for (Path inner : List.of(before(rest), next(rest))) {
            for (OutputSet set : OutputSet.values()) {
                for (String name : set.names()) {
                    disk.delete(inner.resolve(name));
                }
            }
            disk.delete(inner);
        }
        disk.delete(rest);
    }

    private void moveIfThere(Path from, Path to) throws IOException {
        if (Files.exists(from, LinkOption.NOFOLLOW_LINKS)) {
            disk.move(from, to);
        }
    }

    private static Path before(Path staged) {
        return staged.resolve("before");
    }

    private static Path next(Path staged) {
        return staged.resolve("next");
    }

    private static Path sibling(Path staged, String ending) {
        return staged.resolveSibling(staged.getFileName() + ending);
    }

    private static List<String> reversed(List<String> names) {
        List<String> reversed = new ArrayList<>(names);
        Collections.reverse(reversed);
        return reversed;
    }

    interface Action {
        void run() throws IOException;
    }

    private static void attempt(Action action, Throwable cause) {
        try {
            action.run();
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }
}
