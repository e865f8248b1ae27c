package dev.vibra.benchmarks.comparison;

import dev.vibra.benchmarks.work.Meters;
import dev.vibra.benchmarks.work.Reading;
import dev.vibra.benchmarks.work.RouteRecord;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Pattern;

/**
 * The library beside SciPy: {@code mvn -q -B -pl benchmarks -am -DskipTests -Pscipy package}. Needs python3 with SciPy
 * 1.10 or newer.
 *
 * <p>Arguments: interpreter, folder of the scripts, folder for input, file of limits, rounds, regular expression of the
 * tasks to run. Ends with 0 if all figures agree and all limits are kept, with 1 if not, with 2 if SciPy is missing.
 */
public final class Comparison {
    private static final int LONGEST_TRANSFORM = 131_072;

    private Comparison() {}

    /** Runs the comparison. */
    public static void main(String[] args) throws IOException {
        System.exit(run(args, new PrintStream(System.out, true, StandardCharsets.UTF_8)));
    }

    private static int run(String[] args, PrintStream out) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[2]));
        Limits limits = Limits.read(Path.of(args[3]));
        Waveform wave = RouteRecord.waveform();
        double[] noise = new Random(1).doubles(LONGEST_TRANSFORM, -1, 1).toArray();
        double[] second = Meters.second().samples();
        new Reading(folder).write(wave);
        write(folder.resolve("record.f64"), wave.samples());
        write(folder.resolve("noise.f64"), noise);
        write(folder.resolve("stream.f64"), second);
        try (PythonProcess python = new PythonProcess(args[0], Path.of(args[1], "scipy_side.py"), folder)) {
            out.printf("%s; Java %s; processor time in µs: best (median)%n%n", python.versions(),
                    Runtime.version());
            Contest contest = new Contest(Pattern.compile(args[5]), Integer.parseInt(args[4]), out);
            Sections sections = new Sections(python.side("scipy"), python.side("fftw"));
            for (Section section : List.of(sections.route(wave), sections.transforms(noise),
                    sections.components(wave.samples(), second, folder), sections.analyses())) {
                contest.run(section);
            }
            return report(contest, limits, out);
        } catch (PythonProcess.Missing e) {
            out.println(e.getMessage());
            return 2;
        }
    }

    private static void write(Path file, double[] values) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(Double.BYTES * values.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(values);
        Files.write(file, bytes.array());
    }

    private static int report(Contest contest, Limits limits, PrintStream out) {
        List<Limits.Held> held = limits.hold(contest.timings());
        held.forEach(limit -> out.printf("%-8s %s%n", limit.outcome().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                limit.text()));
        contest.disagreements().forEach(text -> out.println("differ   " + text));
        boolean missed = held.stream().anyMatch(limit -> limit.outcome() == Limits.Outcome.MISSED);
        return missed || !contest.disagreements().isEmpty() ? 1 : 0;
    }
}
