package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** Name and version of the library that made a result. */
public final class Library {
    /** Name of the library. */
    public static final String NAME = "Vibra";
    /** Version of the library. */
    public static final String VERSION = property("version");
    /** Version of the charting library in a report. */
    static final String UPLOT = property("uplot");

    private Library() {}

    private static String property(String name) {
        try (InputStream in = Library.class.getResourceAsStream("library.properties")) {
            Properties properties = new Properties();
            properties.load(in);
            return properties.getProperty(name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
