package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.descriptor.DescriptorValue;
import dev.vibra.descriptor.DominantLine;
import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.Finding;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.evidence.Remark;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.ChangeSurvey;
import dev.vibra.point.Impulsiveness;
import dev.vibra.point.Omission;
import dev.vibra.point.PartCriterion;
import dev.vibra.point.PointSurvey;
import dev.vibra.point.RecordingSummary;
import dev.vibra.point.SpeedFound;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Choice;
import dev.vibra.severity.Criterion;
import dev.vibra.severity.Judgement;
import dev.vibra.severity.Verdict;
import dev.vibra.severity.Zone;
import dev.vibra.survey.Condition;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.UnexplainedLevel;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Writes {@code results.json}, format 2. A zone that was not determined says so; what isn't known has no field. */
final class ResultsJson {
    static final String NOT_DETERMINED = "not determined";
    private static final int FORMAT = 2;

    private final SurveyRecord record;

    private ResultsJson(SurveyRecord record) {
        this.record = record;
    }

    /** Writes the whole result; the digests are those of the files beside it. */
    static void write(SurveyRecord record, Map<String, String> digests, OutputStream out) throws IOException {
        JsonText.write(new ResultsJson(record).machine(digests), out);
    }

    private Map<String, Object> machine(Map<String, String> digests) {
        MachineSurvey survey = record.survey();
        return object("format", FORMAT, "library", object("name", Library.NAME, "version", Library.VERSION),
                "run", record.run(), "digests", digests, "machine", survey.machine().name(),
                "measured", survey.machine().measured(), "state", survey.machine().state(),
                "condition", condition(survey.condition()), "zone", survey.zone().map(Enum::name)
                        .or(() -> zone(survey.worst(), Optional.empty())),
                "rating", survey.worst().map(Verdict::rating),
                "criteria", survey.criteria().stream().map(ResultsJson::criterion).toList(),
                "points", survey.points().stream().map(this::point), // one after the other, while they are written
                "findings", survey.findings().stream().map(ResultsJson::finding).toList(),
                "lookedFor", survey.lookedFor(), "notLookedFor", survey.notLookedFor(),
                "unexplained", survey.unexplained().stream().map(ResultsJson::unexplained).toList(),
                "advice", survey.advice().stream().map(Object::toString).toList(),
                "balancing", survey.balancing().map(BalancingJson::of), "speedRuns", record.runs().isEmpty()
                        ? Optional.empty() : Optional.of(SpeedRunJson.of(record.runs())),
                "history", HistoryJson.of(record.history()), "historyLeft", record.history().left(),
                "omissions", omissions(survey.omissions()),
                "problems", record.problems().stream().map(ResultsJson::problem).toList());
    }

    private static Map<String, Object> condition(Condition condition) {
        return object("rank", condition.rank().map(Enum::ordinal), "word", condition.word(), "because",
                condition.because(), "mayServeAsBaseline", condition.mayServeAsBaseline());
    }

    /** An acceptance standard knows no zones. */
    private static Optional<String> zone(Optional<Verdict> verdict, Optional<Zone> zone) {
        return verdict.filter(Verdict::isAcceptance).isPresent() ? Optional.empty()
                : Optional.of(zone.map(Enum::name).orElse(NOT_DETERMINED));
    }

    private static Map<String, Object> criterion(PartCriterion criterion) {
        Choice choice = criterion.choice();
        return object("part", criterion.part(), "reason", criterion.obstacle().orElse(choice.reason()),
                "candidates", choice.candidates().stream().map(one -> one.label()).toList(),
                "undecided", choice.undecided(), "remarks", choice.remarks(),
                "outOfScope", choice.outOfScope().map(one -> object("reason", one.reason(), "fitting",
                        one.fitting().reason())),
                "alternatives", choice.alternatives().stream().map(Object::toString).toList());
    }

