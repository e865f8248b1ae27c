package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The texts of the report by key, from one file, {@code words.properties}; a translation is another file with the same
 * keys. A text holds {@code {0}}, {@code {1}} and so on where its arguments stand. Immutable.
 */
public final class Phrases {
    private static final Phrases ENGLISH = new Phrases(read());

    private final SortedMap<String, String> texts;

    private Phrases(SortedMap<String, String> texts) {
        this.texts = texts;
    }

    /** {@return the texts in English} */
    public static Phrases english() {
        return ENGLISH;
    }

    private static SortedMap<String, String> read() {
        try (InputStream in = Phrases.class.getResourceAsStream("words.properties");
                Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
            return map(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SortedMap<String, String> map(Reader reader) throws IOException {
        Properties properties = new Properties();
        properties.load(reader);
        SortedMap<String, String> texts = new TreeMap<>();
        properties.stringPropertyNames().forEach(key -> texts.put(key, properties.getProperty(key)));
        return texts;
    }

    /**
     * Reads a translation; texts that it lacks stay English.
     *
     * @param file a properties file in UTF-8 with keys of {@code words.properties}
     * @return the texts
     * @throws IOException if it can't be read
     * @throws IllegalArgumentException if it has a key that the report doesn't know, or an escape that is none
     */
    public static Phrases translated(Path file) throws IOException {
        SortedMap<String, String> texts = new TreeMap<>(ENGLISH.texts);
        try (Reader reader = Files.newBufferedReader(file)) {
            SortedMap<String, String> translated = map(reader);
            TreeSet<String> unknown = new TreeSet<>(translated.keySet());
            unknown.removeAll(texts.keySet());
            if (!unknown.isEmpty()) {
                throw new IllegalArgumentException("keys must be those of words.properties: " + unknown.first());
            }
            texts.putAll(translated);
        }
        return new Phrases(texts);
    }

    /**
     * Says something.
     *
     * @param key key of the text
     * @param arguments what stands in it
     * @return the text
     * @throws IllegalArgumentException if there is no such text
     */
    public String say(String key, Object... arguments) {
        String text = texts.get(key);
        if (text == null) {
            throw new IllegalArgumentException("key must be one of words.properties: " + key);
        }
        StringBuilder said = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            int end = text.charAt(i) == '{' ? text.indexOf('}', i) : -1;
            String place = end < 0 ? "" : text.substring(i + 1, end);
            if (place.matches("[0-9]") && Integer.parseInt(place) < arguments.length) {
                said.append(arguments[Integer.parseInt(place)]);
                i = end;
            } else {
                said.append(text.charAt(i));
            }
        }
        return said.toString();
    }

    /**
     * Says something of a number of things, by the key with {@code .one} or {@code .many}, the number as {@code {0}}.
     *
     * @param key key of the texts without the ending
     * @param number how many
     * @return the text
     */
    String counted(String key, int number) {
        return say(key + (number == 1 ? ".one" : ".many"), number);
    }

    /** Returns the texts whose keys begin with a prefix, in the order of their keys. */
    Map<String, String> under(String prefix) {
        return new TreeMap<>(texts.subMap(prefix, prefix + Character.MAX_VALUE));
    }

    /** Returns how many texts there are. */
    @Override
    public String toString() {
        return texts.size() + " texts of the report";
    }
}
