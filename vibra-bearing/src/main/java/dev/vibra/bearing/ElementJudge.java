package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Turns the judged candidates of all elements into verdicts. */
final class ElementJudge {
    private static final double LEAST_FREE_SHARE = 2.0 / 3;

    private final KinematicFrequencies kinematics;
    private final DiagnosisSettings settings;
    private final List<BandLines> bands;
    private final LineMask rotation;
    private final LineMask explained;

    ElementJudge(KinematicFrequencies kinematics, DiagnosisSettings settings, List<BandLines> bands, LineMask rotation,
            LineMask explained) {
        this.kinematics = kinematics;
        this.settings = settings;
        this.bands = bands;
        this.rotation = rotation;
        this.explained = explained;
    }

    BearingDiagnosis conclude(Map<BearingElement, List<Candidate>> judged) {
        Optional<BearingElement> symptom = symptom(judged);
        Optional<Pulsation> unexplained = symptom.isPresent() ? Optional.empty() : unexplained();
        Optional<String> doubt = symptom.map(element -> "nothing significant here, but the bearing pulsates at the rate"
                + " of the " + element + ", which may hide it").or(() -> unexplained.map(pulsation ->
                "nothing significant here, but a pulsation of unknown origin at " + pulsation));
        List<ElementFinding> findings = new ArrayList<>();
        for (BearingElement element : BearingElement.values()) {
            findings.add(finding(element, judged.get(element), doubt));
        }
        BandLines shown = shown(judged);
        return new BearingDiagnosis(kinematics, findings, bands.stream().map(b -> b.spectrum().band()).toList(),
                shown.spectrum(), bandReason(shown, judged), unexplained.orElse(null));
    }

    /**
     * A symptom of any element keeps every other from being called absent, as a deep pulsation of unknown origin
     * does.
     */
    private Optional<BearingElement> symptom(Map<BearingElement, List<Candidate>> judged) {
        return judged.keySet().stream().max(Comparator.comparingDouble(e -> depth(judged.get(e))))
                .filter(e -> depth(judged.get(e)) >= settings.signDepth());
    }

    private Optional<Pulsation> unexplained() {
        for (BandLines lines : bands) {
            int deepest = deepestUnexplained(lines);
            if (deepest > 0 && lines.depthAround(deepest) >= settings.presentDepth()) {
                return Optional.of(new Pulsation(lines.spectrum().band(), lines.interpolated(deepest),
                        lines.depthAround(deepest), lines.logProbability(deepest) / Math.log(10), List.of()));
            }
        }
        return Optional.empty();
    }

    private static double depth(List<Candidate> candidates) {
        return DiagnosisRun.deepest(candidates).map(Candidate::depth).orElse(0.0);
    }

    private int deepestUnexplained(BandLines lines) {
        int deepest = 0;
        for (int i = 0; lines.resolution() * i < lines.highestUsableHertz(); i++) {
            double hertz = i * lines.resolution();
            if (lines.holds(hertz) && lines.logProbability(i) < Math.log(settings.falseAlarmProbability())
                    && !explained.covers(hertz)
                    && (deepest == 0 || lines.depthAround(i) > lines.depthAround(deepest))) {
                deepest = i;
            }
        }
        return deepest;
    }

    private ElementFinding finding(BearingElement element, List<Candidate> significant, Optional<String> doubt) {
        double detectable = detectableDepth(element);
        Optional<Candidate> symptom = DiagnosisRun.deepest(significant);
        if (symptom.isPresent() && symptom.get().depth() >= settings.signDepth()) {
            return ofSymptom(element, symptom.get(), detectable);
        }
        Optional<Candidate> rivalled = significant.stream().filter(c -> c.rival().isPresent())
                .filter(c -> c.depth() >= settings.signDepth()).max(Comparator.comparingDouble(Candidate::depth));
        if (rivalled.isPresent()) {
            return with(element, ElementVerdict.NOT_DETERMINED, rivalled, detectable,
                    "lines stand at this rate, but " + rivalled.get().rival().orElseThrow());
        }
        return withoutSymptom(element, symptom, detectable, doubt);
    }

    private ElementFinding ofSymptom(BearingElement element, Candidate symptom, double detectable) {
        String depth = "pulsation at its rate, depth " + Digits.significant(symptom.depth(), 3);
        String limit = Digits.significant(settings.presentDepth(), 3);
        if (element == BearingElement.CAGE) {
            return with(element, ElementVerdict.NOT_DETERMINED, Optional.of(symptom), detectable,
                    depth + ": the cage or one rolling element, the envelope can't tell which");
        }
        if (symptom.depth() >= settings.presentDepth()) {
            return with(element, ElementVerdict.PRESENT, Optional.of(symptom), detectable,
                    depth + " (limit " + limit + ")");
        }
        return with(element, ElementVerdict.NOT_DETERMINED, Optional.of(symptom), detectable,
                depth + ", weaker than the " + limit + " of a clear defect");
    }

