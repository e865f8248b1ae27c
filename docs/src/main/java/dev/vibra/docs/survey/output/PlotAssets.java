package dev.vibra.docs.survey.output;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;

/** Script and style of the figures that can be explored: the charting library and what is built on it. */
final class PlotAssets {
    private static final String LIBRARY = "/META-INF/resources/webjars/uplot/" + Library.UPLOT + "/";

    private PlotAssets() {}

    /** The charting library behind its licence, which asks to go with each copy, and what builds the figures. */
    static String script() {
        return "/*\n" + read(LIBRARY + "LICENSE").strip() + "\n*/\n" + read(LIBRARY + "dist/uPlot.iife.min.js").strip()
                + "\n" + read("plots.js");
    }

    static String style() {
        return read(LIBRARY + "dist/uPlot.min.css").strip() + "\n" + read("plots.css");
    }

    /** All words of the figures as a JSON object that may stand in a script element. */
    static String words(Phrases phrases) {
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        try {
            JsonText.write(new TreeMap<>(phrases.under("plot.")), json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return json.toString(StandardCharsets.UTF_8).strip().replace("<", "\\u003c");
    }

    /** A text beside this class. */
    static String read(String name) {
        try (InputStream in = PlotAssets.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
