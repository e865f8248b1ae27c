package dev.vibra.bearing;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RankProbability;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Turns the judged candidates of all elements into verdicts. */
final class ElementJudge {
    private static final double LEAST_FREE_SHARE = 2.0 / 3;
    /** With fewer revolutions than this a line is so wide that more depth is asked of it, by the factor below. */
    private static final double FEW_REVOLUTIONS = 50;
    private static final double DEEPER = 1.2;
    /** Spectral kurtosis below which a steady tone holds most of a band: that of a tone alone is -1. */
    private static final double TONAL = -0.5;
    /** A rate so far from an element's can't be its own, with another bearing fitted; common practice, no source. */
    private static final double NEARLY = 1.6;

    private final KinematicFrequencies kinematics;
    private final DiagnosisSettings settings;
    private final List<EnvelopeLines> bands;
    private final LineMask known;
    private final LineMask explained;
    private final boolean fewRevolutions;
    private final double presentDepth;
    private final Map<BearingElement, Double> detectable = new EnumMap<>(BearingElement.class);

    /** What is known are lines that rotation and other parts may make, what is explained those that stand. */
    ElementJudge(KinematicFrequencies kinematics, DiagnosisSettings settings, List<EnvelopeLines> bands,
            LineMask known, LineMask explained) {
        this.kinematics = kinematics;
        this.settings = settings;
        this.bands = bands;
        this.known = known;
        this.explained = explained;
        // A recording of so few revolutions is one block.
        fewRevolutions = kinematics.shaftHertz() / bands.get(0).resolutionHertz() < FEW_REVOLUTIONS;
        presentDepth = (fewRevolutions ? DEEPER : 1) * settings.presentDepth();
    }

    BearingDiagnosis conclude(Map<BearingElement, List<Candidate>> judged) {
        Optional<BearingElement> symptom = symptom(judged);
        Optional<Pulsation> unexplained = symptom.isPresent() ? Optional.empty() : unexplained();
        List<ElementFinding> findings = new ArrayList<>();
        for (BearingElement element : BearingElement.values()) {
            findings.add(finding(element, judged.get(element), doubt(element, symptom, unexplained)));
        }
        EnvelopeLines shown = shown(judged);
        return new BearingDiagnosis(kinematics, findings, bands.stream().map(b -> b.spectrum().band()).toList(),
                shown.spectrum(), bandReason(shown, judged), unexplained.orElse(null),
                carried(judged.get(BearingElement.CAGE)).orElse(null));
    }

    /** Fifty revolutions are twenty turns of a cage: in fewer, knocks of uneven strength swing at its rate by chance. */
    private Optional<Pulsation> carried(List<Candidate> cage) {
        return fewRevolutions ? Optional.empty() : DiagnosisRun.deepest(cage).filter(c -> c.depth() >= presentDepth).map(c -> c.pulsation(0));
    }

    /** What keeps an element from being called absent though nothing stands at its rate. */
    private Optional<String> doubt(BearingElement element, Optional<BearingElement> symptom,
            Optional<Pulsation> unexplained) {
        return symptom.map(other -> "nothing significant here, but the bearing pulsates at the rate of the " + other
                + ", which may hide it").or(() -> unexplained.filter(pulsation -> isNear(element, pulsation))
                .map(pulsation -> "nothing significant here, but a pulsation of unknown origin at " + pulsation));
    }

    private boolean isNear(BearingElement element, Pulsation pulsation) {
        double ratio = pulsation.hertz() / kinematics.of(element);
        return ratio < NEARLY && ratio > 1 / NEARLY;
    }

    /**
     * A symptom of any element keeps every other from being called absent, as a deep pulsation of unknown origin
     * near its rate does.
     */
    private Optional<BearingElement> symptom(Map<BearingElement, List<Candidate>> judged) {
        return judged.keySet().stream().max(Comparator.comparingDouble(e -> depth(judged.get(e))))
                .filter(e -> depth(judged.get(e)) >= settings.signDepth());
    }

