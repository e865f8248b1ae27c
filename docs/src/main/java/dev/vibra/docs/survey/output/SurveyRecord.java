package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import dev.vibra.history.MachineHistory;
import dev.vibra.point.PointSurvey;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.survey.MachineSurvey;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A survey with what is known of its folder.
 *
 * @param survey result
 * @param reading what was read of the folder
 * @param conversions how the samples of a point became values in its unit, by the id of the point
 * @param problems what was wrong in the folder
 * @param run digest of inputs, options and version
 * @param runs run-ups and coast-downs
 * @param history the survey after the earlier visits
 */
public record SurveyRecord(MachineSurvey survey, MachineReading reading, Map<String, String> conversions,
        List<Problem> problems, String run, List<SpeedRun> runs, MachineHistory history) {
    /**
     * A survey without run-ups.
     *
     * @param survey see the record
     * @param reading see the record
     * @param conversions see the record
     * @param problems see the record
     * @param run see the record
     */
    public SurveyRecord(MachineSurvey survey, MachineReading reading, Map<String, String> conversions,
            List<Problem> problems, String run) {
        this(survey, reading, conversions, problems, run, List.of(), MachineHistory.of(survey, reading.visits()));
    }

    Optional<String> conversion(PointSurvey point) {
        return Optional.ofNullable(conversions.get(point.point().id()));
    }

    /** Where the baseline of a point is from, if earlier results gave it. */
    Optional<String> baseline(PointSurvey point) {
        return Optional.ofNullable(reading.baselines().get(point.point().id()));
    }

    /** When a point was recorded, where that isn't the time of the machine as a whole. */
    Optional<Instant> measured(PointSurvey point) {
        return Optional.ofNullable(reading.sources().get(point.point().id())).flatMap(source -> source.measured());
    }

    SurveyRecord with(List<Problem> more) {
        return new SurveyRecord(survey, reading, conversions, more, run, runs, history);
    }
}
