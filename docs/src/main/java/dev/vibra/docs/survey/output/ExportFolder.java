package dev.vibra.docs.survey.output;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Folders of figures and traces beside a report, each exchanged as a whole. New files are collected in a hidden folder;
 * a finished folder has a list of digests, by which a later run knows its files. A folder that holds anything else, or
 * one of these files with other bytes, is somebody's own and left alone.
 */
final class ExportFolder implements AutoCloseable {
    /** The list in each folder, as {@code sha256sum --check} reads it. */
    static final String LIST = "digests.txt";

    private static final String HEAD = "# Vibra survey, files of run ";
    private static final Pattern LINE = Pattern.compile("([0-9a-f]{64})  ([A-Za-z0-9_.-]+)");
    private static final Pattern STAGED = Pattern.compile("\\.vibra-export-[0-9a-f]{32}");
    private static final String BEFORE = "before-";

    private final Disk disk = new Disk();
    private final Path target;
    private final Set<String> wanted;
    private final Set<String> all;
    private final boolean made;
    private final Path staged;
    private final FileChannel lock;
    private final Map<String, Map<String, String>> digests = new TreeMap<>();

    private ExportFolder(Path target, Set<String> wanted, Set<String> all) throws IOException {
        this.target = target;
        this.wanted = wanted;
        this.all = all;
        made = disk.makeFolder(target);
        byte[] random = new byte[16];
        new SecureRandom().nextBytes(random);
        staged = target.resolve(".vibra-export-" + HexFormat.of().formatHex(random));
        Files.createDirectory(staged);
        for (String folder : wanted) {
            Files.createDirectory(staged.resolve(folder));
            digests.put(folder, new TreeMap<>());
        }
        lock = FileChannel.open(staged.resolve(FolderLock.NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        lock.lock();
    }

    /**
     * Begins an export; nothing is changed but for the hidden folder and what a run that died has left.
     *
     * @param target folder of the report
     * @param wanted names of the folders that are going to be written
     * @param all names of all folders that an export may have
     * @param inputs files that the survey reads
     * @throws ForeignFileException if one of the wanted folders is there and not wholly of an earlier export, or holds
     *     a file that the survey reads
     */
    static ExportFolder begin(Path target, Set<String> wanted, Set<String> all, Collection<Path> inputs)
            throws IOException {
        if (Files.isDirectory(target)) {
            OutputFolder.alone(target, () -> recover(target, all));
        }
        for (String folder : wanted) {
            requireOurs(target.resolve(folder));
        }
        for (Path input : inputs) {
            for (String folder : all) {
                if (Files.exists(input) && Files.exists(target.resolve(folder))
                        && input.toRealPath().startsWith(target.resolve(folder).toRealPath())) {
                    throw new ForeignFileException(target.resolve(folder) + " would be exchanged, and the survey reads "
                            + input.getFileName() + " in it; name another folder with --out");
                }
            }
        }
        return new ExportFolder(target, wanted, all);
    }

    private static void requireOurs(Path folder) throws IOException {
        Optional<Path> foreign = foreign(folder);
        if (foreign.isPresent()) {
            throw new ForeignFileException(foreign.get() + " is nothing that an earlier export has written; move it"
                    + " away or name another folder with --out");
        }
    }

    /** Returns what in a place is not ours: it stands on no list, or is no longer what was written. */
    private static Optional<Path> foreign(Path folder) throws IOException {
        if (Files.notExists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.of(folder);
        }
        Map<String, String> known = listed(folder);
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().filter(file -> !(Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    && (file.getFileName().toString().equals(LIST) && !known.isEmpty()
                    || Digest.ofFile(file).equals(known.get(file.getFileName().toString()))))).findFirst();
        }
    }

    private static Map<String, String> listed(Path folder) throws IOException {
        Path list = folder.resolve(LIST);
        Map<String, String> listed = new LinkedHashMap<>();
        if (!Files.isRegularFile(list, LinkOption.NOFOLLOW_LINKS)) {
            return listed;
        }
        List<String> lines = new String(Files.readAllBytes(list), StandardCharsets.UTF_8).lines().toList();
        for (String line : !lines.isEmpty() && lines.get(0).startsWith(HEAD) ? lines : List.<String>of()) {
            Matcher parts = LINE.matcher(line);
            if (parts.matches()) {
                listed.put(parts.group(2), parts.group(1));
            }
        }
        return listed;
    }

    /** Writes a file, or writes it anew; several threads may do so at a time. */
    void write(String folder, String name, Content content) throws IOException {
        Map<String, String> noted = new LinkedHashMap<>();
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(staged.resolve(folder)
                .resolve(name)), 1 << 16)) {
            Digest.noted(name, noted, content).writeTo(out);
        }
        synchronized (digests) {
            digests.get(folder).putAll(noted);
        }
    }

    /** Puts the new folders in their places; earlier ones that aren't written now go too, if they are ours. */
    void finish(String run) throws IOException {
        for (String folder : wanted) {
            String list = HEAD + run + "\n" + digests.get(folder).entrySet().stream()
                    .map(file -> file.getValue() + "  " + file.getKey() + "\n").collect(Collectors.joining());
            disk.write(staged.resolve(folder).resolve(LIST), out -> out.write(list.getBytes(StandardCharsets.UTF_8)));
            disk.sync(staged.resolve(folder));
        }
        OutputFolder.alone(target, this::exchange);
    }

    private void exchange() throws IOException {
        for (String folder : wanted) {
            requireOurs(target.resolve(folder));
        }
        for (String folder : all) {
            Path place = target.resolve(folder);
            if (Files.exists(place, LinkOption.NOFOLLOW_LINKS) && foreign(place).isEmpty()) {
                disk.move(place, staged.resolve(BEFORE + folder));
            }
            if (wanted.contains(folder)) {
                disk.move(staged.resolve(folder), place);
            }
        }
        disk.sync(target);
    }

    /** Takes the hidden folder away, and the target if it was made for nothing. */
    @Override
    public void close() throws IOException {
        lock.close();
        remove(staged, all);
        if (made) {
            deleteIfEmpty(target);
        }
    }

    /** What runs that died have left: an earlier folder goes back to its place, the rest away. */
    private static void recover(Path target, Set<String> all) throws IOException {
        List<Path> left;
        try (Stream<Path> files = Files.list(target)) {
            left = files.filter(path -> STAGED.matcher(path.getFileName().toString()).matches()
                    && Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS) && isLeft(path)).toList();
        }
        for (Path path : left) {
            for (String folder : all) {
                Path before = path.resolve(BEFORE + folder);
                if (Files.isDirectory(before, LinkOption.NOFOLLOW_LINKS)
                        && Files.notExists(target.resolve(folder), LinkOption.NOFOLLOW_LINKS)) {
                    new Disk().move(before, target.resolve(folder));
                }
            }
            remove(path, all);
        }
    }

    /** True if nobody holds its lock. */
    private static boolean isLeft(Path path) {
        try (FileChannel channel = FileChannel.open(path.resolve(FolderLock.NAME), StandardOpenOption.WRITE,
                StandardOpenOption.CREATE, LinkOption.NOFOLLOW_LINKS); FileLock free = channel.tryLock()) {
            return free != null;
        } catch (IOException | OverlappingFileLockException e) {
            return false;
        }
    }

    /** Takes away what is known to be ours; a folder in which something else turned up stays. */
    private static void remove(Path staged, Set<String> all) throws IOException {
        for (String folder : all) {
            Path before = staged.resolve(BEFORE + folder);
            for (String name : listed(before).keySet()) {
                Files.deleteIfExists(before.resolve(name));
            }
            Files.deleteIfExists(before.resolve(LIST));
            deleteIfEmpty(before);
            Path next = staged.resolve(folder);
            if (Files.isDirectory(next, LinkOption.NOFOLLOW_LINKS)) {
                try (Stream<Path> files = Files.list(next)) {
                    for (Path file : files.toList()) {
                        Files.delete(file);
                    }
                }
                deleteIfEmpty(next);
            }
        }
        Files.deleteIfExists(staged.resolve(FolderLock.NAME));
        deleteIfEmpty(staged);
    }

    private static void deleteIfEmpty(Path folder) throws IOException {
        try {
            Files.deleteIfExists(folder);
        } catch (DirectoryNotEmptyException e) {
            // Something in it isn't ours.
        }
    }
}
