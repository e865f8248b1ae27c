package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.severity.Judgement;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.survey.BearingSurvey;
import dev.vibra.survey.ChangeSurvey;
import dev.vibra.survey.Descriptor;
import dev.vibra.survey.Finding;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Omission;
import dev.vibra.survey.PointSurvey;
import dev.vibra.survey.RecordingSummary;
import dev.vibra.quantity.Unit;
import dev.vibra.quality.Remark;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes {@code results.json}. A zone, a speed or a frequency that was not determined is missing or says so. */
public final class ResultsJson {
    static final String NOT_DETERMINED = "not determined";

    private ResultsJson() {}

    /**
     * Writes the whole result.
     *
     * @param survey result of the survey
     * @param problems what was wrong in the survey folder
     * @return content of the file
     */
    public static String of(MachineSurvey survey, List<Problem> problems) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("machine", survey.machine().name());
        json.put("zone", survey.zone().map(Enum::name).orElse(NOT_DETERMINED));
        json.put("criterion", object("reason", survey.criterion().reason(), "remarks", survey.criterion().remarks()));
        json.put("points", survey.points().stream().map(ResultsJson::point).toList());
        json.put("findings", survey.findings().stream().map(ResultsJson::finding).toList());
        json.put("advice", survey.advice());
        survey.balancing().ifPresent(balancing -> json.put("balancing", BalancingJson.of(balancing)));
        json.put("notDetermined", omissions(survey.omissions()));
        json.put("problems", problems.stream().map(ResultsJson::problem).toList());
        return JsonText.of(json);
    }

    /** Makes an object of names and values in turn, in that order. */
    static Map<String, Object> object(Object... namesAndValues) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            object.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return object;
    }

    private static Map<String, Object> point(PointSurvey point) {
        Map<String, Object> json = object("id", point.point().id());
        point.point().direction().ifPresent(direction -> json.put("direction", direction.toString()));
        json.put("zone", point.zone().map(Enum::name).orElse(NOT_DETERMINED));
        if (point.insisted()) {
            json.put("insisted", true);
        }
        json.put("recording", point.recording().map(ResultsJson::recording).orElse(object("sound", false)));
        Map<String, Object> speed = new LinkedHashMap<>();
        point.speed().speed().ifPresent(known -> speed.put("value", known.revolutionsPerMinute()));
        speed.put("source", point.speed().source());
        point.speed().confidence().ifPresent(confidence -> speed.put("confidence", confidence));
        if (!point.speed().remark().isEmpty()) {
            speed.put("remark", point.speed().remark());
        }
        json.put("speedRevolutionsPerMinute", speed);
        json.put("descriptors", descriptors(point.descriptors()));
        json.put("spectrumPeaks", point.spectrumPeaks().stream().map(peak -> peak(point, peak)).toList());
        json.put("severity", point.severity().stream().flatMap(verdict -> verdict.judgements().stream())
                .map(Judgement::values).toList());
        json.put("change", point.changes().stream().map(ResultsJson::change).toList());
        json.put("bearings", point.bearings().stream().map(ResultsJson::bearing).toList());
        json.put("notDetermined", omissions(point.omissions()));
        return json;
    }

    private static Map<String, Object> recording(RecordingSummary recording) {
        return object("sound", recording.quality().sound(), "sampleRateHertz", recording.sampleRateHertz(),
                "samples", recording.samples(),
                "remarks", recording.quality().remarks().stream().map(ResultsJson::remark).toList());
    }

    private static Map<String, Object> remark(Remark remark) {
        return object("code", remark.code(), "text", remark.text(), "value", remark.value(), "limit", remark.limit(),
                "disqualifying", remark.disqualifying());
    }

    private static Map<String, Object> descriptors(List<Descriptor> descriptors) {
        Map<String, Object> json = new LinkedHashMap<>();
        descriptors.forEach(one -> json.put(one.name(), object("value", one.value(), "unit", one.unit())));
        return json;
    }

    private static Map<String, Object> peak(PointSurvey point, SpectralPeak peak) {
        Map<String, Object> json = object("frequencyHertz", peak.frequencyHertz(),
                "velocityRmsMillimetresPerSecond", peak.level().in(Unit.MM_PER_S));
        point.speed().speed().ifPresent(speed -> json.put("order", peak.order(speed)));
        return json;
    }

    private static Map<String, Object> change(ChangeSurvey one) {
        Map<String, Object> json = object("descriptor", one.descriptor(), "value", one.value(),
                "reference", one.reference(), "unit", one.change().criterion().unit().plainSymbol(),
                "difference", one.change().difference(), "limit", one.change().significantChange(),
                "matters", one.change().isSignificant(), "standard", one.change().criterion().standard(),
                "clause", one.change().criterion().operatingLimits().orElseThrow().clause(),
                "alarm", one.setting().alarm().in(one.change().criterion().unit()));
        one.setting().trip().ifPresent(trip -> json.put("trip", trip.in(one.change().criterion().unit())));
        json.put("remarks", one.setting().remarks());
        return json;
    }

    private static Map<String, Object> bearing(BearingSurvey bearing) {
        return object("bearing", bearing.bearing(),
                "elements", bearing.diagnosis().findings().stream().map(ResultsJson::element).toList(),
                "bandReason", bearing.diagnosis().bandReason());
    }

    private static Map<String, Object> element(ElementFinding finding) {
        Map<String, Object> json =
                object("element", finding.element().toString(), "verdict", finding.verdict().toString());
        finding.foundHertz().ifPresent(hertz -> json.put("frequencyHertz", hertz));
        json.put("expectedHertz", finding.expectedHertz());
        json.put("evidence", finding.evidence());
        return json;
    }

    private static Map<String, Object> finding(Finding finding) {
        return object("fault", finding.fault(), "belief", finding.belief(), "points", finding.points(),
                "evidence", finding.evidence(), "against", finding.against(), "confirmBy", finding.confirmBy());
    }

    private static List<Map<String, Object>> omissions(List<Omission> omissions) {
        return omissions.stream().map(one -> object("part", one.part(), "reason", one.reason())).toList();
    }

    private static Map<String, Object> problem(Problem problem) {
        Map<String, Object> json = object("file", problem.file());
        if (problem.line() > 0) {
            json.put("line", problem.line());
        }
        if (!problem.field().isEmpty()) {
            json.put("field", problem.field());
        }
        json.put("text", problem.text());
        return json;
    }
}
