package dev.vibra.docs.notebook;

import static dev.vibra.docs.notebook.Notebook.demo;
import static dev.vibra.docs.notebook.Notebook.plot;
import static dev.vibra.docs.notebook.Notebook.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.docs.survey.demo.DemoRecordings;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.survey.Survey;
import dev.vibra.synthesis.Synthesis;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short names of a JShell session: what they read, draw and write. */
class NotebookTest {
    private static final Waveform TONE =
            Synthesis.silence(Quantity.ACCELERATION, 6400, 12_800).tone(2, 100, 0).noise(0.01, 1).waveform();

    private final List<Plot> made = new ArrayList<>();

    @AfterEach
    void removeFigures() throws IOException {
        for (Plot plot : made) {
            Files.deleteIfExists(plot.file());
        }
    }

    private Plot kept(Plot plot) {
        made.add(plot);
        return plot;
    }

    @Test
    void demonstrationIsWhatTheGeneratorMakes() {
        assertEquals(DemoRecordings.all().keySet().stream().map(file -> file.replace(".wav", "")).toList(),
                demo().recordings().keySet().stream().map(id -> id.toLowerCase(Locale.ROOT)).toList());
        Waveform truth = DemoRecordings.all().get("fe-h.wav");
        // The file has steps of 8 g / 65,536 = 1.2e-3 m/s², half of which is the rounding.
        assertArrayEquals(truth.samples(), demo("fe-h").samples(), 0.6e-3 * 1.001);
        assertEquals(demo("fe-h"), demo("FE-H"));
        assertEquals(Optional.of(Zone.D), Survey.of(demo().machine(), demo().recordings()).zone());
    }

    @Test
    void anUnknownRecordingIsAnsweredByThoseThatThereAre() {
        String message = assertThrows(IllegalArgumentException.class, () -> demo("fan")).getMessage();
        assertEquals("id must be one of fe-h, fe-v, fe-a, de-h, de-v, de-a, m-de-h, m-de-v, m-de-a, m-nde-h: fan", message);
    }

    @Test
    void everyPlotIsAPictureInAFileOfItsOwn() throws IOException {
        Spectrum spectrum = Spectrum.of(TONE).velocity();
        EnvelopeSpectrum envelope = EnvelopeSpectrum.of(TONE, Band.of(1000, 3000));
        List<Plot> plots = List.of(kept(plot(TONE)), kept(plot(TONE, 0.1, 0.2)), kept(plot(spectrum)),
                kept(plot(spectrum, 10, 400)), kept(plot(envelope)), kept(plot(envelope, 0, 50)),
                kept(plot(BandMap.of(TONE, BandCriterion.SPECTRAL_KURTOSIS, 400))));
        assertEquals(plots.size(), plots.stream().map(Plot::file).distinct().count());
        for (Plot plot : plots) {
            byte[] bytes = Files.readAllBytes(plot.file());
            BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes));
            assertEquals("figure of " + image.getWidth() + " x " + image.getHeight() + " pixels: " + plot.file(),
                    plot.toString());
            assertTrue(inkBetween(image, 0.2, 1) > 100, plot.figure().description());
        }
    }

    /** The tone stands in the middle of an axis from 50 Hz to 150 Hz, and at a quarter of one to 400 Hz. */
    @Test
    void theAxisIsTheRangeThatWasAskedFor() throws IOException {
        Spectrum spectrum = Spectrum.of(TONE);
        BufferedImage middle = ImageIO.read(kept(plot(spectrum, 50, 150)).file().toFile());
        BufferedImage quarter = ImageIO.read(kept(plot(spectrum, 0, 400)).file().toFile());
        assertEquals(0.5, placeOfHighest(middle), 0.02);
        assertEquals(0.25, placeOfHighest(quarter), 0.02);
    }

    /** Place of the highest ink of the trace along the frequency axis, 0 at its begin, 1 at its end. */
    private static double placeOfHighest(BufferedImage image) {
        int left = 2 * 124;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = left + 4; x < image.getWidth(); x++) {
                if (image.getRGB(x, y) == 0xff004f7f) {
                    return (x - left) / (image.getWidth() - left - 2 * 24.0);
                }
            }
        }
        return Double.NaN;
    }

    private static long inkBetween(BufferedImage image, double from, double to) {
        long ink = 0;
        for (int x = (int) (from * image.getWidth()); x < (int) (to * image.getWidth()); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                ink += image.getRGB(x, y) == 0xff004f7f ? 1 : 0;
            }
        }
        return ink;
    }

    @Test
    void savedFiguresGoWhereTheyAreWantedAndReplaceFiguresOnly(@TempDir Path folder) throws IOException {
        Plot plot = kept(plot(TONE));
        Path file = folder.resolve("new/folder/a.PNG");
        assertEquals(file, save(plot, file.toString()).file());
        assertEquals(file, save(plot, file.toString()).file());
        assertArrayEquals(plot.figure().png(), Files.readAllBytes(file));
        Path recording = folder.resolve("a.wav");
        assertThrows(IllegalArgumentException.class, () -> save(plot, recording.toString()));
        assertFalse(Files.exists(recording));
    }

    @Test
    void emptyRangesAreRefusedWithWhatThereIs() {
        Spectrum spectrum = Spectrum.of(TONE);
        String message = assertThrows(IllegalArgumentException.class, () -> plot(spectrum, 400, 10)).getMessage();
        assertEquals("range must hold two of the lines, which stand every 1 Hz up to 3200 Hz: 400.0 Hz to 10.0 Hz",
                message);
        for (double[] range : new double[][] {{-1, 10}, {Double.NaN, 10}, {10, Double.NaN}, {4000, 5000}, {10.2, 10.8}}) {
            assertThrows(IllegalArgumentException.class, () -> plot(spectrum, range[0], range[1]));
        }
        for (double[] range : new double[][] {{-1, 1}, {1, 0.5}, {0, 3}, {0.5, 0.5}, {Double.NaN, 1}}) {
            assertThrows(IllegalArgumentException.class, () -> plot(TONE, range[0], range[1]));
        }
    }
}
