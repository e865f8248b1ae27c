package dev.vibra.lines;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Harmonics of one fundamental that stand out of the noise.
 *
 * @param fundamentalHertz fundamental that fits the harmonics found best, weighted with their number; the expected one
 *     if none was found
 * @param members harmonics found, in rising order
 * @param searched number of harmonics that were looked for
 */
public record HarmonicFamily(double fundamentalHertz, List<FamilyMember> members, int searched)
        implements Serializable {
    /**
     * Checks the values and copies the list.
     *
     * @param fundamentalHertz see the record
     * @param members see the record
     * @param searched see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public HarmonicFamily {
        Require.positive("fundamentalHertz", fundamentalHertz, "Hz");
        Require.atLeast("searched", searched, Objects.requireNonNull(members, "members").size());
        members = Require.copy("members", members);
    }

    /**
     * Looks for the harmonics of a fundamental.
     *
     * @param spectrum spectrum with rms averaging
     * @param floor its noise floor
     * @param fundamentalHertz expected fundamental in Hz, above zero
     * @param count number of harmonics to look for, at least 1; those above half the sample rate are left out
     * @param relativeTolerance tolerated deviation of the fundamental, 0 to 0.2; the search width of a harmonic grows
     *     with its number and is at least one line and a half
     * @param falseAlarm highest probability of noise at which a harmonic counts, above 0, below 1
     * @return the family
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static HarmonicFamily of(Spectrum spectrum, NoiseFloor floor, double fundamentalHertz, int count,
            double relativeTolerance, double falseAlarm) {
        Objects.requireNonNull(floor, "floor");
        Objects.requireNonNull(spectrum, "spectrum");
        Require.positive("fundamentalHertz", fundamentalHertz, "Hz");
        Require.atLeast("count", count, 1);
        Require.within("relativeTolerance", relativeTolerance, 0, 0.2, "");
        if (!(falseAlarm > 0 && falseAlarm < 1)) {
            throw Require.failure("falseAlarm", "above 0 and below 1", falseAlarm);
        }
        List<FamilyMember> members = new ArrayList<>();
        double weighted = 0;
        double weights = 0;
        int searched = 0;
        for (int n = 1; n <= count; n++) {
            double expected = n * fundamentalHertz;
            double tolerance = Math.max(relativeTolerance * expected, 1.5 * spectrum.resolutionHertz());
            if (expected + tolerance >= spectrum.frequencyHertz(spectrum.lines() - 1)) {
                break;
            }
            searched++;
            Optional<FamilyMember> member = Search.member(spectrum, floor, n, expected, tolerance, falseAlarm);
            if (member.isPresent()) {
                members.add(member.get());
                // A harmonic's frequency has the same error as any line, so it tells the fundamental n times better.
                weighted += n * member.get().peak().frequencyHertz();
                weights += (double) n * n;
            }
        }
        return new HarmonicFamily(members.isEmpty() ? fundamentalHertz : weighted / weights, members, searched);
    }

    /**
     * Returns the root of the sum of the mean squares of the harmonics found.
     *
     * @return rms in the SI unit of the spectrum
     */
    public double rms() {
        return Math.sqrt(members.stream().map(FamilyMember::peak).map(SpectralPeak::level)
                .mapToDouble(level -> level.si() * level.si()).sum());
    }

    /** Returns fundamental and count, as in {@code 3 of 5 harmonics of 88.31 Hz}. */
    @Override
    public String toString() {
        return members.size() + " of " + searched + " harmonics of " + Digits.significant(fundamentalHertz, 4) + " Hz";
    }
}
