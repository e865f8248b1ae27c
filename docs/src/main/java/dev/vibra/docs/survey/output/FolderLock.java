package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.Optional;

/**
 * Lock on a folder while a set is exchanged: among processes by a lock on a file in it, which a process that dies gives
 * up; among threads of one process by the caller, since a process has such a lock only once.
 */
final class FolderLock {
    static final String NAME = ".vibra-lock";
    private static final int TRIES = 6000;
    private static final int PAUSE_MILLISECONDS = 20;
    private static final int MARKS = 1 << 20;

    private final FileChannel channel;
    private final Path file;
    private final Disk disk;

    private FolderLock(FileChannel channel, Path file, Disk disk) {
        this.channel = channel;
        this.file = file;
        this.disk = disk;
    }

    /** Waits until nobody else writes into the folder, two minutes at most; makes the folder if it isn't there. */
    static FolderLock of(Path folder, Disk disk) throws IOException {
        for (int i = 0; i < TRIES; i++) {
            Optional<FolderLock> lock = attempt(folder, disk);
            if (lock.isPresent()) {
                return lock.get();
            }
            pause();
        }
        throw new IOException("another survey has been writing into " + folder + " for two minutes; try again later");
    }

    private static Optional<FolderLock> attempt(Path folder, Disk disk) throws IOException {
        Path file = folder.resolve(NAME);
        FileChannel channel;
        try {
            channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                    LinkOption.NOFOLLOW_LINKS);
        } catch (NoSuchFileException e) { // one that failed took away the folder that it had made
            disk.makeFolder(folder);
            return Optional.empty();
        }
        try {
            if (channel.tryLock() != null && isInPlace(file, channel)) {
                return Optional.of(new FolderLock(channel, file, disk));
            }
        } catch (OverlappingFileLockException e) {
            // Another class loader of this process has it.
        } catch (IOException e) {
            channel.close();
            throw new IOException(folder + ": its file system gives no lock; name a folder on another with --out", e);
        }
        channel.close();
        return Optional.empty();
    }

    /**
     * The one who had the lock before may have taken the file away: then this is a lock on nothing. The size tells; to
     * open the file a second time would give the lock up.
     */
    private static boolean isInPlace(Path file, FileChannel channel) throws IOException {
        int mark = 1 + new SecureRandom().nextInt(MARKS);
        channel.truncate(0);
        channel.write(ByteBuffer.allocate(1), mark - 1L);
        try {
            return Files.size(file) == mark;
        } catch (NoSuchFileException e) {
            return false;
        }
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(PAUSE_MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while another survey was writing", e);
        }
    }

    /** Takes the file away and gives the lock up. */
    void close() throws IOException {
        try (channel) {
            disk.delete(file);
        } catch (IOException e) {
            // An empty file more stays; the lock is given up.
        }
    }
}
