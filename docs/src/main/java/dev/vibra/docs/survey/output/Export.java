package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.input.FileTrouble;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.internal.Printable;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.Traces;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;

/**
 * Writes figures as PNG and SVG files and the waveforms and spectra behind them as CSV files, point by point, into the
 * folders {@code figures} and {@code traces} beside the report.
 */
public final class Export implements AutoCloseable {
    private static final String FIGURES = "figures";
    private static final String TRACES = "traces";
    private static final Set<String> FOLDERS = Set.of(FIGURES, TRACES);
    /** Names of the figures that are of no point. */
    static final String SEVERITY = "severity";
    static final String BALANCING = "balancing";
    static final String HISTORY = "history";
    static final String SPEED_RUN = "speed-run";

    private static final int LONGEST_NAME = 40;

    private final Set<Kind> kinds;
    private final ExportFolder folder; // null if nothing is exported
    private final Map<String, String> names;

    private Export(Set<Kind> kinds, ExportFolder folder, Map<String, String> names) {
        this.kinds = kinds;
        this.folder = folder;
        this.names = names;
    }

    /** What is exported. */
    public enum Kind {
        /** Waveforms and spectra as numbers. */
        CSV(TRACES),
        /** Figures as pixels. */
        PNG(FIGURES),
        /** Figures as drawings. */
        SVG(FIGURES);

        private final String folder;

        Kind(String folder) {
            this.folder = folder;
        }

        /** Returns the word, as in {@code csv}. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Reads a list of kinds.
     *
     * @param text words between commas, as in {@code csv,svg}
     * @return the kinds; empty if a word is none, or stands twice
     */
    public static Optional<Set<Kind>> kinds(String text) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        for (String word : text.split(",", -1)) {
            Optional<Kind> kind = Arrays.stream(Kind.values()).filter(one -> one.toString().equals(word)).findFirst();
            if (kind.isEmpty() || !kinds.add(kind.get())) {
                return Optional.empty();
            }
        }
        return Optional.of(kinds);
    }

    /** {@return an export of nothing} */
    public static Export none() {
        return new Export(Set.of(), null, Map.of());
    }

    /**
     * Begins an export.
     *
     * @param target folder of the report
     * @param kinds what is exported
     * @param points ids of the points, in their order
     * @param inputs files that the survey reads
     * @return the export, to be closed
     * @throws ForeignFileException if one of its folders is there and holds something else than an earlier export
     * @throws IOException if nothing can be written there
     */
    public static Export begin(Path target, Set<Kind> kinds, Collection<String> points,
            Collection<Path> inputs) throws IOException {
        if (kinds.isEmpty()) {
            return none();
        }
        Set<String> wanted = new TreeSet<>();
        kinds.forEach(kind -> wanted.add(kind.folder));
        return new Export(kinds, ExportFolder.begin(target, wanted, FOLDERS, inputs), names(points));
    }

    /** Names for files on any system, apart from each other whether or not it tells small letters from capitals. */
    static Map<String, String> names(Collection<String> points) {
        Map<String, String> names = new HashMap<>();
        Set<String> taken = new HashSet<>(Set.of(SEVERITY, BALANCING, HISTORY, SPEED_RUN));
        for (String point : points) {
            String plain = point.replaceAll("[^A-Za-z0-9_-]", "_");
            String name = plain.substring(0, Math.min(LONGEST_NAME, plain.length()));
            String free = name;
            for (int i = 2; !taken.add(free.toLowerCase(Locale.ROOT)); i++) {
                free = name + "-" + i;
            }
            names.put(point, free);
        }
        return names;
    }

    /** {@return names of the folders that are written, in order; empty if none is} */
    public List<String> folders() {
        return kinds.stream().map(kind -> kind.folder).distinct().sorted().toList();
    }

    /** Writes figures and traces of a point; returns what was left out. Several threads may do so at a time. */
    List<Problem> point(PointSurvey point, List<Explorable> drawn) {
        String name = names.get(point.point().id());
        List<Problem> problems = new ArrayList<>(figures(name, drawn.stream().map(Explorable::still).toList()));
        if (kinds.contains(Kind.CSV)) {
            point.traces().ifPresent(traces -> attempt(TRACES, name, problems, () -> traces(point, name, traces)));
        }
        return problems;
    }

