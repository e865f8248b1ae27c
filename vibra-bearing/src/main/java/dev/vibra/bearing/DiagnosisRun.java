package dev.vibra.bearing;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.SquaredEnvelope;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * One pass of the diagnosis: the element with the strongest evidence first, its lines then being explained for the
 * rest. The cage comes last: what looks like its multiples may be sidebands of any other.
 */
final class DiagnosisRun {
    /**
     * Half width of an explained line in bins: the main lobe of the Hann window, two, and the one that a line may lie
     * aside.
     */
    static final double MASK_BINS = 3;
    /** A band quieter than this part of the recording holds rounding noise, not vibration. */
    private static final double SILENCE = 1e-9;

    private final Waveform wave;
    private final KinematicFrequencies kinematics;
    private final DiagnosisSettings settings;
    private final double logAlarm;
    private final double highestHertz;

    DiagnosisRun(Waveform wave, KinematicFrequencies kinematics, DiagnosisSettings settings) {
        this.wave = wave;
        this.kinematics = kinematics;
        this.settings = settings;
        logAlarm = Math.log(settings.falseAlarmProbability());
        highestHertz = settings.harmonics() * (1 + settings.frequencyTolerance()) * highestRate()
                + 4 * kinematics.shaftHertz();
    }

    private double highestRate() {
        double highest = 0;
        for (BearingElement element : BearingElement.values()) {
            highest = Math.max(highest, kinematics.of(element));
        }
        return highest;
    }

    BearingDiagnosis diagnosis() {
        double revolutions = wave.durationSeconds() * kinematics.shaftHertz();
        if (revolutions < BearingDiagnosis.FEWEST_REVOLUTIONS) {
            return nothing("the recording holds " + Digits.significant(revolutions, 3) + " revolutions, "
                    + Digits.compact(BearingDiagnosis.FEWEST_REVOLUTIONS, 3) + " are needed");
        }
        List<Band> bands = settings.bands().isEmpty()
                ? EnvelopeBands.candidates(wave.sampleRateHertz(), highestRate()) : settings.bands();
        if (bands.isEmpty()) {
            return nothing("the sample rate of " + Digits.compact(wave.sampleRateHertz(), 5)
                    + " Hz leaves no band wide enough for four harmonics of " + Digits.significant(highestRate(), 4)
                    + " Hz");
        }
        List<BandLines> lines = new ArrayList<>();
        double quiet = SILENCE * wave.rms().si();
        for (SquaredEnvelope envelope : Envelope.squared(wave, bands)) {
            Optional<EnvelopeSpectrum> spectrum = audible(envelope, quiet);
            if (spectrum.isEmpty()) {
                return nothing("the band " + envelope.band() + " is silent");
            }
            lines.add(new BandLines(spectrum.get().upTo(highestHertz), kinematics.shaftHertz()));
        }
        return diagnosis(lines);
    }

    private Optional<EnvelopeSpectrum> audible(SquaredEnvelope envelope, double quiet) {
        double resolution = kinematics.shaftHertz() / settings.revolutionsPerBlock();
        return EnvelopeSpectrum.unlessSilent(envelope, resolution).filter(s -> s.level().si() > quiet);
    }

    private BearingDiagnosis nothing(String reason) {
        List<ElementFinding> findings = new ArrayList<>();
        for (BearingElement element : BearingElement.values()) {
            findings.add(new ElementFinding(element, ElementVerdict.NOT_DETERMINED, kinematics.of(element), null,
                    Double.POSITIVE_INFINITY, reason));
        }
        return new BearingDiagnosis(kinematics, findings, List.of(), null, "no envelope spectrum: " + reason, null);
    }

    private BearingDiagnosis diagnosis(List<BandLines> bands) {
        double[] rings = DoubleStream.of(kinematics.innerRingHertz(), kinematics.outerRingHertz()).filter(f -> f > 0)
                .map(f -> ShaftSpeed.refined(bands, f, settings.speedTolerance(), logAlarm)).toArray();
        Rates rates = new Rates(rings, kinematics.cageHertz(), highestHertz);
        LineMask free = new LineMask(MASK_BINS * bands.get(0).resolution(),
                DoubleStream.concat(rates.halves(), otherRates()));
        LineMask mask = free;
        Map<BearingElement, List<Candidate>> judged = new EnumMap<>(BearingElement.class);
        Set<BearingElement> remaining = EnumSet.allOf(BearingElement.class);
        while (!remaining.isEmpty()) {
            Map<BearingElement, List<Candidate>> found = new EnumMap<>(BearingElement.class);
            for (BearingElement element : remaining) {
                found.put(element, search(element, bands, mask));
            }
            BearingElement next = remaining.stream()
                    .min(Comparator.comparing((BearingElement e) -> e == BearingElement.CAGE)
                    .thenComparingDouble(e -> least(found.get(e)))).orElseThrow();
            List<Candidate> candidates = explained(next, found.get(next), rates, mask);
            judged.put(next, candidates);
            remaining.remove(next);
            // What is no sign explains nothing: an element at half another's rate would swallow its harmonics.
            Optional<Candidate> symptom = deepest(candidates).filter(c -> c.depth() >= settings.signDepth());
            if (symptom.isPresent()) {
                mask = mask.with(rates.ofFamily(next, symptom.get().family().refinedHertz()));
            }
        }
        return new ElementJudge(kinematics, settings, bands, free, mask).conclude(judged);
    }

    private DoubleStream otherRates() {
        return settings.otherRatesHertz().stream().flatMapToDouble(rate ->
                IntStream.rangeClosed(1, (int) (highestHertz / rate)).mapToDouble(n -> n * rate));
    }

    private static double least(List<Candidate> candidates) {
        return candidates.stream().mapToDouble(Candidate::logTotal).min().orElse(0);
    }

    private List<Candidate> search(BearingElement element, List<BandLines> bands, LineMask mask) {
        double expected = kinematics.of(element);
        double reach = settings.frequencyTolerance() * expected;
        List<Candidate> candidates = new ArrayList<>();
        for (BandLines lines : bands) {
            RateHarmonics family = RateHarmonics.best(lines, expected - reach, expected + reach, settings.harmonics(),
                    mask);
            double trials = Math.log(family.places(reach) * BearingElement.values().length * bands.size());
            candidates.add(new Candidate(family, Math.min(0, family.logProbability() + trials), Optional.empty()));
        }
        return candidates;
    }

    /** Keeps the significant candidates, with their other explanations. */
    private List<Candidate> explained(BearingElement element, List<Candidate> candidates, Rates rates, LineMask mask) {
        RivalSearch rivals = new RivalSearch(kinematics, rates, settings.frequencyTolerance());
        return candidates.stream().filter(c -> c.logTotal() < logAlarm)
                .map(c -> c.explainedBy(rivals.explain(element, c.family(), mask))).toList();
    }

    static Optional<Candidate> deepest(List<Candidate> candidates) {
        return candidates.stream().filter(c -> c.rival().isEmpty() && c.depth() > 0)
                .max(Comparator.comparingDouble(Candidate::depth));
    }
}
