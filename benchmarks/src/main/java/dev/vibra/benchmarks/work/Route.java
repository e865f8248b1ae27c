package dev.vibra.benchmarks.work;

import dev.vibra.signal.Waveform;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** The stages of the analysis of one route record; each returns its figures. */
public interface Route {
    /** Numbers of all stages together. */
    int FIGURES = 6 + 2 * (RouteRecord.BLOCK / 2 + 1) + 2 * RouteRecord.PEAKS + 2
            + (int) (RouteRecord.ENVELOPE_LINES_TO * RouteRecord.LENGTH / RouteRecord.RATE) + 1
            + (2 << RouteRecord.LEVELS) - 2;

    /**
     * Makes the analysis in a layer of the library.
     *
     * @param layer {@code plans} or {@code values}
     * @param wave recording
     * @return the analysis
     */
    static Route of(String layer, Waveform wave) {
        return switch (layer) {
            case "plans" -> new RoutePlans(wave.samples());
            case "values" -> new RouteValues(wave);
            default -> throw new IllegalArgumentException("layer must be plans or values: " + layer);
        };
    }

    /** Mean, rms, peak, crest factor, skewness, kurtosis. */
    double[] moments();

    /** Rms amplitudes of the averaged spectrum, then its densities. */
    double[] spectrum();

    /** Frequencies of the highest peaks of the spectrum made last, then their rms amplitudes. */
    double[] peaks();

    /** The one transform of the record; no figures. */
    Object transform();

    /** Rms of the velocity. */
    double[] velocity();

    /** True peak-to-peak value of the displacement. */
    double[] displacement();

    /** Depths of the lines of the squared envelope. */
    double[] envelope();

    /** Spectral kurtosis of each band of the search. */
    double[] bandSearch();

    /**
     * All of it.
     *
     * @param figures receives {@link #FIGURES} numbers in the order of the stages
     * @return the array
     */
    double[] record(double[] figures);

    /** The stages that have figures, by name and in their order. */
    default Map<String, Supplier<double[]>> stages() {
        Map<String, Supplier<double[]>> stages = new LinkedHashMap<>();
        stages.put("moments", this::moments);
        stages.put("spectrum", this::spectrum);
        stages.put("peaks", this::peaks);
        stages.put("velocity", this::velocity);
        stages.put("displacement", this::displacement);
        stages.put("envelope", this::envelope);
        stages.put("band-search", this::bandSearch);
        return stages;
    }
}
