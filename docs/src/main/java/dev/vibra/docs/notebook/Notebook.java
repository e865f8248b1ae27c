package dev.vibra.docs.notebook;

import dev.vibra.bandmap.BandMap;
import dev.vibra.docs.survey.chart.BandMapFigure;
import dev.vibra.docs.survey.chart.SpectrumFigure;
import dev.vibra.docs.survey.chart.WaveformFigure;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * The short names of a session in JShell:
 *
 * <pre>{@code
 * var a = demo("fe-h")
 * plot(a)
 * plot(Spectrum.of(a).velocity(), 10, 400)
 * }</pre>
 *
 * <p>Each plot is written to a PNG file of its own in the folder for temporary files, and the value that JShell shows
 * says which; {@link #save} writes it where it is to stay. No window is opened, so that the same lines work on a
 * machine without display.
 */
public final class Notebook {
    /** Length of the stretch that is drawn out beside a waveform, in s. */
    private static final double DETAIL_SECONDS = 0.2;

    private Notebook() {}

    /** {@return the demonstration machine with all its recordings} */
    public static Demonstration demo() {
        return Demonstration.read();
    }

    /**
     * Reads one recording of the demonstration machine.
     *
     * @param id id of a point, as in {@code fe-h}
     * @return acceleration at that point
     * @throws IllegalArgumentException if there is no such point; the message lists those that there are
     */
    public static Waveform demo(String id) {
        return demo().recording(id);
    }

    /**
     * Draws a waveform: the whole of it, and beside it 0.2 s around its largest value.
     *
     * @param wave two samples or more
     * @return the figure, written to a file
     */
    public static Plot plot(Waveform wave) {
        Require.atLeast("samples", wave.length(), 2);
        return Plot.inTemporaryFile("waveform", () -> WaveformFigure.of(inCustomaryUnit(wave),
                wave.sampleRateHertz(), DETAIL_SECONDS, title(wave.quantity(), ""), "Waveform, " + wave));
    }

    /**
     * Draws a stretch of a waveform.
     *
     * @param wave the waveform
     * @param fromSeconds begin of the stretch after the first sample, in s
     * @param toSeconds end of the stretch after the first sample, in s
     * @return the figure, written to a file
     * @throws IllegalArgumentException if the stretch doesn't lie in the waveform or holds fewer than two samples
     */
    public static Plot plot(Waveform wave, double fromSeconds, double toSeconds) {
        Require.within("toSeconds", toSeconds, 0, wave.durationSeconds(), "s");
        Require.within("fromSeconds", fromSeconds, 0, toSeconds, "s");
        int from = (int) Math.ceil(fromSeconds * wave.sampleRateHertz());
        int to = Math.min(wave.length(), (int) Math.floor(toSeconds * wave.sampleRateHertz()) + 1);
        Require.atLeast("samples of the stretch", to - from, 2);
        return Plot.inTemporaryFile("waveform", () -> WaveformFigure.stretch(inCustomaryUnit(wave),
                wave.sampleRateHertz(), from, to, title(wave.quantity(), ""), "Stretch of a waveform, " + wave));
    }

    /**
     * Draws a spectrum, all lines of it as rms values.
     *
     * @param spectrum the spectrum
     * @return the figure, written to a file
     */
    public static Plot plot(Spectrum spectrum) {
        return plot(spectrum, 0, spectrum.frequencyHertz(spectrum.lines() - 1));
    }

    /**
     * Draws a range of a spectrum. The level axis reaches to the highest line of the range: from 10 Hz on, what
     * integration makes of noise at the lowest frequencies doesn't dwarf the rest of a velocity.
     *
     * @param spectrum the spectrum
     * @param lowestHertz lower end of the axis in Hz
     * @param highestHertz upper end of the axis in Hz; cut at the last line
     * @return the figure, written to a file
     * @throws IllegalArgumentException if the range holds fewer than two lines
     */
    public static Plot plot(Spectrum spectrum, double lowestHertz, double highestHertz) {
        Unit unit = spectrum.quantity().customaryUnit();
        double[] values = Arrays.stream(spectrum.amplitudes(Detector.RMS)).map(si -> si / unit.toSi()).toArray();
        SpectrumFigure figure = range(values, spectrum.resolutionHertz(), lowestHertz, highestHertz);
        return Plot.inTemporaryFile("spectrum", () -> figure.draw(title(spectrum.quantity(), " rms"),
                "Spectrum, " + spectrum));
    }

    /**
     * Draws the spectrum of a squared envelope, all lines of it as depths of pulsation.
     *
     * @param spectrum the spectrum
     * @return the figure, written to a file
     */
    public static Plot plot(EnvelopeSpectrum spectrum) {
        return plot(spectrum, 0, spectrum.frequencyHertz(spectrum.lines() - 1));
    }

    /**
     * Draws a range of the spectrum of a squared envelope. What the window leaves of the mean, the first two lines, is
     * no pulsation and not drawn.
     *
     * @param spectrum the spectrum
     * @param lowestHertz lower end of the axis in Hz
     * @param highestHertz upper end of the axis in Hz; cut at the last line
     * @return the figure, written to a file
     * @throws IllegalArgumentException if the range holds fewer than two lines
     */
    public static Plot plot(EnvelopeSpectrum spectrum, double lowestHertz, double highestHertz) {
        double[] depths = spectrum.depths();
        Arrays.fill(depths, 0, Math.min(2, depths.length), 0);
        SpectrumFigure figure = range(depths, spectrum.resolutionHertz(), lowestHertz, highestHertz);
        return Plot.inTemporaryFile("envelope-spectrum", () -> figure.draw("Pulsation depth (1)",
                "Spectrum of the squared envelope, " + spectrum));
    }

    /**
     * Draws a map of bands with its best band framed.
     *
     * @param map the map
     * @return the figure, written to a file
     */
    public static Plot plot(BandMap map) {
        return Plot.inTemporaryFile("band-map",
                () -> BandMapFigure.of(map, map.best().band(), "Map of bands, " + map));
    }

    /**
     * Writes a figure where it is to stay; a figure that is there is replaced, folders that are missing are made.
     *
     * @param plot the figure
     * @param file name of a file that ends in {@code .png}
     * @return the figure with that file
     * @throws IllegalArgumentException if the file ends otherwise
     */
    public static Plot save(Plot plot, String file) {
        return plot.savedTo(Path.of(file));
    }

    private static SpectrumFigure range(double[] values, double spacing, double lowest, double highest) {
        Require.notNegative("lowestHertz", lowest, "Hz");
        double end = Math.min(highest, (values.length - 1) * spacing);
        if (!(Math.floor(end / spacing) > Math.ceil(lowest / spacing))) {
            throw new IllegalArgumentException("range must hold two of the lines, which stand every "
                    + Digits.compact(spacing, 4) + " Hz up to " + Digits.compact((values.length - 1) * spacing, 6)
                    + " Hz: " + lowest + " Hz to " + highest + " Hz");
        }
        return SpectrumFigure.of(values, spacing).zoomedTo(lowest, end);
    }

    private static double[] inCustomaryUnit(Waveform wave) {
        return wave.in(wave.quantity().customaryUnit());
    }

    private static String title(Quantity quantity, String detector) {
        String name = quantity.toString();
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1) + " in " + quantity.customaryUnit()
                + detector;
    }
}