    /** Writes figures under one of the names that no point gets; returns what was left out. */
    List<Problem> figures(String name, Collection<Figure> drawn) {
        List<Problem> problems = new ArrayList<>();
        int number = 0;
        for (Figure figure : drawn) {
            String file = name + "-" + ++number;
            if (kinds.contains(Kind.SVG)) {
                attempt(FIGURES, file + ".svg", problems, () -> folder.write(FIGURES, file + ".svg", out -> out.write(
                        ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + figure.svg() + "\n")
                                .getBytes(StandardCharsets.UTF_8))));
            }
            if (kinds.contains(Kind.PNG)) {
                attempt(FIGURES, file + ".png", problems, () -> {
                    byte[] png = figure.png();
                    folder.write(FIGURES, file + ".png", out -> out.write(png));
                });
            }
        }
        return problems;
    }

    private interface Work {
        void run() throws IOException;
    }

    private static void attempt(String folder, String name, List<Problem> problems, Work work) {
        String reason;
        try {
            work.run();
            return;
        } catch (IOException e) {
            reason = FileTrouble.inWords(e);
        } catch (RuntimeException | InternalError | LinkageError e) {
            reason = "can't be drawn here (are fonts installed?)";
        }
        problems.add(new Problem(folder, 0, "", name + " is left out: " + reason));
    }

    private void traces(PointSurvey point, String name, Traces traces) throws IOException {
        String id = point.point().id();
        Waveform wave = traces.waveform();
        Unit unit = wave.quantity().customaryUnit();
        double[] samples = wave.in(unit);
        csv(name + "-waveform", id + ", waveform", "time in s," + wave.quantity() + " in " + unit.plainSymbol(),
                samples.length, i -> i / wave.sampleRateHertz(), i -> samples[i]);
        if (traces.velocity().isPresent()) {
            Spectrum velocity = traces.velocity().get();
            spectrum(name, id, velocity);
            if (wave.quantity() == Quantity.ACCELERATION) {
                spectrum(name, id, velocity.acceleration());
            }
        }
        int number = 0;
        for (BearingSurvey bearing : point.bearings()) {
            number++;
            if (bearing.diagnosis().spectrum().isPresent()) {
                EnvelopeSpectrum envelope = bearing.diagnosis().spectrum().get();
                double[] depths = envelope.depths();
                csv(name + "-envelope-" + number, id + ", spectrum of the squared envelope of " + envelope.band()
                        + ", bearing " + bearing.bearing(), "frequency in Hz,pulsation depth", depths.length,
                        i -> i * envelope.resolutionHertz(), i -> depths[i]);
            }
        }
    }

    private void spectrum(String name, String id, Spectrum spectrum) throws IOException {
        double[] values = spectrum.amplitudes(Detector.RMS);
        Unit unit = spectrum.quantity().customaryUnit();
        csv(name + "-" + spectrum.quantity() + "-spectrum", id + ", " + spectrum.quantity() + " spectrum",
                "frequency in Hz," + spectrum.quantity() + " in " + unit.plainSymbol() + " rms", values.length,
                spectrum::frequencyHertz, i -> values[i] / unit.toSi());
    }

    /** All digits that a number has; the recordings' own reader takes it back. */
    private void csv(String name, String about, String head, int rows, IntToDoubleFunction x, IntToDoubleFunction y)
            throws IOException {
        folder.write(TRACES, name + ".csv", out -> {
            Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            text.write("# point " + Printable.of(about) + "\r\n" + head + "\r\n");
            for (int i = 0; i < rows; i++) {
                text.write(x.applyAsDouble(i) + "," + y.applyAsDouble(i) + "\r\n");
            }
            text.flush();
        });
    }

    /**
     * Puts everything in its place.
     *
     * @param run digest of inputs, options and version
     * @return why nothing was exchanged; empty if all is well
     */
    public Optional<Problem> finish(String run) {
        try {
            if (folder != null) {
                folder.finish(run);
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of(new Problem(String.join(", ", folders()), 0, "", "nothing was exported: "
                    + FileTrouble.inWords(e)));
        }
    }

    /** Takes what isn't finished away. */
    @Override
    public void close() throws IOException {
        if (folder != null) {
            folder.close();
        }
    }
}
