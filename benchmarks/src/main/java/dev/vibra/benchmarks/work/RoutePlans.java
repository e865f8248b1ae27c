package dev.vibra.benchmarks.work;

import dev.vibra.bandmap.DyadicMapPlan;
import dev.vibra.envelope.EnvelopeSpectrumPlan;
import dev.vibra.integration.MotionPlan;
import dev.vibra.level.RunningMoments;
import dev.vibra.quantity.Quantity;
import dev.vibra.record.RecordPlan;
import dev.vibra.spectrum.PeakPlan;
import dev.vibra.spectrum.SpectrumPlan;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.Arrays;

/**
 * The analysis of a route record with plans that are made once, one a thread. Stage by stage the plans of motions,
 * envelope and bands take the lines of the record; as a whole they hang on one plan of the record.
 */
public final class RoutePlans implements Route {
    private static final int LINES = RouteRecord.BLOCK / 2 + 1;

    private final double[] samples;
    private final RunningMoments running = new RunningMoments();
    private final SpectrumPlan plan = SpectrumPlan.of(RouteRecord.BLOCK, Window.hann());
    private final SpectrumPlan.Worker averaged = plan.newWorker();
    private final PeakPlan highest = PeakPlan.of(plan, RouteRecord.RATE);
    private final RecordPlan bare = newPlan();
    private final double[] recordLines = new double[RouteRecord.LENGTH + 2];
    private final Stages single = new Stages(newPlan());
    private final RecordPlan record = newPlan();
    private final Stages hung = new Stages(record);

    private final double[] moments = new double[6];
    private final double[] meanSquares = new double[LINES];
    private final double[] lines = new double[2 * LINES];
    private final double[] hertz = new double[RouteRecord.PEAKS];
    private final double[] rms = new double[RouteRecord.PEAKS];
    private final double[] peaks = new double[2 * RouteRecord.PEAKS];
    private final double[] level = new double[1];
    private final double[] depths = new double[single.envelope.lines()];
    private final double[] kurtosis = new double[single.bands.count()];

    private static RecordPlan newPlan() {
        return RecordPlan.of(RouteRecord.LENGTH, RouteRecord.RATE, Quantity.ACCELERATION);
    }

    /** What is made of the lines of a record. */
    private static final class Stages {
        private final MotionPlan velocity;
        private final MotionPlan displacement;
        private final EnvelopeSpectrumPlan envelope;
        private final DyadicMapPlan bands;

        Stages(RecordPlan plan) {
            velocity = plan.motion(Quantity.VELOCITY, RouteRecord.VELOCITY);
            displacement = plan.motion(Quantity.DISPLACEMENT, RouteRecord.DISPLACEMENT);
            envelope = plan.envelopeSpectrum(RouteRecord.ENVELOPE, RouteRecord.ENVELOPE_LINES_TO);
            bands = plan.dyadicMap(RouteRecord.LEVELS);
        }
    }

    /** Makes the plans for samples, which are kept. */
    public RoutePlans(double[] samples) {
        this.samples = samples;
        RealTransform.of(samples.length).forward(samples, 0, recordLines);
        recordLines[0] = 0;
        spectrum();
    }

    @Override
    public double[] moments() {
        running.reset();
        running.push(samples, 0, samples.length);
        moments[0] = running.mean();
        moments[1] = running.rms();
        moments[2] = running.peak();
        moments[3] = running.crestFactor();
        moments[4] = running.skewness();
        moments[5] = running.kurtosis();
        return moments;
    }

    @Override
    public double[] spectrum() {
        Arrays.fill(meanSquares, 0);
        int step = RouteRecord.BLOCK / 2;
        int blocks = (samples.length - RouteRecord.BLOCK) / step + 1;
        averaged.addMeanSquares(samples, 0, step, blocks, meanSquares);
        double bandwidth = plan.noiseBandwidth() * RouteRecord.RATE / RouteRecord.BLOCK;
        for (int k = 0; k < LINES; k++) {
            meanSquares[k] /= blocks;
            lines[k] = Math.sqrt(meanSquares[k]);
            lines[LINES + k] = meanSquares[k] / bandwidth;
        }
        return lines;
    }

    @Override
    public double[] peaks() {
        highest.largest(meanSquares, RouteRecord.PEAKS, hertz, rms);
        System.arraycopy(hertz, 0, peaks, 0, hertz.length);
        System.arraycopy(rms, 0, peaks, hertz.length, rms.length);
        return peaks;
    }

    @Override
    public double[] transform() {
        bare.load(samples, 0);
        return recordLines;
    }

    @Override
    public double[] velocity() {
        single.velocity.take(recordLines);
        level[0] = single.velocity.rms();
        return level;
    }

    @Override
    public double[] displacement() {
        single.displacement.take(recordLines);
        level[0] = single.displacement.peakToPeak();
        return level;
    }

    @Override
    public double[] envelope() {
        single.envelope.take(recordLines);
        return single.envelope.depths(depths);
    }

    @Override
    public double[] bandSearch() {
        single.bands.take(recordLines);
        return kurtosis(single.bands);
    }

    private double[] kurtosis(DyadicMapPlan bands) {
        for (int i = 0; i < kurtosis.length; i++) {
            kurtosis[i] = bands.kurtosis(i);
        }
        return kurtosis;
    }

    @Override
    public double[] record(double[] figures) {
        int at = put(moments(), figures, 0);
        at = put(spectrum(), figures, at);
        at = put(peaks(), figures, at);
        record.load(samples, 0);
        figures[at++] = hung.velocity.rms();
        figures[at++] = hung.displacement.peakToPeak();
        at = put(hung.envelope.depths(depths), figures, at);
        put(kurtosis(hung.bands), figures, at);
        return figures;
    }

    private static int put(double[] part, double[] figures, int at) {
        System.arraycopy(part, 0, figures, at, part.length);
        return at + part.length;
    }
}