    private Map<String, Object> point(PointSurvey point) {
        Optional<Verdict> verdict = point.severity();
        return object("id", point.point().id(), "direction", point.point().direction(), "part", point.point().part(),
                "measured", record.measured(point),
                "zone", zone(verdict, point.zone()),
                "rating", verdict.map(Verdict::rating),
                "zonesPossible", verdict.filter(one -> one.zonesPossible().size() > 1 && !one.isAcceptance())
                        .map(Verdict::zonesPossible),
                "insisted", Optional.of(point.insisted()).filter(insisted -> insisted),
                "recording", point.recording().map(known -> recording(point, known)).orElse(object("sound", false)),
                "speedRevolutionsPerMinute", speed(point.speed()),
                "descriptors", descriptors(point.description().numbers()),
                "impulsiveness", point.impulsiveness().map(ResultsJson::impulsiveness),
                "spectrumPeaks", point.dominantLines().stream().map(ResultsJson::peak).toList(),
                "dominantLines", lines(point.dominantLines()),
                "severity", verdict.map(Verdict::judgements).orElse(List.of()).stream().map(ResultsJson::severity)
                        .toList(),
                "baseline", record.baseline(point),
                "change", point.changes().stream().map(ResultsJson::change).toList(),
                "againstReference", Reference.of(record.survey(), point).map(Reference::json),
                "bearings", point.bearings().stream().map(ResultsJson::bearing).toList(),
                "omissions", omissions(point.omissions()));
    }

    private Map<String, Object> recording(PointSurvey point, RecordingSummary recording) {
        return object("sound", recording.quality().sound(), "sampleRateHertz", recording.sampleRateHertz(),
                "samples", recording.samples(), "conversion", record.conversion(point),
                "refused", recording.refused().stream().sorted().toList(),
                "remarks", recording.quality().remarks().stream().map(ResultsJson::remark).toList());
    }

    private static Map<String, Object> remark(Remark remark) {
        return object("code", remark.code(), "text", remark.text(), "value", remark.value(), "limit", remark.limit(),
                "disqualifying", remark.disqualifying());
    }

    private static Map<String, Object> speed(SpeedFound speed) {
        return object("value", speed.speed().map(known -> known.revolutionsPerMinute()), "source", speed.source(),
                "confidence", speed.confidence(), "remark", given(speed.remark()));
    }

    private static Map<String, Object> descriptors(List<DescriptorValue> descriptors) {
        Map<String, Object> json = new LinkedHashMap<>();
        descriptors.forEach(one -> json.put(one.name(), object("value", one.value(), "unit", one.unit())));
        return json;
    }

    private static Map<String, Object> impulsiveness(Impulsiveness one) {
        return object("impulsive", one.isImpulsive(), "knocks", one.knocks(), "knocksPerSecond", one.perSecond());
    }

    /** A line under the names of format 1. */
    private static Map<String, Object> peak(DominantLine line) {
        return object("frequencyHertz", line.hertz(), "velocityRmsMillimetresPerSecond",
                line.level().in(Unit.MM_PER_S), "order", line.order());
    }

    private static List<Map<String, Object>> lines(List<DominantLine> lines) {
        return lines.stream().map(line -> object("frequencyHertz", line.hertz(), "order", line.order(),
                "level", line.level().in(Unit.MM_PER_S), "unit", Unit.MM_PER_S.plainSymbol(),
                "detector", line.level().detector(), "name", line.name())).toList();
    }

    private static Map<String, Object> unexplained(UnexplainedLevel one) {
        Unit unit = one.level().quantity().customaryUnit();
        return object("point", one.point(), "quantity", one.level().quantity(), "level", one.level().in(unit),
                "unit", unit.plainSymbol(), "detector", one.level().detector(), "lines", lines(one.lines()));
    }

