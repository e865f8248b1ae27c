package dev.vibra.benchmarks.work;

import dev.vibra.meter.EnvelopeMeter;
import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumMeter;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;

/**
 * Meters of one channel at 51.2 kHz: each call takes in a second of it, in blocks of 4096 samples, and reads. The same
 * second comes again and again, so that the filters of the level meter are where they were.
 */
public final class Meters {
    /** Samples a second. */
    public static final double RATE = 51_200;

    private static final int BLOCK = 4096;

    private final double[] second;
    private final LevelMeter levels = LevelMeter.withDefaults().at(RATE);
    private final SpectrumMeter spectra = SpectrumMeter.of(Quantity.ACCELERATION, RATE,
            SpectrumSettings.withDefaults().withLines(3200, 20_000));
    private final EnvelopeMeter envelopes =
            EnvelopeMeter.of(Quantity.ACCELERATION, Band.of(5000, 10_000), (int) RATE, RATE);

    /** Makes the meters for one second, which is kept. */
    public Meters(double[] second) {
        this.second = second;
        level(); // Lets the chain settle.
    }

    /** One second of a channel. */
    public static Waveform second() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, (int) RATE).tone(3, 25, 0).tone(1, 1200, 1)
                .impacts(ImpactTrain.of(87.3, 6, 7200, 0.05), 1).noise(1, 1).waveform();
    }

    @FunctionalInterface
    private interface Push {
        void block(double[] samples, int offset, int length);
    }

    private void push(Push meter) {
        for (int at = 0; at < second.length; at += BLOCK) {
            meter.block(second, at, Math.min(BLOCK, second.length - at));
        }
    }

    /** Rms, peak and kurtosis of the acceleration, and of the velocity. */
    public double[] level() {
        levels.restartReading();
        push(levels::push);
        return levels.readings().stream().flatMapToDouble(reading -> reading.isReadable()
                ? Arrays.stream(new double[] {reading.rmsSi(), reading.peakSi(), reading.kurtosis()})
                : Arrays.stream(new double[0])).toArray();
    }

    /** Rms amplitudes of the lines up to 25.6 kHz, 6.25 Hz apart. */
    public double[] spectrum() {
        spectra.restartReading();
        push(spectra::push);
        return spectra.spectrum().amplitudes(Detector.RMS);
    }

    /** Mean of the envelope, and its lines from the third on. */
    public double[] envelope() {
        envelopes.restartReading();
        push(envelopes::push);
        Spectrum spectrum = envelopes.spectrum();
        double[] lines = spectrum.amplitudes(Detector.RMS);
        double[] figures = Arrays.copyOfRange(lines, 1, lines.length);
        figures[0] = envelopes.mean();
        return figures;
    }
}
