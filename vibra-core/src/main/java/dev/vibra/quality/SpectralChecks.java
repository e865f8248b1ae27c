package dev.vibra.quality;

import dev.vibra.evidence.Remark;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import java.util.List;

/** What the averaged spectrum of a recording says about its soundness. */
final class SpectralChecks {
    private static final double LEAK_LIMIT = 0.2;
    private static final double HUM_LIMIT = 0.5;
    private static final double ROLL_OFF_LIMIT = 0.7;
    private static final double NEGLIGIBLE_SHARE = 1e-4;
    private static final int HUM_HARMONICS = 6;
    private static final int FEWEST_LINES = 64;

    private final Waveform wave;
    private final Band band;
    private final Double mainsHertz; // null: not known

    SpectralChecks(Waveform wave, Band band, Double mainsHertz) {
        this.wave = wave;
        this.band = band;
        this.mainsHertz = mainsHertz;
    }

    void addTo(List<Remark> remarks) {
        if (wave.length() < 2 * FEWEST_LINES) {
            return;
        }
        Spectrum spectrum = Spectrum.of(wave);
        if (wave.quantity() == Quantity.ACCELERATION && band.highestHertz() <= wave.sampleRateHertz() / 2) {
            addSlope(spectrum.velocity(), remarks);
        }
        if (mainsHertz != null) {
            addHum(spectrum, remarks);
        }
        addRollOff(spectrum, remarks);
    }

    private void addSlope(Spectrum velocity, List<Remark> remarks) {
        double below = 0;
        double leaked = 0;
        for (int k = 2; velocity.frequencyHertz(k) <= 0.8 * band.lowestHertz(); k++) {
            double density = velocity.density(k);
            double gain = BandLimitingChain.nominalGain(band, velocity.frequencyHertz(k));
            below += density;
            leaked += density * gain * gain;
        }
        double inside = sum(velocity, band.lowestHertz(), band.highestHertz());
        double share = leaked == 0 ? 0 : leaked / (leaked + inside);
        if (share > LEAK_LIMIT) {
            remarks.add(Remark.doubt("low-frequency-slope", Digits.significant(100 * share, 2)
                    + " % of the power that is read"
                    + " as velocity comes from below the band, where it is " + Digits.significant(below / inside, 2)
                    + " times that of the band", share, LEAK_LIMIT));
        }
    }

    private void addHum(Spectrum spectrum, List<Remark> remarks) {
        double half = 2 * spectrum.resolutionHertz();
        double hum = 0;
        for (int h = 1; h <= HUM_HARMONICS; h++) {
            hum += sum(spectrum, h * mainsHertz - half, h * mainsHertz + half);
        }
        double all = sum(spectrum, 2 * spectrum.resolutionHertz(), wave.sampleRateHertz());
        double share = all == 0 ? 0 : hum / all;
        if (share > HUM_LIMIT) {
            remarks.add(Remark.note("mains-hum", Digits.significant(100 * share, 2)
                    + " % of the power lies at harmonics of the mains", share, HUM_LIMIT));
        }
    }

    private void addRollOff(Spectrum spectrum, List<Remark> remarks) {
        double rate = wave.sampleRateHertz();
        double top = sum(spectrum, 0.47 * rate, 0.495 * rate) / 0.025;
        double lower = sum(spectrum, 0.35 * rate, 0.40 * rate) / 0.05;
        double ratio = lower == 0 ? 0 : Math.sqrt(top / lower);
        double all = sum(spectrum, 2 * spectrum.resolutionHertz(), rate);
        if (ratio > ROLL_OFF_LIMIT && top * 0.025 > NEGLIGIBLE_SHARE * all) {
            remarks.add(Remark.note("no-roll-off", "right below half the sample rate the level is "
                    + Digits.significant(ratio, 2) + " of that at lower frequencies: it may hold aliases", ratio,
                    ROLL_OFF_LIMIT));
        }
    }

    /** The sum of the densities: all that is asked are ratios. */
    private static double sum(Spectrum spectrum, double from, double to) {
        int first = (int) Math.max(1, Math.ceil(from / spectrum.resolutionHertz()));
        int last = (int) Math.min(spectrum.lines() - 1, Math.floor(to / spectrum.resolutionHertz()));
        double sum = 0;
        for (int k = first; k <= last; k++) {
            sum += spectrum.density(k);
        }
        return sum;
    }
}
