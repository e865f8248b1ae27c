package dev.vibra.docs.survey.output;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** All that {@link OutputFolder} does to the disk, step by step, so that a test can end it at every step. */
class Disk {
    /** Makes a folder and those above it; returns true if it wasn't there. */
    boolean makeFolder(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return false;
        }
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException e) {
            throw new IOException(folder + " is a file; a folder is needed", e);
        }
        return true;
    }

    /** Writes a new file and waits until it is on the disk. */
    void write(Path file, Content content) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            content.writeTo(out);
            out.flush();
            channel.force(true);
        }
    }

    /** Moves within one file system, in one step. */
    void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    }

    void delete(Path path) throws IOException {
        Files.deleteIfExists(path);
    }

    /** Waits until what a folder holds is on the disk; a system that can't sync a folder does so by itself. */
    void sync(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Windows opens no folder; POSIX systems that can't sync one say so here.
        }
    }
}