    private ElementFinding withoutSymptom(BearingElement element, Optional<Candidate> symptom, double detectable,
            Optional<String> doubt) {
        String limit = Digits.significant(settings.absentDepth(), 3);
        if (detectable == Double.POSITIVE_INFINITY) {
            return with(element, ElementVerdict.NOT_DETERMINED, symptom, detectable,
                    "multiples of half the speed of rotation take more than a third of where this rate may lie, or a"
                            + " band has no room for two of its harmonics");
        }
        if (detectable > settings.absentDepth()) {
            return with(element, ElementVerdict.NOT_DETERMINED, symptom, detectable,
                    "nothing significant, but only a depth of "
                            + Digits.significant(detectable, 3) + " would have been found, not " + limit);
        }
        if (doubt.isPresent()) {
            return with(element, ElementVerdict.NOT_DETERMINED, symptom, detectable, doubt.get());
        }
        return with(element, ElementVerdict.ABSENT, symptom, detectable,
                faint(symptom) + "; a pulsation of depth "
                        + Digits.significant(detectable, 3) + " would have been found (limit " + limit + ")");
    }

    private String faint(Optional<Candidate> symptom) {
        return symptom.map(s -> "only a pulsation of depth " + Digits.significant(s.depth(), 3) + ", no sign below "
                + Digits.significant(settings.signDepth(), 3)).orElse("no sign");
    }

    private ElementFinding with(BearingElement element, ElementVerdict verdict, Optional<Candidate> shown,
            double detectable, String reason) {
        return new ElementFinding(element, verdict, kinematics.of(element),
                shown.map(c -> c.pulsation(kinematics.modulationOf(element))).orElse(null), detectable, reason);
    }

    /**
     * Depth that the first two free harmonics must have for the false alarm probability, in the least sensitive band.
     */
    private double detectableDepth(BearingElement element) {
        double worst = 0;
        for (BandLines lines : bands) {
            worst = Math.max(worst, detectableDepth(element, lines));
        }
        return worst;
    }

    private double detectableDepth(BearingElement element, BandLines lines) {
        double expected = kinematics.of(element);
        double reach = settings.frequencyTolerance() * expected;
        RateHarmonics family = RateHarmonics.at(lines, expected, settings.harmonics(), rotation);
        if (family.counted() < 2 || freeShare(lines, expected - reach, expected + reach) < LEAST_FREE_SHARE) {
            return Double.POSITIVE_INFINITY;
        }
        double logFamily = Math.log(settings.falseAlarmProbability())
                - Math.log(family.places(reach) * BearingElement.values().length * bands.size());
        double logLine = RankProbability.logLineOfTwo(logFamily, family.counted());
        return Math.max(lines.depthFoundWith(logLine, expected - reach, expected + reach),
                lines.depthFoundWith(logLine, 2 * (expected - reach), 2 * (expected + reach)));
    }

    /** Part of the window of a rate that isn't taken by rotation; a defect hidden behind it can't be called absent. */
    private double freeShare(BandLines lines, double from, double to) {
        double step = 0.25 * lines.resolution();
        int free = 0;
        int all = 0;
        for (double f = from; f <= to; f += step) {
            free += rotation.covers(f) ? 0 : 1;
            all++;
        }
        return (double) free / all;
    }

    private BandLines shown(Map<BearingElement, List<Candidate>> judged) {
        return strongest(judged).map(c -> c.family().lines()).orElseGet(() -> bands.stream()
                .max(Comparator.comparingDouble(b -> b.spectrum().spectralKurtosis())).orElseThrow());
    }

    private static Optional<Candidate> strongest(Map<BearingElement, List<Candidate>> judged) {
        return judged.values().stream().map(DiagnosisRun::deepest).flatMap(Optional::stream)
                .max(Comparator.comparingDouble(Candidate::depth));
    }

    private String bandReason(BandLines shown, Map<BearingElement, List<Candidate>> judged) {
        String band = "envelope of " + shown.spectrum().band();
        if (settings.bands().size() == 1) {
            return band + ", as given";
        }
        return strongest(judged).isPresent()
                ? band + ", the deepest pulsation at a rate of the bearing of " + bands.size() + " bands tried"
                : band + ", the most impulsive of " + bands.size() + " bands tried, spectral kurtosis "
                        + Digits.significant(shown.spectrum().spectralKurtosis(), 2);
    }
}
