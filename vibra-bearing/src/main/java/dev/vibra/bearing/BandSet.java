package dev.vibra.bearing;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.lines.BandEnvelopes;
import dev.vibra.bearing.lines.EnvelopeBands;
import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.Optional;

/**
 * The envelope lines of all bands tried, or why there are none.
 *
 * @param lines one for each band; empty if there are none
 * @param vibration those of the vibration itself; null if there are none
 * @param obstacle why there are none; empty if there are
 */
record BandSet(List<EnvelopeLines> lines, SearchLines vibration, String obstacle) {
    /** Multiples of the speed are looked for in the vibration itself up to this order. */
    private static final double HIGHEST_ORDER = 10.5;

    static BandSet of(Waveform wave, KinematicFrequencies kinematics, DiagnosisSettings settings) {
        double revolutions = wave.durationSeconds() * kinematics.shaftHertz();
        if (revolutions < BearingDiagnosis.FEWEST_REVOLUTIONS) {
            return none("the recording holds " + Digits.significant(revolutions, 3) + " revolutions, "
                    + Digits.compact(BearingDiagnosis.FEWEST_REVOLUTIONS, 3) + " are needed");
        }
        double highestRate = highestRate(kinematics);
        List<Band> bands = settings.bands().isEmpty()
                ? EnvelopeBands.candidates(wave.sampleRateHertz(), highestRate) : settings.bands();
        if (bands.isEmpty()) {
            return none("the sample rate of " + Digits.compact(wave.sampleRateHertz(), 5)
                    + " Hz leaves no band wide enough for four harmonics of " + Digits.significant(highestRate, 4)
                    + " Hz");
        }
        List<Optional<EnvelopeLines>> lines = BandEnvelopes.of(wave, bands, kinematics.shaftHertz(),
                settings.revolutionsPerBlock(), highestHertz(kinematics, settings));
        for (int i = 0; i < bands.size(); i++) {
            if (lines.get(i).isEmpty()) {
                return none("the band " + bands.get(i) + " is silent");
            }
        }
        return new BandSet(lines.stream().map(Optional::orElseThrow).toList(), SearchLines.ofVibration(wave,
                kinematics.shaftHertz(), HIGHEST_ORDER * kinematics.shaftHertz()), "");
    }

    private static BandSet none(String obstacle) {
        return new BandSet(List.of(), null, obstacle);
    }

    private static double highestRate(KinematicFrequencies kinematics) {
        double highest = 0;
        for (BearingElement element : BearingElement.values()) {
            highest = Math.max(highest, kinematics.of(element));
        }
        return highest;
    }

    static double highestHertz(KinematicFrequencies kinematics, DiagnosisSettings settings) {
        return settings.harmonics() * (1 + settings.frequencyTolerance()) * highestRate(kinematics)
                + 4 * kinematics.shaftHertz();
    }
}
