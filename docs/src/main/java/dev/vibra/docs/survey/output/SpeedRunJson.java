package dev.vibra.docs.survey.output;

import static dev.vibra.docs.survey.output.JsonText.object;

import dev.vibra.evidence.Remark;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.speedrun.CentrePoint;
import dev.vibra.speedrun.FollowedOrder;
import dev.vibra.speedrun.OrbitAt;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedResonance;
import dev.vibra.speedrun.SpeedRun;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The part {@code speedRuns} of the results file. */
final class SpeedRunJson {
    private static final int MOST_POINTS = 100;

    private SpeedRunJson() {}

    static List<Map<String, Object>> of(List<SpeedRun> runs) {
        return runs.stream().map(SpeedRunJson::run).toList();
    }

    private static Map<String, Object> run(SpeedRun run) {
        Map<String, Object> json = object("id", run.id());
        run.sweep().ifPresent(sweep -> {
            json.put("direction", sweep.direction().toString());
            json.put("lowestRevolutionsPerMinute", sweep.lowest().revolutionsPerMinute());
            json.put("highestRevolutionsPerMinute", sweep.highest().revolutionsPerMinute());
            json.put("seconds", sweep.endSeconds() - sweep.beginSeconds());
            json.put("meanRateRevolutionsPerMinutePerSecond", 60 * sweep.meanRateHertzPerSecond());
            json.put("remarks", remarks(sweep.remarks()));
        });
        run.service().ifPresent(speed -> json.put("serviceRevolutionsPerMinute", speed.revolutionsPerMinute()));
        json.put("points", run.points().stream().map(point -> point(run, point)).toList());
        json.put("probes", run.pairs().stream().map(SpeedRunJson::pair).toList());
        json.put("leftOut", run.leftOut().stream().map(left -> object("part", left.part(), "reason", left.reason()))
                .toList());
        return json;
    }

    private static List<Map<String, Object>> remarks(List<Remark> remarks) {
        return remarks.stream().map(one -> object("code", one.code(), "text", one.text(), "value", one.value(),
                "limit", one.limit())).toList();
    }

    private static Map<String, Object> point(SpeedRun run, PointRun point) {
        Quantity shown = point.orders().isEmpty() ? Quantity.VELOCITY : point.orders().get(0).quantity();
        return object("id", point.id(), "quantity", shown.toString(), "unit", RunWords.unit(shown).plainSymbol(),
                "detector", RunWords.detector(shown).toString(),
                "slowRoll", point.slowRoll().map(vector -> vector(shown, vector)),
                "resonances", point.resonances().stream().map(one -> resonance(run, point, one)).toList(),
                "otherPeaksRevolutionsPerMinute", point.otherPeaks().stream()
                        .map(peak -> peak.speed().revolutionsPerMinute()).toList(),
                "orders", point.orders().stream().map(SpeedRunJson::order).toList(),
                "remarks", remarks(point.remarks()));
    }

    private static Map<String, Object> vector(Quantity quantity, OrderVector vector) {
        return object("level", RunWords.level(quantity, vector.amplitude()), "lagDegrees", vector.lagDegrees());
    }

    private static Map<String, Object> resonance(SpeedRun run, PointRun point, SpeedResonance one) {
        return object("order", one.order(), "revolutionsPerMinute", one.speed().revolutionsPerMinute(),
                "uncertaintyPercent", one.speedUncertaintyPercent(), "frequencyHertz", one.hertz(),
                "amplification", one.amplification(),
                "amplificationUncertainty", one.amplificationUncertainty(),
                "amplificationByPhase", one.amplificationByPhase(),
                "amplificationByHalfPower", one.amplificationByHalfPower(),
                "sweepRatio", one.sweepRatio(), "single", one.isSingle(),
                "percentBelowService", run.service().map(one::separationPercent));
    }

    /** Every so many points, so that there are at most a hundred. */
    private static Map<String, Object> order(FollowedOrder order) {
        List<SpeedPoint> points = order.track().points();
        int step = (points.size() + MOST_POINTS - 1) / MOST_POINTS;
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int i = 0; i < points.size(); i += step) {
            Map<String, Object> row = object("revolutionsPerMinute", points.get(i).speed().revolutionsPerMinute());
            row.putAll(vector(order.quantity(), points.get(i).vector()));
            row.put("noise", RunWords.level(order.quantity(), order.noise(i)));
            rows.add(row);
        }
        return object("order", order.order(), "standingShare", order.standingShare(), "points", rows);
    }

    private static Map<String, Object> pair(ProbePairRun pair) {
        return object("id", pair.id(), "orbits", pair.orbits().stream().map(SpeedRunJson::orbit).toList(),
                "centreLine", pair.centreLine().stream().map(SpeedRunJson::centre).toList(),
                "remarks", remarks(pair.remarks()));
    }

    private static double rpm(RotationSpeed speed) {
        return speed.revolutionsPerMinute();
    }

    private static Map<String, Object> orbit(OrbitAt at) {
        return object("revolutionsPerMinute", rpm(at.speed()), "longHalfAxisMicrometres",
                1e6 * at.ellipse().longHalfAxis(), "shortHalfAxisMicrometres", 1e6 * at.ellipse().shortHalfAxis(),
                "forward", at.ellipse().isForward());
    }

    private static Map<String, Object> centre(CentrePoint point) {
        return object("revolutionsPerMinute", rpm(point.speed()), "rightMicrometres", 1e6 * point.right(),
                "upMicrometres", 1e6 * point.up());
    }
}
