package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Map;

/** SHA-256 digests (FIPS 180-4), by which results are told apart. */
public final class Digest {
    private static final int BYTES_AT_ONCE = 1 << 16;

    private Digest() {}

    /**
     * Digests what a run depends on: files, options and the version of the library.
     *
     * @param folder the survey folder
     * @param files names of files in it; one that is missing or can't be read counts as such
     * @param options options of the command in words
     * @return digest in hexadecimal
     */
    public static String ofRun(Path folder, Collection<String> files, String options) {
        StringBuilder text = new StringBuilder(Library.NAME + " " + Library.VERSION + "\n" + options + "\n");
        files.forEach(name -> text.append(name).append('\n').append(ofFile(folder.resolve(name))).append('\n'));
        return of(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Returns the content, whose digest is noted under its name once it is written. */
    static Content noted(String name, Map<String, String> digests, Content content) {
        return out -> {
            MessageDigest digest = sha256();
            content.writeTo(new DigestOutputStream(out, digest));
            digests.put(name, HexFormat.of().formatHex(digest.digest()));
        };
    }

    static String of(byte[] content) {
        return HexFormat.of().formatHex(sha256().digest(content));
    }

    /**
     * Digests a file.
     *
     * @param file a file; one that is missing or can't be read counts as such
     * @return digest in hexadecimal, or why there is none
     */
    public static String ofFile(Path file) {
        if (!Files.isRegularFile(file)) {
            return "no file";
        }
        MessageDigest digest = sha256();
        byte[] bytes = new byte[BYTES_AT_ONCE];
        try (InputStream in = Files.newInputStream(file)) {
            for (int count = in.read(bytes); count >= 0; count = in.read(bytes)) {
                digest.update(bytes, 0, count);
            }
        } catch (IOException e) {
            return "can't be read";
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
