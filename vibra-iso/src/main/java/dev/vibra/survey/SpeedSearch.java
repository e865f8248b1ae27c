package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.lines.FamilyMember;
import dev.vibra.lines.HarmonicFamily;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import java.util.List;
import java.util.Optional;

/**
 * Looks for the speed among the lines of a recording. The confidence is {@code 1 − r/a}: a, the line at the speed; r,
 * the largest other line in the range searched that isn't a multiple of it. Below a half no speed is taken.
 *
 * <p>A given speed is refined by a line within a tenth of it. Without one, the lines at 1, 2 and 3 times the speed must
 * all stand out, nothing may speak for a half or a third of it, and only one speed may do so: the plate is a better
 * source
 * than a guess. Thresholds are common practice, no source.
 */
final class SpeedSearch {
    private static final double REACH = 0.1;
    private static final double LEAST_CONFIDENCE = 0.5;
    private static final Band WITHOUT_NOMINAL = Band.of(10, 60);
    private static final double FALSE_ALARM = 1e-4;
    private static final double FEWEST_REVOLUTIONS = 20;
    private static final double SHAFTS_APART = 0.02;
    private static final int FLOOR_LINES = 40;

    private final Optional<Double> mains;
    private final Spectrum spectrum;
    private final NoiseFloor floor;

    private SpeedSearch(Waveform wave, Optional<Double> mains) {
        this.mains = mains;
        this.spectrum = Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(2 / wave.durationSeconds()));
        this.floor = NoiseFloor.of(spectrum, Math.min(FLOOR_LINES * spectrum.resolutionHertz(),
                spectrum.frequencyHertz(spectrum.lines() - 1) / 2));
    }

    /** The given speed, refined where the recording shows it beyond doubt. */
    static SpeedFound around(RotationSpeed given, Waveform wave, Optional<Double> mains) {
        Band range = Band.of((1 - REACH) * given.hertz(), (1 + REACH) * given.hertz());
        if (obstacle(wave, range).isPresent()) {
            return SpeedFound.given(given);
        }
        SpeedSearch search = new SpeedSearch(wave, mains);
        return search.lines(range).stream().findFirst().filter(line -> !search.isMains(line, given))
                .flatMap(line -> search.confident(line, range)).orElse(SpeedFound.given(given));
    }

    /** The speed where none was given; the remark says why there is none. */
    static SpeedFound withoutNominal(Waveform wave, Optional<Double> mains) {
        return obstacle(wave, WITHOUT_NOMINAL).map(SpeedSearch::none)
                .orElseGet(() -> new SpeedSearch(wave, mains).withoutNominal());
    }

    private static Optional<String> obstacle(Waveform wave, Band range) {
        if (wave.durationSeconds() * range.lowestHertz() < FEWEST_REVOLUTIONS) {
            return Optional.of("it is shorter than " + Digits.compact(FEWEST_REVOLUTIONS, 2) + " revolutions at "
                    + Digits.compact(range.lowestHertz(), 3) + " Hz");
        }
        return range.highestHertz() < wave.sampleRateHertz() / 10 ? Optional.empty()
                : Optional.of("its sample rate is too low");
    }

    private SpeedFound withoutNominal() {
        List<SpectralPeak> speeds = lines(WITHOUT_NOMINAL).stream()
                .filter(line -> numbers(line.frequencyHertz(), 3).size() == 3)
                .filter(line -> !speaksForLess(line.frequencyHertz())).toList();
        if (speeds.size() != 1) {
            return none(speeds.isEmpty() ? "no speed from 10 Hz to 60 Hz has lines at 1, 2 and 3 times it and none"
                    + " between that speak for a lower one"
                    : speeds.size() + " speeds from 10 Hz to 60 Hz have lines at 1, 2 and 3 times them");
        }
        SpectralPeak line = speeds.get(0);
        if (mains.filter(hertz -> Math.abs(line.frequencyHertz() / hertz - 1) < SHAFTS_APART).isPresent()) {
            return none("a speed of " + Digits.significant(line.frequencyHertz(), 4)
                    + " Hz can't be told from the mains");
        }
        return confident(line, WITHOUT_NOMINAL).orElseGet(() -> none("other lines are nearly as large as that at "
                + Digits.significant(line.frequencyHertz(), 4) + " Hz"));
    }

    private static SpeedFound none(String reason) {
        return SpeedFound.notDetermined().withRemark(reason);
    }

    /** Significant lines of a range, the largest first. */
    private List<SpectralPeak> lines(Band range) {
        int searched = 1 + (int) Math.ceil(range.widthHertz() / spectrum.resolutionHertz());
        return spectrum.peaks(spectrum.lines()).stream().filter(peak -> range.contains(peak.frequencyHertz()))
                .filter(peak -> floor.probability(peak.frequencyHertz(), peak.level().si(), searched) < FALSE_ALARM)
                .toList();
    }

    private Optional<SpeedFound> confident(SpectralPeak line, Band range) {
        double hertz = line.frequencyHertz();
        double rival = lines(range).stream()
                .filter(other -> Math.abs(other.frequencyHertz() - hertz * Math.rint(other.frequencyHertz() / hertz))
                        > spectrum.resolutionHertz())
                .mapToDouble(other -> other.level().si()).max().orElse(0);
        double confidence = Math.max(0, 1 - rival / line.level().si());
        return confidence < LEAST_CONFIDENCE ? Optional.empty()
                : Optional.of(SpeedFound.inRecording(RotationSpeed.ofHertz(hertz), confidence));
    }

    /** A line at the mains may be hum; it refines no speed that was given otherwise. */
    private boolean isMains(SpectralPeak found, RotationSpeed given) {
        double near = spectrum.resolutionHertz();
        return mains.filter(hertz -> Math.abs(found.frequencyHertz() - hertz) < near
                && Math.abs(given.hertz() - hertz) > 0.25 * near).isPresent();
    }

    private boolean speaksForLess(double hertz) {
        return numbers(hertz / 2, 6).stream().anyMatch(n -> n % 2 != 0)
                || numbers(hertz / 3, 9).stream().anyMatch(n -> n % 3 != 0);
    }

    private List<Integer> numbers(double hertz, int count) {
        return HarmonicFamily.of(spectrum, floor, hertz, count, 0.5 * spectrum.resolutionHertz() / hertz, FALSE_ALARM)
                .members().stream().map(FamilyMember::number).toList();
    }
}
