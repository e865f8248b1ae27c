package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.lines.BandEnvelopes;
import dev.vibra.bearing.lines.EnvelopeBands;
import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One search: bands, speed, families, candidates. */
final class UnknownBearingRun {
    private static final double REVOLUTIONS_PER_BLOCK = 300;
    /** Bands hold four harmonics of a rate of so many orders, a common one. */
    private static final double HIGHEST_RATE_ORDERS = 5;
    private static final double CAGE_DEPTH = 0.05;

    private final Waveform wave;
    private final double nominal;
    private final UnknownBearingSettings settings;

    UnknownBearingRun(Waveform wave, RotationSpeed speed, UnknownBearingSettings settings) {
        this.wave = wave;
        this.nominal = speed.hertz();
        this.settings = settings;
    }

    UnknownBearing result() {
        double revolutions = wave.durationSeconds() * nominal;
        if (revolutions < UnknownBearing.FEWEST_REVOLUTIONS) {
            return nothing("the recording holds " + Digits.significant(revolutions, 3) + " revolutions, "
                    + Digits.compact(UnknownBearing.FEWEST_REVOLUTIONS, 3) + " are needed");
        }
        List<EnvelopeLines> lines = lines();
        return lines.isEmpty() ? nothing("no band is wide enough or holds vibration") : searched(lines);
    }

    private UnknownBearing nothing(String reason) {
        return new UnknownBearing(RotationSpeed.ofHertz(nominal), List.of(), List.of(), List.of(), reason);
    }

    private List<EnvelopeLines> lines() {
        List<Band> bands = EnvelopeBands.candidates(wave.sampleRateHertz(), HIGHEST_RATE_ORDERS * nominal);
        return bands.isEmpty() ? List.of() : BandEnvelopes.of(wave, bands, nominal, REVOLUTIONS_PER_BLOCK,
                wave.sampleRateHertz()).stream().flatMap(Optional::stream).toList();
    }

    private UnknownBearing searched(List<EnvelopeLines> lines) {
        Shaft shaft = Shaft.of(lines, nominal, settings.speedTolerance(), settings.falseAlarmProbability());
        BlindSearch search = new BlindSearch(lines, shaft, settings);
        boolean deep = search.families().stream().anyMatch(family -> family.depth() >= settings.depth());
        List<SeenPulsation> families = search.families().stream().filter(family -> counts(family, deep)).toList();
        List<ObservedRate> rates = families.stream().map(SeenPulsation::rate).toList();
        List<Proportion> candidates = new ArrayList<>();
        for (RotatingRing ring : settings.turning()) {
            candidates.addAll(deep ? Proportions.of(rates, ring, slip(shaft)) : List.of());
        }
        return new UnknownBearing(RotationSpeed.ofHertz(shaft.hertz()), families, search.elsewhere(),
                Proportions.ordered(candidates), null);
    }

    /** Beside a deep pulsation one half as deep helps to tell its origin, and so does any of a cage. */
    private boolean counts(SeenPulsation family, boolean besideDeep) {
        boolean cage = settings.turning().stream()
                .anyMatch(ring -> Plausible.cage(ring).holds(family.rate().order()));
        return family.depth() >= settings.depth() || besideDeep && family.depth() >= (cage ? CAGE_DEPTH
                : 0.5 * settings.depth());
    }

    /** What isn't known of the speed is missing in the orders. */
    private double slip(Shaft shaft) {
        return Math.min(Proportions.HIGHEST_SLIP, settings.slip() + (shaft.read() ? 0 : shaft.reach()));
    }
}