    private static Map<String, Object> severity(Judgement one) {
        Criterion criterion = one.criterion();
        boolean zones = !criterion.isAcceptance();
        return object("standard", criterion.standard(), "clause", criterion.clause(), "group", criterion.group(),
                "support", criterion.support().map(Object::toString).orElse("any"), "quantity", criterion.quantity(),
                "detector", criterion.detector(), "bandLowestHertz", criterion.band().lowestHertz(),
                "bandHighestHertz", criterion.band().highestHertz(), "value", one.value(),
                "unit", criterion.unit().plainSymbol(), "limits", criterion.limits(),
                "zone", zones ? Optional.of(one.zone()) : Optional.empty(),
                "rating", zones ? Optional.empty() : Optional.of(criterion.rating(one.zone())),
                "confidence", criterion.confidence(), "expandedUncertainty", one.expandedUncertainty(),
                "coverageFactor", one.coverageFactor(),
                zones ? "zonesWithinUncertainty" : "ratingsWithinUncertainty", Words.ratings(one),
                "method", one.level().method());
    }

    private static Map<String, Object> change(ChangeSurvey one) {
        Criterion criterion = one.change().criterion();
        return object("descriptor", one.descriptor(), "value", one.value(), "reference", one.reference(),
                "unit", criterion.unit().plainSymbol(), "difference", one.change().difference(),
                "limit", one.change().significantChange(), "matters", one.change().isSignificant(),
                "standard", criterion.standard(), "clause", criterion.operatingLimits().orElseThrow().clause(),
                "alarm", one.setting().map(setting -> setting.alarm().in(criterion.unit())),
                "trip", one.setting().flatMap(setting -> setting.trip()).map(level -> level.in(criterion.unit())),
                "remarks", one.setting().map(setting -> setting.remarks()));
    }

    private static Map<String, Object> bearing(BearingSurvey bearing) {
        return object("bearing", bearing.bearing(),
                "elements", bearing.diagnosis().findings().stream().map(ResultsJson::element).toList(),
                "bandReason", bearing.diagnosis().bandReason(),
                "preparation", bearing.preparation());
    }

    private static Map<String, Object> element(ElementFinding finding) {
        return object("element", finding.element(), "verdict", finding.verdict(),
                "frequencyHertz", finding.foundHertz(), "expectedHertz", finding.expectedHertz(),
                "evidence", finding.evidence());
    }

    private static Map<String, Object> finding(Finding one) {
        return object("code", one.code(), "fault", one.fault(), "confidence", one.confidence(),
                "groupConfidence", one.groupConfidence(), "urgency", one.urgency().ordinal(),
                "points", one.points(), "evidence", one.evidence().stream().map(Object::toString).toList(),
                "against", one.against().stream().map(Object::toString).toList(), "notMeasured", one.notMeasured(),
                "decidedBy", one.decidedBy().stream().map(ResultsJson::decider).toList(),
                "alikeTo", one.alikeTo(), "lookAlikes", one.lookAlikes().stream().map(other -> object("code", other.code(),
                        "fault", other.fault(), "confidence", other.confidence())).toList(), "source", one.source());
    }

    /** Says how its outcome is told: by a crew under the code of the symptom, or by the recording or fact itself. */
    private static Map<String, Object> decider(Decider one) {
        return object("measurement", one.measurement(), "meaning", one.meaning(), "effort", one.effort(),
                "symptom", one.symptom(), "answer", Words.isObservation(one) ? "observation" : "measurement");
    }

    private static List<Map<String, Object>> omissions(List<Omission> omissions) {
        return omissions.stream().map(one -> object("subject", one.subject(), "part", one.part(), "reason",
                one.reason())).toList();
    }

    static Map<String, Object> problem(Problem problem) {
        return object("file", problem.file(), "line", Optional.of(problem.line()).filter(line -> line > 0),
                "field", given(problem.field()), "text", problem.text());
    }

    private static Optional<String> given(String text) {
        return Optional.of(text).filter(one -> !one.isEmpty());
    }
}
