package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.ResultsJson.object;

import dev.vibra.balance.Correction;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.ResidualUnbalance;
import dev.vibra.balance.Verification;
import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.remark.Remark;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.tolerance.BalanceTolerance;
import dev.vibra.survey.BalancingSurvey;
import dev.vibra.survey.machine.BalancingSheet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The part {@code balancing} of the results file. */
final class BalancingJson {
    private BalancingJson() {}

    static Map<String, Object> of(BalancingSurvey balancing) {
        Map<String, Object> json = new LinkedHashMap<>();
        BalancingSheet sheet = balancing.sheet();
        balancing.corrections().ifPresent(corrections -> {
            json.put("convention", corrections.convention().toString());
            json.put("influence", influence(balancing.influence().orElseThrow()));
            json.put("influenceUnit", sheet.unit().plainSymbol() + " " + sheet.detector() + " per g");
            json.put("corrections", corrections.list().stream().map(BalancingJson::correction).toList());
            json.put("addTo", corrections.addedTo());
            json.put("predictedResidual", predicted(balancing));
            json.put("remarks", remarks(balancing));
            json.put("cautions", corrections.cautions().stream().map(caution -> caution.text()).toList());
        });
        balancing.verification().ifPresent(verification -> json.put("residualUnbalance",
                verification.residualUnbalance().stream().map(BalancingJson::residual).toList()));
        balancing.tolerance().ifPresent(tolerance -> json.put("grade", grade(balancing, tolerance)));
        json.put("notDetermined", balancing.omissions().stream()
                .map(one -> object("part", one.part(), "reason", one.reason())).toList());
        return json;
    }

    private static List<List<Map<String, Object>>> influence(InfluenceCoefficients alpha) {
        List<List<Map<String, Object>>> rows = new ArrayList<>();
        for (int row = 0; row < alpha.layout().rows(); row++) {
            List<Map<String, Object>> columns = new ArrayList<>();
            for (int plane = 0; plane < alpha.layout().planes().size(); plane++) {
                columns.add(object("amplitude", alpha.perGram(row, plane),
                        "phaseDegrees", alpha.phaseDegrees(row, plane)));
            }
            rows.add(columns);
        }
        return rows;
    }

    private static Map<String, Object> correction(Correction correction) {
        Map<String, Object> json = object("plane", correction.plane(), "massGrams", correction.mass().grams(),
                "angleDegrees", correction.mass().angleDegrees());
        correction.mass().radiusMillimetres().ifPresent(radius -> json.put("radiusMillimetres", radius));
        json.put("split", correction.split().stream()
                .map(part -> object("position", part.position(), "massGrams", part.grams())).toList());
        return json;
    }

    private static List<Map<String, Object>> predicted(BalancingSurvey balancing) {
        List<String> sensors = balancing.sheet().sensors();
        List<Map<String, Object>> residuals = new ArrayList<>();
        for (int i = 0; i < sensors.size(); i++) {
            residuals.add(object("sensor", sensors.get(i), "amplitude", balancing.predictedAmplitude(i)));
        }
        return residuals;
    }

    private static List<Map<String, Object>> remarks(BalancingSurvey balancing) {
        List<Remark> remarks = new ArrayList<>(balancing.corrections().map(Corrections::remarks).orElse(List.of()));
        balancing.verification().map(Verification::remarks).ifPresent(remarks::addAll);
        return remarks.stream().map(one -> object("code", one.code(), "text", one.text(), "value", one.value(),
                "limit", one.limit())).toList();
    }

    private static Map<String, Object> residual(ResidualUnbalance residual) {
        Map<String, Object> json =
                object("plane", residual.plane(), "gramMillimetres", residual.gramMillimetres());
        if (!Double.isNaN(residual.permissibleGramMillimetres())) {
            json.put("permissible", residual.permissibleGramMillimetres());
        }
        return json;
    }

    private static Map<String, Object> grade(BalancingSurvey balancing, BalanceTolerance tolerance) {
        String achieved = balancing.verification().flatMap(Verification::gradeReached)
                .map(reached -> reached.finestGrade().map(BalanceGrade::toString).orElse("coarser than the table"))
                .orElse(ResultsJson.NOT_DETERMINED);
        return object("required", tolerance.grade().toString(), "achieved", achieved,
                "permissibleResidualUnbalanceGramMillimetres", tolerance.gramMillimetres());
    }
}