    private Optional<Pulsation> unexplained() {
        return bands.stream().map(this::deepestUnexplained).flatMap(Optional::stream)
                .max(Comparator.comparingDouble(Pulsation::depth));
    }

    private static double depth(List<Candidate> candidates) {
        return DiagnosisRun.deepest(candidates).map(Candidate::depth).orElse(0.0);
    }

    private Optional<Pulsation> deepestUnexplained(EnvelopeLines lines) {
        double trials = Math.log((double) lines.count() * bands.size());
        double limit = Math.log(settings.falseAlarmProbability()) - trials;
        Pulsation deepest = null;
        for (int i = 0; lines.resolutionHertz() * i < lines.highestUsableHertz(); i++) {
            double hertz = i * lines.resolutionHertz();
            if (lines.logProbability(i) < limit && lines.holds(hertz) && !known.covers(hertz)) {
                double depth = lines.depthAround(i);
                if (depth >= presentDepth && (deepest == null || depth > deepest.depth())) {
                    deepest = new Pulsation(lines.spectrum().band(), lines.interpolated(i), depth,
                            Math.min(0, lines.logProbability(i) + trials) / Math.log(10), List.of());
                }
            }
        }
        return Optional.ofNullable(deepest);
    }

    private ElementFinding finding(BearingElement element, List<Candidate> significant, Optional<String> doubt) {
        double detectable = detectableDepth(element);
        Optional<Candidate> symptom = DiagnosisRun.deepest(significant);
        if (symptom.isPresent() && symptom.get().depth() >= settings.signDepth()) {
            return ofSymptom(element, symptom.get(), detectable);
        }
        Optional<Candidate> rivalled = significant.stream().filter(c -> c.rival().isPresent())
                .max(Comparator.comparingDouble(Candidate::depth));
        if (rivalled.isPresent() && (symptom.isEmpty() || rivalled.get().depth() >= settings.signDepth())) {
            return with(element, ElementVerdict.NOT_DETERMINED, rivalled, detectable,
                    "lines stand at this rate, but " + rivalled.get().rival().orElseThrow());
        }
        if (symptom.isPresent()) {
            return with(element, ElementVerdict.NOT_DETERMINED, symptom, detectable,
                    "a faint pulsation at its rate, depth " + Digits.significant(symptom.get().depth(), 3)
                            + ", no sign of a defect below " + Digits.significant(settings.signDepth(), 3));
        }
        return withoutSymptom(element, detectable, doubt);
    }

    private ElementFinding ofSymptom(BearingElement element, Candidate symptom, double detectable) {
        String depth = "pulsation at its rate, depth " + Digits.significant(symptom.depth(), 3);
        String limit = Digits.significant(presentDepth, 3);
        if (element == BearingElement.CAGE) {
            return with(element, ElementVerdict.NOT_DETERMINED, Optional.of(symptom), detectable,
                    depth + ": the cage or one rolling element, the envelope can't tell which");
        }
        if (symptom.depth() >= presentDepth) {
            return with(element, ElementVerdict.PRESENT, Optional.of(symptom), detectable,
                    depth + " (limit " + limit + ")");
        }
        return with(element, ElementVerdict.NOT_DETERMINED, Optional.of(symptom), detectable,
                depth + ", weaker than the " + limit + " of a clear defect");
    }

    private ElementFinding withoutSymptom(BearingElement element, double detectable, Optional<String> doubt) {
        String limit = Digits.compact(settings.absentDepth(), 3);
        String reason = detectable == Double.POSITIVE_INFINITY
                ? "what else turns or was found takes more than a third of where this rate may lie, or a band has no"
                        + " room for two of its harmonics"
                : detectable > settings.absentDepth()
                ? "nothing significant, but depths up to " + Digits.significant(leastDetectable(), 2)
                        + " may have been missed; absent wants " + limit
                : doubt.or(this::tones).orElse("");
        return reason.isEmpty()
                ? with(element, ElementVerdict.ABSENT, Optional.empty(), detectable, "no sign; a pulsation of depth "
                        + Digits.significant(detectable, 3) + " would have been found (limit " + limit + ")")
                : with(element, ElementVerdict.NOT_DETERMINED, Optional.empty(), detectable, reason);
    }

