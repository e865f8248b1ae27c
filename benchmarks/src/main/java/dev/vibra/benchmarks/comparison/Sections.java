package dev.vibra.benchmarks.comparison;

import dev.vibra.benchmarks.work.Analyses;
import dev.vibra.benchmarks.work.Filters;
import dev.vibra.benchmarks.work.Meters;
import dev.vibra.benchmarks.work.Reading;
import dev.vibra.benchmarks.work.Route;
import dev.vibra.signal.Waveform;
import dev.vibra.transform.RealTransform;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jtransforms.fft.DoubleFFT_1D;
import pl.edu.icm.jlargearrays.ConcurrencyUtils;

/** What is compared. */
final class Sections {
    /** Powers of two, lengths of recordings, and one with large prime factors. */
    private static final int[] LENGTHS =
            {1024, 2048, 4096, 8192, 16_384, 25_600, 32_768, 65_536, 102_400, 131_072, 102_397};

    /** What is not compared. */
    private static final double[] NONE = {};

    private final Side scipy;
    private final Side fftw;

    Sections(Side scipy, Side fftw) {
        this.scipy = scipy;
        this.fftw = fftw;
    }

    Section route(Waveform wave) {
        List<Side> layers = new ArrayList<>();
        for (String layer : List.of("plans", "values")) {
            Route route = Route.of(layer, wave);
            double[] figures = new double[Route.FIGURES];
            JavaSide side = new JavaSide(layer).with("transform", route::transform, () -> NONE)
                    .with("record", () -> route.record(figures));
            route.stages().forEach(side::with);
            layers.add(side);
        }
        return new Section("route record", List.of(fftw, scipy), layers, List.of("moments", "spectrum", "peaks",
                "transform", "velocity", "displacement", "envelope", "band-search", "record"));
    }

    Section transforms(double[] noise) {
        ConcurrencyUtils.setNumberOfThreads(1);
        JavaSide vibra = new JavaSide("vibra");
        JavaSide other = new JavaSide("jtransforms");
        List<String> tasks = new ArrayList<>();
        for (int length : LENGTHS) {
            String task = "real-" + length;
            tasks.add(task);
            RealTransform composed = RealTransform.of(length);
            double[] spectrum = new double[2 * composed.lines()];
            vibra.with(task, () -> composed.forward(noise, 0, spectrum));
            DoubleFFT_1D direct = new DoubleFFT_1D(length);
            double[] packed = new double[length];
            other.with(task, () -> {
                System.arraycopy(noise, 0, packed, 0, length);
                direct.realForward(packed);
                return packed;
            }, () -> unpacked(direct, noise, length));
        }
        return new Section("real transform", List.of(fftw, scipy, other), List.of(vibra), tasks);
    }

    private static double[] unpacked(DoubleFFT_1D direct, double[] samples, int length) {
        double[] full = Arrays.copyOf(Arrays.copyOf(samples, length), 2 * length);
        direct.realForwardFull(full);
        return Arrays.copyOf(full, 2 * (length / 2 + 1));
    }

    Section components(double[] samples, double[] second, Path folder) {
        Filters filters = new Filters(samples);
        Meters meters = new Meters(second);
        Reading files = new Reading(folder);
        JavaSide plain = new JavaSide("plain").with("wav-16", files::plainWav16).with("wav-64", files::plainWav64);
        JavaSide vibra = new JavaSide("vibra").with("cascade", filters::cascade).with("chain", filters::chain)
                .with("fir-128", filters::fir).with("fir-128-whole", filters::wholeFir)
                .with("level-meter", meters::level).with("spectrum-meter", meters::spectrum)
                .with("envelope-meter", meters::envelope).with("csv", files::csv, () -> files.csv().samples())
                .with("csv-column", files::csvColumn, () -> files.csvColumn().samples())
                .with("wav-16", files::wav16, () -> files.wav16().samples())
                .with("wav-64", files::wav64, () -> files.wav64().samples());
        return new Section("component", List.of(scipy, plain), List.of(vibra), List.of("cascade", "chain", "fir-128",
                "fir-128-whole", "level-meter", "spectrum-meter", "envelope-meter", "csv", "csv-column", "wav-16",
                "wav-64"));
    }

    Section analyses() {
        Analyses analyses = new Analyses();
        JavaSide vibra = new JavaSide("vibra").with("recording-check", analyses::quality, () -> NONE)
                .with("bearing", analyses::defectiveBearing, () -> NONE)
                .with("plan-of-102400", () -> RealTransform.of(102_400), () -> NONE)
                .with("plan-of-chain", Filters::newChain, () -> NONE);
        return new Section("analysis, making of plans", List.of(), List.of(vibra), List.of("recording-check",
                "bearing", "plan-of-102400", "plan-of-chain"));
    }
}
