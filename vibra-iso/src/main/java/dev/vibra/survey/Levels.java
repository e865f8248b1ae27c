package dev.vibra.survey;

import dev.vibra.level.Moments;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;

/**
 * Broad-band descriptors of a recording. Velocity and displacement rms are measured as the severity standards ask,
 * through
 * the chain of ISO 2954:2012; displacement peak-to-peak is the true one of the band without phase shift.
 */
final class Levels {
    static final Band USUAL_BAND = Band.of(10, 1000);

    private final Waveform wave;
    private final PointSurvey.Collector results;
    private final List<Level> judged = new ArrayList<>();

    Levels(Waveform wave, PointSurvey.Collector results) {
        this.wave = wave;
        this.results = results;
    }

    /** Returns the levels that a severity criterion may be held against. */
    List<Level> describe(SeverityCheck severity) {
        describeAcceleration();
        severity.bands(Quantity.VELOCITY).forEach(band -> describeSeverity(Quantity.VELOCITY, band));
        String peakToPeak = DescriptorNames.displacementPeakToPeak(USUAL_BAND);
        attempt(peakToPeak, () -> results.descriptor(peakToPeak,
                wave.displacement(USUAL_BAND).peakToPeak().in(Unit.UM), Unit.UM.plainSymbol()));
        severity.bands(Quantity.DISPLACEMENT).forEach(band -> describeSeverity(Quantity.DISPLACEMENT, band));
        return judged;
    }

    private void describeAcceleration() {
        if (wave.quantity() != Quantity.ACCELERATION) {
            results.omit("acceleration descriptors", "the recording measures " + wave.quantity());
            return;
        }
        Moments moments = wave.moments();
        results.descriptor(DescriptorNames.ACCELERATION_RMS, moments.rms(), Unit.M_PER_S2.plainSymbol());
        results.descriptor(DescriptorNames.ACCELERATION_PEAK, moments.peak(), Unit.M_PER_S2.plainSymbol());
        results.descriptor(DescriptorNames.CREST_FACTOR, moments.crestFactor(), "1");
        results.descriptor(DescriptorNames.KURTOSIS, moments.kurtosis(), "1");
        results.descriptor(DescriptorNames.SKEWNESS, moments.skewness(), "1");
    }

    private void describeSeverity(Quantity quantity, Band band) {
        String name = DescriptorNames.rms(quantity, band);
        attempt(name, () -> {
            Level level = wave.throughSeverityChain(quantity, band).rms();
            judged.add(level);
            Unit unit = quantity.customaryUnit();
            results.descriptor(name, level.in(unit), unit.plainSymbol());
        });
    }

    /** What a recording is too short, too slow or of the wrong quantity for is told with the reason of the core. */
    private void attempt(String name, Runnable work) {
        try {
            work.run();
        } catch (IllegalArgumentException e) {
            results.omit(name, e.getMessage());
        }
    }
}
