package dev.vibra.docs.survey.output;

import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.Descriptors;
import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.evidence.Confidence;
import dev.vibra.fault.FaultTable;
import dev.vibra.machine.MachineDescription;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.SpeedFound;
import dev.vibra.quantity.Quantity;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.CriterionSet;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Machine;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.survey.MachineSurvey;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Wording shared by the printed summary and the report. */
final class Words {
    static final String INSISTED = "the recording is not sound; this verdict was insisted on";
    static final String NO_FINDINGS = "none that the evidence supports";
    static final String NOTHING_CERTAIN = "Each finding is a hypothesis: the evidence supports it and doesn't prove it, and"
            + " qualified staff decide.";
    /** Of each list of a finding so many lines fit into the summary. */
    private static final int MOST = 3;
    /** What can't be told apart stands by its own label in the summary. */
    private static final String ALIKE = "with what was measured it can't be told apart from: ";
    /** How often simulated machines show a symptom, which stands behind it in brackets. */
    private static final Pattern COUNTS = Pattern.compile(" \\[[^\\[\\]]*\\]$");

    private static final Set<SpeedFound.Source> FOUND = EnumSet.of(SpeedFound.Source.TACHOMETER,
            SpeedFound.Source.RECORDING);

    private Words() {}

    /** Says what was surveyed, and when, as in {@code fan, 45 kW, rigid support; 1 measuring point}. */
    static String machine(MachineSurvey survey) {
        MachineDescription machine = survey.machine();
        List<String> words = new ArrayList<>(List.of(plate(machine.machine())));
        machine.parts().forEach(part -> words.add(part.id() + ": " + Optional.of(plate(part.machine()))
                .filter(plate -> !plate.isEmpty()).orElse("nothing is told of it")));
        words.add(counted(survey.points().size(), "measuring point"));
        machine.measured().ifPresent(when -> words.add("measured " + when));
        machine.state().ifPresent(state -> words.add("state: " + state));
        words.removeIf(String::isEmpty);
        return String.join("; ", words);
    }

    private static String plate(Machine machine) {
        List<String> words = new ArrayList<>();
        machine.kind().ifPresent(kind -> words.add(kind.toString()));
        machine.ratedPowerWatts().ifPresent(watts -> words.add(PlainNumber.of(watts / 1000) + " kW"));
        machine.shaftHeightMetres().ifPresent(metres ->
                words.add("shaft height " + PlainNumber.of(1000 * metres) + " mm"));
        machine.support().ifPresent(support -> words.add(support + " support"));
        return String.join(", ", words);
    }

