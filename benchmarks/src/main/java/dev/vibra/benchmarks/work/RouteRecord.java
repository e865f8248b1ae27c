package dev.vibra.benchmarks.work;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;

/** One recording of a measuring route, and what is asked of it. */
public final class RouteRecord {
    /** Samples of acceleration, 4 s. */
    public static final int LENGTH = 102_400;
    /** Samples a second. */
    public static final double RATE = 25_600;
    /** Samples of a block of the averaged spectrum. */
    public static final int BLOCK = 8192;
    /** Band of the velocity. */
    public static final Band VELOCITY = Band.of(10, 1000);
    /** Band of the displacement. */
    public static final Band DISPLACEMENT = Band.of(2, 1000);
    /** Band whose envelope is looked at. */
    public static final Band ENVELOPE = Band.of(2000, 6000);
    /** Last line of the envelope spectrum. */
    public static final double ENVELOPE_LINES_TO = 1000;
    /** Levels of the band search: 2, 4 … 64 bands. */
    public static final int LEVELS = 6;
    /** Peaks wanted. */
    public static final int PEAKS = 20;

    private RouteRecord() {}

    /** Makes the recording: a shaft of 24.63 Hz, impacts of an outer race, noise. */
    public static Waveform waveform() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH)
                .harmonics(24.63, new double[] {4, 1.5, 0.8, 0.3}, new double[] {0.3, 1, 2, 0})
                .tone(0.6, 1183.4, 0.5).impacts(ImpactTrain.of(87.3, 6, 4200, 0.05), 1).noise(1, 1).bias(0.2)
                .waveform();
    }

    /** Settings of the averaged spectrum: Hann, overlap of a half. */
    public static SpectrumSettings spectrum() {
        return SpectrumSettings.withDefaults().withResolution(RATE / BLOCK);
    }
}
