package dev.vibra.lines;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.spectrum.Spectrum;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Lines at equal distances on both sides of a carrier that stand out of the noise: the carrier is modulated at that
 * distance.
 *
 * @param carrierHertz frequency of the carrier in Hz
 * @param spacingHertz distance of the sidebands in Hz
 * @param members sidebands found, from the lowest frequency on; their numbers are negative below the carrier
 * @param searched number of sidebands that were looked for
 */
public record SidebandFamily(double carrierHertz, double spacingHertz, List<FamilyMember> members, int searched)
        implements Serializable {
    /**
     * Checks the values and copies the list.
     *
     * @param carrierHertz see the record
     * @param spacingHertz see the record
     * @param members see the record
     * @param searched see the record
     * @throws IllegalArgumentException if a value is out of range
     */
    public SidebandFamily {
        Require.positive("carrierHertz", carrierHertz, "Hz");
        Require.positive("spacingHertz", spacingHertz, "Hz");
        Require.atLeast("searched", searched, Objects.requireNonNull(members, "members").size());
        members = Require.copy("members", members);
    }

    /**
     * Looks for sidebands.
     *
     * @param spectrum spectrum with rms averaging
     * @param floor its noise floor
     * @param carrierHertz carrier in Hz, above zero
     * @param spacingHertz distance of the sidebands in Hz, more than two lines
     * @param pairs number of sidebands to look for on each side, at least 1; those outside the spectrum are left out
     * @param toleranceHertz tolerated deviation of a sideband in Hz, below half the distance
     * @param falseAlarm highest probability of noise at which a sideband counts, above 0, below 1
     * @return the family
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SidebandFamily of(Spectrum spectrum, NoiseFloor floor, double carrierHertz, double spacingHertz,
            int pairs, double toleranceHertz, double falseAlarm) {
        Objects.requireNonNull(floor, "floor");
        Objects.requireNonNull(spectrum, "spectrum");
        Require.positive("carrierHertz", carrierHertz, "Hz");
        if (!(spacingHertz > 2 * spectrum.resolutionHertz() && spacingHertz < Double.POSITIVE_INFINITY)) {
            throw Require.failure("spacingHertz", "more than two lines, " + 2 * spectrum.resolutionHertz() + " Hz",
                    spacingHertz);
        }
        Require.within("toleranceHertz", toleranceHertz, 0, spacingHertz / 2, "Hz");
        Require.atLeast("pairs", pairs, 1);
        if (!(falseAlarm > 0 && falseAlarm < 1)) {
            throw Require.failure("falseAlarm", "above 0 and below 1", falseAlarm);
        }
        List<FamilyMember> members = new ArrayList<>();
        int searched = 0;
        double highest = spectrum.frequencyHertz(spectrum.lines() - 1);
        int below = (int) Math.min(pairs, carrierHertz / spacingHertz + 1);
        int above = (int) Math.min(pairs, Math.max(0, (highest - carrierHertz) / spacingHertz + 1));
        for (int n = -below; n <= above; n++) {
            double expected = carrierHertz + n * spacingHertz;
            if (n != 0 && expected - toleranceHertz > 0 && expected + toleranceHertz < highest) {
                searched++;
                Search.member(spectrum, floor, n, expected, toleranceHertz, falseAlarm).ifPresent(members::add);
            }
        }
        return new SidebandFamily(carrierHertz, spacingHertz, members, searched);
    }

    /** Returns carrier, distance and count. */
    @Override
    public String toString() {
        return members.size() + " of " + searched + " sidebands " + Digits.significant(spacingHertz, 4)
                + " Hz apart around "
                + Digits.significant(carrierHertz, 5) + " Hz";
    }
}
