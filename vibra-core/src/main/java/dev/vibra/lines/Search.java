package dev.vibra.lines;

import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.util.Optional;

/** Finds the line of a family within its search width, if noise alone is unlikely to make one. */
final class Search {
    private Search() {}

    static Optional<FamilyMember> member(Spectrum spectrum, NoiseFloor floor, int number, double expected,
            double tolerance, double falseAlarm) {
        Optional<SpectralPeak> peak = spectrum.peakNear(expected, tolerance);
        if (peak.isEmpty()) {
            return Optional.empty();
        }
        int searched = 1 + (int) Math.ceil(2 * tolerance / spectrum.resolutionHertz());
        double probability = floor.probability(peak.get().frequencyHertz(), peak.get().level().si(), searched);
        return probability <= falseAlarm ? Optional.of(new FamilyMember(number, peak.get(), expected, probability))
                : Optional.empty();
    }
}
