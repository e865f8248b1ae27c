package dev.vibra.benchmarks.work;

import dev.vibra.bandmap.BandMap;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.record.WholeRecord;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.PeakList;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.transform.PlanCache;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** The analysis of a route record with immutable values, as in a notebook, and a cache of plans for many records. */
public final class RouteValues implements Route {
    private static final int PLANS = 16;

    private final Waveform wave;
    private final PlanCache plans = PlanCache.ofSize(PLANS);
    private final Spectrum spectrum;
    private final WholeRecord transformed;

    /** Takes a recording. */
    public RouteValues(Waveform wave) {
        this.wave = wave;
        spectrum = Spectrum.of(wave, RouteRecord.spectrum(), plans);
        transformed = WholeRecord.of(wave, plans);
    }

    @Override
    public double[] moments() {
        Moments found = wave.moments();
        return new double[] {found.mean(), found.rms(), found.peak(), found.crestFactor(), found.skewness(),
            found.kurtosis()};
    }

    @Override
    public double[] spectrum() {
        return lines(Spectrum.of(wave, RouteRecord.spectrum(), plans));
    }

    private static double[] lines(Spectrum spectrum) {
        return join(spectrum.amplitudes(Detector.RMS), spectrum.densities());
    }

    @Override
    public double[] peaks() {
        return peaks(spectrum);
    }

    private static double[] peaks(Spectrum spectrum) {
        PeakList found = spectrum.peaks(RouteRecord.PEAKS);
        return join(found.stream().mapToDouble(peak -> peak.frequencyHertz()).toArray(),
                found.stream().mapToDouble(peak -> peak.level().si()).toArray());
    }

    @Override
    public Object transform() {
        return WholeRecord.of(wave, plans);
    }

    @Override
    public double[] velocity() {
        return velocity(transformed);
    }

    private static double[] velocity(WholeRecord record) {
        return new double[] {record.rms(Quantity.VELOCITY, RouteRecord.VELOCITY).level().si()};
    }

    @Override
    public double[] displacement() {
        return displacement(transformed);
    }

    private static double[] displacement(WholeRecord record) {
        return new double[] {record.peakToPeak(Quantity.DISPLACEMENT, RouteRecord.DISPLACEMENT).level().si()};
    }

    @Override
    public double[] envelope() {
        return envelope(transformed);
    }

    private static double[] envelope(WholeRecord record) {
        return record.envelopeSpectrum(RouteRecord.ENVELOPE, RouteRecord.ENVELOPE_LINES_TO).depths();
    }

    @Override
    public double[] bandSearch() {
        return bandSearch(transformed);
    }

    private static double[] bandSearch(WholeRecord record) {
        return record.dyadicMap(RouteRecord.LEVELS).cells().stream().mapToDouble(BandMap.Cell::value).toArray();
    }

    @Override
    public double[] record(double[] figures) {
        Spectrum made = Spectrum.of(wave, RouteRecord.spectrum(), plans);
        WholeRecord record = WholeRecord.of(wave, plans);
        int at = 0;
        for (double[] part : new double[][] {moments(), lines(made), peaks(made), velocity(record),
            displacement(record), envelope(record), bandSearch(record)}) {
            System.arraycopy(part, 0, figures, at, part.length);
            at += part.length;
        }
        return figures;
    }

    private static double[] join(double[]... parts) {
        return Stream.of(parts).flatMapToDouble(DoubleStream::of).toArray();
    }
}
