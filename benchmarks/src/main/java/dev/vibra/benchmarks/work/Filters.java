package dev.vibra.benchmarks.work;

import dev.vibra.filter.CascadeFilter;
import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.FirDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.window.Window;

/** Filters in the time domain, each from rest over a whole route record. */
public final class Filters {
    private static final int TAPS = 128;

    private final double[] samples;
    private final double[] out;
    private final CascadeFilter cascade =
            FilterDesign.butterworth(4).bandPass(Band.of(500, 5000), RouteRecord.RATE).newFilter();
    private final FirFilter fir = FirDesign.lowPass(TAPS, 3000, RouteRecord.RATE, Window.hamming());
    private final BandLimitingChain chain = newChain();

    /** Makes the filters for samples, which are kept. */
    public Filters(double[] samples) {
        this.samples = samples;
        out = new double[samples.length];
    }

    /** Designs the chain of a severity instrument. */
    public static BandLimitingChain newChain() {
        return BandLimitingChain.of(Quantity.ACCELERATION, Quantity.VELOCITY, RouteRecord.VELOCITY, RouteRecord.RATE);
    }

    /** Band-pass of four second-order sections. */
    public double[] cascade() {
        cascade.reset();
        cascade.process(samples, 0, out, 0, out.length);
        return out;
    }

    /** Integration and band limits by ISO 2954. */
    public double[] chain() {
        chain.reset();
        chain.process(samples, 0, out, 0, out.length);
        return out;
    }

    /** Low-pass of 128 taps over a signal that is there as a whole. */
    public double[] wholeFir() {
        return fir.filtered(samples);
    }

    /** Low-pass of 128 taps, as of a stream. */
    public double[] fir() {
        fir.reset();
        fir.process(samples, 0, out, 0, out.length);
        return out;
    }
}
