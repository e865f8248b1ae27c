package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.balance.Correction;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.ResidualUnbalance;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.CoefficientErrors;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Sensor;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.balance.tolerance.GradeReached;
import dev.vibra.balance.uncertainty.Ellipse;
import dev.vibra.balance.vector.AngleSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.evidence.Remark;
import dev.vibra.survey.BalancingSurvey;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The part {@code balancing} of the results file. */
final class BalancingJson {
    private BalancingJson() {}

    static Map<String, Object> of(BalancingSurvey balancing) {
        Map<String, Object> json = new LinkedHashMap<>();
        balancing.corrections().ifPresent(corrections -> {
            json.put("convention", corrections.convention().toString());
            json.put("influence", influence(balancing.influence().orElseThrow(), balancing.influenceErrors()));
            json.put("influenceUnit", unit(balancing) + " per g");
            if (corrections.conditionNumber() < Double.POSITIVE_INFINITY) { // a file holds no infinity
                json.put("conditionNumber", corrections.conditionNumber());
            }
            json.put("corrections", corrections(corrections));
            json.put("addTo", corrections.addedTo());
            json.put("predictedResidual", vectors(corrections.places(), corrections.predicted()));
            json.put("presentUnbalance", residuals("plane", corrections.presentUnbalance()));
        });
        balancing.verification().ifPresent(verification -> proof(json, balancing, verification));
        balancing.trim().ifPresent(trim -> json.put("next", object("corrections", corrections(trim), "addTo",
                trim.addedTo())));
        balancing.tolerance().ifPresent(tolerance -> json.put("grade", grade(balancing, tolerance)));
        balancing.corrections().ifPresent(corrections -> {
            json.put("remarks", remarks(balancing));
            json.put("reliance", balancing.toRecord().orElseThrow().reliance());
            json.put("cautions", corrections.cautions().stream().map(caution -> caution.text()).toList());
        });
        json.put("omissions", balancing.omissions().stream()
                .map(one -> object("part", one.part(), "reason", one.reason())).toList());
        return json;
    }

    private static String unit(BalancingSurvey balancing) {
        Sensor sensor = balancing.job().layout().sensors().get(0);
        return sensor.unit().plainSymbol() + " " + sensor.detector();
    }

    private static void proof(Map<String, Object> json, BalancingSurvey balancing, Verification proof) {
        List<String> sensors = balancing.corrections().orElseThrow().places();
        json.put("finalRun", object("unit", unit(balancing), "readings",
                vectors(sensors, proof.after()), "predicted", vectors(sensors, proof.predicted())));
        proof.remainingShare().ifPresent(share -> json.put("remainingShare", share));
        json.put("residualUnbalance", residuals("plane", proof.residualUnbalance()));
        if (!proof.bearingUnbalance().isEmpty()) {
            json.put("bearingUnbalance", residuals("bearing", proof.bearingUnbalance()));
        }
    }

    private static List<List<Map<String, Object>>> influence(InfluenceCoefficients alpha,
            Optional<CoefficientErrors> errors) {
        List<List<Map<String, Object>>> rows = new ArrayList<>();
        for (int row = 0; row < alpha.layout().rows(); row++) {
            List<Map<String, Object>> columns = new ArrayList<>();
            for (int plane = 0; plane < alpha.layout().planes().size(); plane++) {
                Map<String, Object> one = object("amplitude", alpha.perGram(row, plane),
                        "phaseDegrees", alpha.phaseDegrees(row, plane));
                int i = row;
                int j = plane;
                errors.ifPresent(e -> one.put("scatter", e.perGram(i, j)));
                columns.add(one);
            }
            rows.add(columns);
        }
        return rows;
    }

    private static List<Map<String, Object>> corrections(Corrections corrections) {
        return corrections.list().stream().map(one -> correction(one, corrections.uncertainty()
                .map(u -> ellipse(u.ofCorrection(one.plane()), corrections.convention().angle())))).toList();
    }

    private static Map<String, Object> ellipse(Ellipse e, AngleSense sense) {
        return object("coverage", e.coverage(), "majorGrams", e.major(), "minorGrams", e.minor(), "majorDegrees",
                e.majorDegrees(sense));
    }

    private static Map<String, Object> correction(Correction correction, Optional<Map<String, Object>> ellipse) {
        Map<String, Object> json = object("plane", correction.plane(), "massGrams", correction.mass().grams(),
                "angleDegrees", correction.mass().angleDegrees());
        correction.mass().radiusMillimetres().ifPresent(radius -> json.put("radiusMillimetres", radius));
        json.put("split", correction.split().stream()
                .map(part -> object("position", part.position(), "massGrams", part.grams())).toList());
        ellipse.ifPresent(e -> json.put("ellipse", e));
        return json;
    }

    private static List<Map<String, Object>> vectors(List<String> places, List<VibrationVector> vectors) {
        List<Map<String, Object>> out = new ArrayList<>();
        for (int i = 0; i < vectors.size(); i++) {
            out.add(object("sensor", places.get(i), "amplitude", vectors.get(i).amplitude(),
                    "phaseDegrees", vectors.get(i).phaseDegrees()));
        }
        return out;
    }

    private static List<Map<String, Object>> remarks(BalancingSurvey balancing) {
        List<Remark> remarks = new ArrayList<>(balancing.corrections().map(Corrections::remarks).orElse(List.of()));
        balancing.verification().map(Verification::remarks).ifPresent(remarks::addAll);
        return remarks.stream().map(one -> object("code", one.code(), "text", one.text(), "value", one.value(),
                "limit", one.limit())).toList();
    }

    private static List<Map<String, Object>> residuals(String place, List<ResidualUnbalance> residuals) {
        return residuals.stream().map(one -> residual(place, one)).toList();
    }

    private static Map<String, Object> residual(String place, ResidualUnbalance residual) {
        Map<String, Object> json = object(place, residual.plane(), "gramMillimetres", residual.gramMillimetres());
        residual.permissibleGramMillimetres().ifPresent(permissible -> json.put("permissible", permissible));
        return json;
    }

    private static Map<String, Object> grade(BalancingSurvey balancing, BalanceTolerance tolerance) {
        Map<String, Object> json = object("required", tolerance.grade().toString(),
                "achieved", name(balancing.verification().flatMap(Verification::gradeReached)),
                "before", name(balancing.corrections().flatMap(Corrections::presentGrade)),
                "permissibleResidualUnbalanceGramMillimetres", tolerance.gramMillimetres(),
                "shares", tolerance.allocation().shares(), "sharesBy", tolerance.allocation().reason(),
                "standard", BalanceTolerance.STANDARD);
        balancing.verification().flatMap(Verification::gradeReached).ifPresent(reached -> {
            json.put("held", reached.held());
            json.put("millimetresPerSecond", reached.millimetresPerSecond());
        });
        balancing.verification().flatMap(Verification::gradeProbability).ifPresent(one -> {
            json.put("probability", one.probability());
            one.moreReadings().ifPresentOrElse(more -> json.put("moreReadings", more),
                    () -> json.put("remark", "not settled by more readings of this state alone"));
        });
        return json;
    }

    private static String name(Optional<GradeReached> grade) {
        return grade.map(reached -> reached.finestGrade().map(BalanceGrade::toString).orElse("coarser than the table"))
                .orElse(ResultsJson.NOT_DETERMINED);
    }
}
