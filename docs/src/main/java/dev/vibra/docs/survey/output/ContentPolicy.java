package dev.vibra.docs.survey.output;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The content-security policy of a page that loads nothing: only the scripts and styles run whose digests it names, so
 * neither a handler nor a style that a text might smuggle in does anything. After W3C, Content Security Policy Level 3.
 */
final class ContentPolicy {
    private ContentPolicy() {}

    /**
     * Makes the meta element, which must stand before all that it governs.
     *
     * @param scripts texts of the script elements that may run, exactly as they stand between the tags
     * @param styles texts of the style elements, as well
     */
    static String meta(List<String> scripts, List<String> styles) {
        return "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src "
                + sources(scripts) + "; style-src " + sources(styles)
                + "; img-src data:; base-uri 'none'; form-action 'none'\">";
    }

    private static String sources(List<String> texts) {
        return texts.isEmpty() ? "'none'" : texts.stream().map(ContentPolicy::source).collect(Collectors.joining(" "));
    }

    /** The digest of a text as a browser sees it: line ends are one line feed before anything else is done. */
    static String source(String text) {
        byte[] seen = text.replace("\r\n", "\n").replace('\r', '\n').getBytes(StandardCharsets.UTF_8);
        try {
            return "'sha256-" + Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(seen))
                    + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }
}
