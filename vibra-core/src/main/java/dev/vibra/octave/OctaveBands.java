package dev.vibra.octave;

import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.SectionCascade;
import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.signal.Waveform;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * Levels in octave or one-third-octave bands, each through its own band-pass filter: Butterworth of order 4 (eight
 * poles), which keeps the limits of class 1 as long as the upper edge lies at or below 0.35 times the sample rate.
 *
 * @see "IEC 61260-1:2014, Table 1 (class limits)"
 */
public final class OctaveBands {
    private static final int ORDER = 4;
    private static final double HIGHEST_RELATIVE_EDGE = 0.35;
    /** The start-up of a band-pass has decayed by then: this many times one over its width. */
    private static final double SETTLING = 3;

    private OctaveBands() {}

    /**
     * Designs the filter of a band.
     *
     * @param band band
     * @param sampleRateHertz sample rate in Hz; the upper edge must be at most 0.35 of it
     * @return the filter
     * @throws IllegalArgumentException if the band is too high for the sample rate
     */
    public static SectionCascade filter(OctaveBand band, double sampleRateHertz) {
        double limit = HIGHEST_RELATIVE_EDGE * sampleRateHertz;
        if (!(Objects.requireNonNull(band, "band").edges().highestHertz() <= limit)) {
            throw new IllegalArgumentException("upper edge of the band must be at or below 0.35 times the sample rate, "
                    + limit + " Hz: " + band.edges().highestHertz());
        }
        return FilterDesign.butterworth(ORDER).bandPass(band.edges(), sampleRateHertz);
    }

    /**
     * Measures the levels of all bands whose mid-band frequencies lie in a range; the start-up of each filter, three
     * times one over its width, is left out.
     *
     * @param wave recording
     * @param fraction b of bands of 1/b octave, 1 to 24
     * @param range range of mid-band frequencies
     * @return rms levels by band, in rising order
     * @throws IllegalArgumentException if a band is too high for the sample rate or too narrow for the duration
     */
    public static Map<OctaveBand, Level> levels(Waveform wave, int fraction, Band range) {
        Map<OctaveBand, Level> levels = new LinkedHashMap<>();
        double[] samples = Objects.requireNonNull(wave, "wave").samples();
        double[] filtered = new double[samples.length];
        for (OctaveBand band : OctaveBand.within(fraction, Objects.requireNonNull(range, "range"))) {
            int settling = (int) Math.ceil(SETTLING / band.edges().widthHertz() * wave.sampleRateHertz());
            if (samples.length < 2 * settling) {
                throw new IllegalArgumentException("recording must be at least " + 2 * settling / wave.sampleRateHertz()
                        + " s long for the band " + band + ": " + wave.durationSeconds() + " s");
            }
            filter(band, wave.sampleRateHertz()).newFilter().process(samples, 0, filtered, 0, samples.length);
            double rms = Moments.of(filtered, settling, filtered.length - settling).rms();
            levels.put(band, Level.ofSi(rms, wave.quantity(), Detector.RMS).within(band.edges())
                    .by(LevelMethod.OCTAVE_FILTER));
        }
        return levels;
    }
}