    /** One figure for all elements of the recording, so that the same is said of each: that of the hardest to see. */
    private double leastDetectable() {
        return Stream.of(BearingElement.values()).mapToDouble(this::detectableDepth)
                .filter(depth -> depth < Double.POSITIVE_INFINITY).max().orElseThrow();
    }

    /** Under a tone that holds most of the power of a band, a defect is a small part of it. */
    private Optional<String> tones() {
        return bands.stream().filter(lines -> lines.spectrum().spectralKurtosis() < TONAL)
                .map(lines -> "nothing significant, but a steady tone fills " + lines.spectrum().band()
                        + " and may hide it").findFirst();
    }

    private ElementFinding with(BearingElement element, ElementVerdict verdict, Optional<Candidate> shown,
            double detectable, String reason) {
        return new ElementFinding(element, verdict, kinematics.of(element),
                shown.map(c -> c.pulsation(kinematics.modulationOf(element))).orElse(null),
                shown.map(c -> rms(c.band())).orElse(0.0), detectable, reason);
    }

    private double rms(Band band) {
        return bands.stream().filter(lines -> lines.spectrum().band().equals(band)).findFirst().orElseThrow()
                .spectrum().level().si();
    }

    /**
     * Depth that the first two free harmonics must have for the false alarm probability, in the least sensitive band.
     */
    private double detectableDepth(BearingElement element) {
        return detectable.computeIfAbsent(element, one ->
                bands.stream().mapToDouble(lines -> detectableDepth(one, lines)).max().orElse(0));
    }

    private double detectableDepth(BearingElement element, EnvelopeLines lines) {
        double expected = kinematics.of(element);
        double reach = settings.frequencyTolerance() * expected;
        RateFamily family = RateFamily.at(SearchField.of(lines, explained), expected, settings.harmonics());
        if (family.counted() < 2 || freeShare(lines, expected - reach, expected + reach) < LEAST_FREE_SHARE) {
            return Double.POSITIVE_INFINITY;
        }
        double logFamily = Math.log(settings.falseAlarmProbability())
                - Math.log(family.places(reach) * BearingElement.values().length * bands.size());
        double logLine = RankProbability.logLineOfTwo(logFamily, family.counted());
        return Math.max(lines.depthFoundWith(logLine, expected - reach, expected + reach),
                lines.depthFoundWith(logLine, 2 * (expected - reach), 2 * (expected + reach)));
    }

    /** Part of the window of a rate that is free; a defect hidden behind something else can't be called absent. */
    private double freeShare(EnvelopeLines lines, double from, double to) {
        double step = 0.25 * lines.resolutionHertz();
        int free = 0;
        int all = 0;
        for (double f = from; f <= to; f += step) {
            free += explained.covers(f) ? 0 : 1;
            all++;
        }
        return (double) free / all;
    }

    private EnvelopeLines shown(Map<BearingElement, List<Candidate>> judged) {
        return strongest(judged).flatMap(c -> bands.stream().filter(b -> b == c.family().lines()).findFirst())
                .orElseGet(() -> bands.stream()
                .max(Comparator.comparingDouble(b -> b.spectrum().spectralKurtosis())).orElseThrow());
    }

    private static Optional<Candidate> strongest(Map<BearingElement, List<Candidate>> judged) {
        return judged.values().stream().map(DiagnosisRun::deepest).flatMap(Optional::stream)
                .max(Comparator.comparingDouble(Candidate::depth));
    }

    private String bandReason(EnvelopeLines shown, Map<BearingElement, List<Candidate>> judged) {
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
