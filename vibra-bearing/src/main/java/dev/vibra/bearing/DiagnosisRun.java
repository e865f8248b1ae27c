package dev.vibra.bearing;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.lines.EnvelopeLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.bearing.rival.FoundRate;
import dev.vibra.bearing.rival.Modulation;
import dev.vibra.bearing.rival.RivalSearch;
import dev.vibra.bearing.rival.Rotation;
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
    private static final int MOST_MULTIPLES = 100_000;

    private final KinematicFrequencies kinematics;
    private final DiagnosisSettings settings;
    private final List<EnvelopeLines> bands;
    private final double logAlarm;
    private final double highestHertz;
    private final Rotation rotation;
    private final Modulation modulation;
    private final RivalSearch rivals;
    private final LineMask turning;
    private final List<FoundRate> found = new ArrayList<>();
    private LineMask explained;

    DiagnosisRun(KinematicFrequencies kinematics, DiagnosisSettings settings, BandSet set) {
        this.kinematics = kinematics;
        this.settings = settings;
        bands = set.lines();
        logAlarm = Math.log(settings.falseAlarmProbability());
        highestHertz = BandSet.highestHertz(kinematics, settings);
        rotation = Rotation.of(bands, set.vibration(), kinematics, settings.speedTolerance(),
                settings.falseAlarmProbability());
        modulation = Modulation.of(rotation, kinematics, highestHertz);
        rivals = new RivalSearch(kinematics, rotation, modulation, settings.frequencyTolerance());
        turning = rotation.standing(highestHertz);
        explained = LineMask.nothing().with(otherRates(), spread());
    }

    private DoubleStream otherRates() {
        return settings.otherRatesHertz().stream().flatMapToDouble(rate ->
                IntStream.rangeClosed(1, (int) Math.min(MOST_MULTIPLES, highestHertz / rate))
                        .mapToDouble(n -> n * rate));
    }

    private double spread() {
        return bands.get(0).spreadHertz();
    }

    BearingDiagnosis diagnosis() {
        Map<BearingElement, List<Candidate>> judged = new EnumMap<>(BearingElement.class);
        Map<BearingElement, List<Candidate>> searched = new EnumMap<>(BearingElement.class);
        Set<BearingElement> remaining = EnumSet.allOf(BearingElement.class);
        while (!remaining.isEmpty()) {
            remaining.forEach(element -> searched.computeIfAbsent(element, e -> search(e, explained.with(turning))));
            BearingElement next = remaining.stream()
                    .min(Comparator.comparing((BearingElement e) -> e == BearingElement.CAGE)
                    .thenComparing(Comparator.comparingDouble((BearingElement e) ->
                            evidence(e, searched.get(e))).reversed())).orElseThrow();
            List<Candidate> candidates = explained(next, searched.get(next), explained.with(turning));
            remaining.remove(next);
            // What is no sign explains nothing: an element at half another's rate would swallow its harmonics.
            Optional<Candidate> symptom = deepest(candidates).filter(c -> c.depth() >= settings.signDepth());
            if (symptom.isPresent()) {
                found.add(new FoundRate(next, symptom.get().family().refinedHertz(), symptom.get().depth()));
                explained = explained.with(modulation.ofFamily(next, symptom.get().family().refinedHertz()), spread());
                searched.clear();
            }
            candidates = candidates.isEmpty() ? onMultiples(next) : candidates;
            judged.put(next, candidates.isEmpty() ? alone(next) : candidates);
        }
        LineMask known = rotation.halves(highestHertz).with(explained);
        return new ElementJudge(kinematics, settings, bands, known, explained.with(turning)).conclude(judged);
    }

    private double evidence(BearingElement element, List<Candidate> candidates) {
        return candidates.stream().filter(c -> c.logTotal() < logAlarm)
                .mapToDouble(c -> c.evidence(kinematics.modulationOf(element))).max().orElse(0);
    }

    private List<Candidate> search(BearingElement element, LineMask mask) {
        double expectedHertz = kinematics.of(element);
        double reach = settings.frequencyTolerance() * expectedHertz;
        List<Candidate> candidates = new ArrayList<>();
        for (EnvelopeLines lines : bands) {
            RateFamily family = RateFamily.best(SearchField.of(lines, mask),
                    expectedHertz - reach, expectedHertz + reach, settings.harmonics());
            double trials = Math.log(family.places(reach) * BearingElement.values().length * bands.size());
            candidates.add(new Candidate(lines.spectrum().band(), family,
                    Math.min(0, family.logProbability() + trials), Optional.empty()));
        }
        return candidates;
    }

    /** Keeps the significant candidates, with their other explanations. */
    private List<Candidate> explained(BearingElement element, List<Candidate> candidates,
            LineMask mask) {
        return candidates.stream().filter(c -> c.logTotal() < logAlarm)
                .map(c -> c.explainedBy(rivals.explain(element, c.family(), found, mask))).toList();
    }

    /** What stands where multiples of the speed do is no sign, but keeps from saying that nothing is there. */
    private List<Candidate> onMultiples(BearingElement element) {
        return explained(element, search(element, explained), explained).stream()
                .map(c -> c.rival().isPresent() ? c
                        : c.explainedBy(Optional.of("it lies beside a multiple of the speed of rotation"))).toList();
    }

    /** One line without a second harmonic names nothing, but keeps from saying that nothing is there. */
    private List<Candidate> alone(BearingElement element) {
        double reach = settings.frequencyTolerance() * kinematics.of(element);
        List<Candidate> candidates = new ArrayList<>();
        for (EnvelopeLines lines : bands) {
            RateFamily line = RateFamily.ofBestLine(SearchField.of(lines, explained.with(turning)),
                    kinematics.of(element) - reach, kinematics.of(element) + reach, settings.harmonics());
            double places = Math.max(1, 2 * reach / lines.resolutionHertz());
            double total = line.logOfFundamental()
                    + Math.log(places * BearingElement.values().length * bands.size());
            if (total < logAlarm) {
                candidates.add(new Candidate(lines.spectrum().band(), line, total,
                        Optional.of("only one, without a second harmonic")));
            }
        }
        return candidates;
    }

    static Optional<Candidate> deepest(List<Candidate> candidates) {
        return candidates.stream().filter(c -> c.rival().isEmpty() && c.depth() > 0)
                .max(Comparator.comparingDouble(Candidate::depth));
    }
}