    private static String counted(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** Says how the machine stands; where a verdict rests on limits that aren't firm, the reasons say so. */
    static String headline(MachineSurvey survey) {
        return survey.machine().name() + ": " + survey.condition().word();
    }

    /**
     * Says what the worst rating means by its standard, which speaks of the level and of nothing else; a good one is
     * left out where anything speaks against the machine.
     */
    static Optional<String> meaning(MachineSurvey survey) {
        boolean healthy = survey.condition().rank().filter(Rank.NO_OBJECTION::equals).isPresent();
        return survey.worst()
                .filter(verdict -> healthy || verdict.zone().map(zone -> zone.isWorseThan(Zone.B)).orElse(true))
                .map(verdict -> "The level alone: " + verdict.rating() + ", " + verdict.meaning());
    }

    /** Criterion of a part with all that has to be known of it, the choice first. */
    static List<String> criterion(PartCriterion criterion) {
        String part = criterion.part().map(id -> id + ": ").orElse("");
        return Stream.concat(Stream.of(part + criterion.obstacle().orElse(criterion.choice().reason())),
                criterion.choice().remarks().stream()).toList();
    }

    /** The speed as given, and as found at the points, that of the main shaft; why the given one had to do. */
    static String speed(MachineSurvey survey) {
        List<Double> found = survey.points().stream().filter(point -> FOUND.contains(point.speed().source()))
                .map(point -> point.speed().speed().orElseThrow().revolutionsPerMinute()
                        / survey.machine().ratioAt(point.point())).sorted().toList();
        List<String> words = new ArrayList<>();
        survey.machine().speed().ifPresent(given -> words.add(given + " as given"));
        if (!found.isEmpty()) {
            String low = decimal(found.get(0), 1);
            String high = decimal(found.get(found.size() - 1), 1);
            words.add((low.equals(high) ? low : low + " to " + high) + " r/min found at " + found.size() + " of "
                    + counted(survey.points().size(), "point"));
        }
        survey.points().stream().filter(point -> point.speed().source() == SpeedFound.Source.GIVEN && !point.refused())
                .map(point -> point.speed().remark()).filter(remark -> !remark.isEmpty()).distinct().forEach(words::add);
        return words.isEmpty() ? ResultsJson.NOT_DETERMINED : String.join("; ", words);
    }

    /** Returns value, uncertainty, unit and detector, as in {@code 4.31 ± 0.22 mm/s rms}. */
    static String value(Judgement judgement) {
        return PlainNumber.forPeople(judgement.value()) + " \u00b1 "
                + PlainNumber.withPlacesOf(judgement.expandedUncertainty(), judgement.value()) + " "
                + judgement.criterion().unit() + " " + judgement.criterion().detector();
    }

    /** Returns the limits, as in {@code 1.4 / 2.8 / 4.5}. */
    static String limits(Criterion criterion) {
        return criterion.limits().stream().map(PlainNumber::of).collect(Collectors.joining(" / "));
    }

    /** Where a fact is missing and several sets of criteria may hold, returns which of them ask for these limits. */
    static Optional<String> candidates(Verdict verdict, Criterion criterion) {
        List<CriterionSet> holding = verdict.choice().candidates().stream()
                .filter(set -> set.criteria().contains(criterion)).toList();
        return holding.size() == verdict.choice().candidates().size() ? Optional.empty()
                : Optional.of("if " + holding.stream().map(CriterionSet::label).collect(Collectors.joining(" or ")));
    }

    /** Returns the doubt about limits that aren't firm. */
    static Optional<String> flag(Criterion criterion) {
        return Optional.of(criterion.confidence()).filter(one -> one != Confidence.FIRM).map(Confidence::toString);
    }

    /** Returns the ratings that the uncertainty reaches in the standard's own words, the letter alone for a zone. */
    static List<String> ratings(Judgement judgement) {
        Criterion criterion = judgement.criterion();
        return judgement.zonesWithinUncertainty().stream().map(zone -> name(criterion, zone)).distinct().toList();
    }

    /** Names a zone: its letter, or letters where a standard joins two, or the standard's own word. */
    static String name(Criterion criterion, Zone zone) {
        return criterion.hasOwnRatings() ? criterion.rating(zone).replaceFirst("^zone ", "") : zone.name();
    }

    /** Returns the rating, and where the uncertainty reaches others, these too, as in {@code zone C (B or C)}. */
    static String rating(Judgement judgement) {
        List<String> ratings = ratings(judgement);
        return judgement.criterion().rating(judgement.zone()) + (ratings.size() < 2 ? ""
                : " (" + String.join(" or ", ratings) + ")");
    }

    /** Says why a point has no verdict, and the level if there is one. */
    static String noVerdict(PointSurvey point) {
        String level = point.description().numbers().stream().filter(one -> one.name().equals(Descriptors
                .rms(Quantity.VELOCITY, Descriptors.USUAL_BAND).name())).findFirst().map(Words::descriptor).orElse("");
        String why = Stream.of(Omission.Subject.SEVERITY, Omission.Subject.RECORDING)
                .flatMap(subject -> point.omissions().stream().filter(one -> one.subject() == subject))
                .findFirst().map(Omission::reason).orElse("no reason noted");
        return (level.isEmpty() ? "not determined: " : level + ", not judged: ") + why;
    }

    static String descriptor(DescriptorValue one) {
        return one.name() + " " + PlainNumber.forPeople(one.value()) + (one.unit().equals("1") ? "" : " " + one.unit());
    }

    /**
     * Returns fault, urgency and confidence, as in {@code unbalance: plan a remedy, confidence 0.82}; with look-alikes
     * also that it is one of them.
     */
    static String finding(Finding one) {
        return String.format(Locale.ROOT, "%s: %s, confidence %.2f", one.fault(), one.urgency(), one.confidence())
                + (one.alikeTo().isEmpty() ? "" : String.format(Locale.ROOT, ", with look-alikes %.2f",
                        one.groupConfidence()));
    }

    /**
     * What is to be said of a finding, by a short label, in the order in which it is of use: what else it may be, where, what
     * to do next, and then the reasons. Labels without words are left out.
     */
    static Map<String, List<String>> parts(Finding one) {
        Map<String, List<String>> parts = new LinkedHashMap<>();
        parts.put("looks alike", one.alikeTo().isEmpty() ? List.of() : List.of(String.join(", ", one.alikeTo())
                .replace('-', ' ')));
        parts.put("at", List.of(String.join(", ", one.points())));
        parts.put("next", one.decidedBy().stream().map(Words::decider).toList());
        parts.put("for", one.evidence());
        parts.put("against", one.against());
        parts.put("not measured", one.notMeasured());
        parts.put("source", List.of(one.source()));
        parts.values().removeIf(List::isEmpty);
        return parts;
    }

    /** The same for the printed summary: without source, counts and shares, and of each list what fits. */
    static Map<String, List<String>> partsInShort(Finding one) {
        Map<String, List<String>> parts = parts(one);
        parts.remove("source");
        parts.computeIfPresent("against", (label, words) -> words.stream().filter(line -> !line.startsWith(ALIKE)).toList());
        parts.values().removeIf(List::isEmpty);
        parts.replaceAll((label, words) -> {
            List<String> few = words.stream().limit(MOST).map(line -> COUNTS.matcher(line).replaceFirst(""))
                    .collect(Collectors.toCollection(ArrayList::new));
            if (words.size() > MOST) {
                few.add("(" + (words.size() - MOST) + " more in " + ReportFiles.REPORT + ")");
            }
            return few;
        });
        return parts;
    }

    /** A measurement, what its outcomes mean, and under which code a crew enters what it found. */
    private static String decider(Decider one) {
        return one + (isObservation(one) ? " (enter as observation " + one.symptom() + ")" : "");
    }

    /** True if a crew answers it, and no recording. */
    static boolean isObservation(Decider one) {
        return FaultTable.standard().tests().contains(one.symptom());
    }

    /** What was looked for, and what was not. */
    static String lookedFor(MachineSurvey survey) {
        return survey.omissions().stream().filter(one -> one.subject() == Omission.Subject.FAULTS)
                .map(one -> HtmlReport.capital(one.reason()) + ".").collect(Collectors.joining(" "));
    }

    /** What was not determined for the machine as a whole, but for what stands with criterion and findings. */
    static List<String> omissions(MachineSurvey survey) {
        return survey.omissions().stream().filter(one -> one.subject() != Omission.Subject.FAULTS
                && one.subject() != Omission.Subject.SEVERITY).map(Words::omission).toList();
    }

    static String omission(Omission one) {
        return one.part() + ": " + one.reason();
    }

    static String decimal(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }
}
