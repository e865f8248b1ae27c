package dev.vibra.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.alarm.AlarmState;
import dev.vibra.machine.MachineDescription;
import dev.vibra.quantity.Unit;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.survey.SurveyedMachines;
import dev.vibra.trend.Readings;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A survey after its visits: which are compared, what is held against which limit, and what is refused. */
class MachineHistoryTest {
    private static final String RMS = "velocity-rms-10-1000Hz";
    private static final Instant NOW = Growth.at(400);

    /** A fan with one line of 2.4 mm/s at its speed: zone B. */
    private static MachineSurvey survey(String state) {
        return survey(state, 2.4);
    }

    private static MachineSurvey survey(String state, double level) {
        MachineDescription fan = SurveyedMachines.fan().withPoint(SurveyedMachines.radial("P")).measuredAt(NOW);
        return Survey.of(state.isEmpty() ? fan : fan.inState(state), Map.of("P", SurveyedMachines.line(
                SurveyedMachines.quiet(1), 1, level).waveform()));
    }

    private static Visit visit(double day, double level) {
        return Visit.of("day " + day, Map.of("P", Map.of(RMS, level))).measuredAt(Growth.at(day));
    }

    private static List<Visit> visits(double... levels) {
        List<Visit> visits = new ArrayList<>();
        for (int i = 0; i < levels.length; i++) {
            visits.add(visit(30 * i, levels[i]));
        }
        return visits;
    }

    private static DescriptorHistory rms(MachineHistory history) {
        return history.at("P").stream().filter(one -> one.descriptor().equals(RMS)).findFirst().orElseThrow();
    }

    /** ISO 20816-3: alarm a quarter of B/C above the baseline, trip at C/D; 1.0 + 0.25·2.8 = 1.7 and 4.5 mm/s. */
    @Test
    void whatAStandardLimitsHasItsAlarmAndTrip() {
        DescriptorHistory history = rms(MachineHistory.of(survey(""), visits(0.9, 1.1, 1.0, 0.95, 1.05, 1.2, 1.5)));
        assertEquals(1.7, history.limits().orElseThrow().alarm(), 1e-9);
        assertEquals(4.5, history.limits().orElseThrow().trip().orElseThrow(), 1e-9);
        assertEquals(AlarmState.ALARM, history.state().orElseThrow());
        assertEquals(8, history.readings().size());
        assertEquals(NOW, history.readings().instantOf(history.readings().lastDay()).orElseThrow());
    }

    /** The alarm never goes beyond 1.25 of B/C, however high the machine began, and that is said. */
    @Test
    void aBadBeginningIsNoBaseline() {
        DescriptorHistory history = rms(MachineHistory.of(survey(""), visits(5.0, 5.2, 5.1)));
        assertEquals(1.25 * 2.8, history.limits().orElseThrow().alarm(), 1e-9);
        assertTrue(history.limits().orElseThrow().source().contains("needs a remedy"), history.limits().toString());
    }

    /** One visit in in/s instead of mm/s would put the alarm out of reach. */
    @Test
    void aWrongUnitAmongTheFirstVisitsIsSetAside() {
        DescriptorHistory history = rms(MachineHistory.of(survey(""), visits(0.9, 25.4, 1.0, 1.1, 1.0, 1.2, 1.5)));
        assertEquals(1.7, history.limits().orElseThrow().alarm(), 1e-9);
        assertTrue(history.limits().orElseThrow().source().contains("1 of the first 5 visits set aside"),
                history.limits().toString());
    }

    @Test
    void whatIsNotComparableIsNamed() {
        List<Visit> visits = new ArrayList<>(visits(1.0, 1.1));
        visits.add(Visit.of("undated", Map.of("P", Map.of(RMS, 9.0))));
        visits.add(visit(500, 9).inState("full load"));
        visits.add(visit(70, 9).inState("half load"));
        visits.add(visit(30, 1.2));
        MachineHistory history = MachineHistory.of(survey(""), visits);
        assertEquals(List.of("undated: has no date", "day 500.0: isn't earlier than the present measurement",
                "day 70.0: is of another state, half load", "day 30.0: day 30.0 is of the same instant"), history.left());
        assertEquals(3, history.visits().size());
        assertEquals(1.2, rms(history).readings().value(1));
        assertTrue(MachineHistory.of(survey("half load"), visits).histories().get(0).readings().value(0) == 9);
    }

    @Test
    void fewVisitsGiveNumbersAndNoDate() {
        DescriptorHistory history = rms(MachineHistory.of(survey(""), visits(1.0, 1.1)));
        assertFalse(history.trend().isPresent() || history.change().isPresent() || history.timeToLimit().isPresent());
        assertEquals(List.of("a trend needs 8 readings since the change: 3"), history.refusals());
    }

    /** A tenth of a second tells nothing of velocity and enough of acceleration. */
    @Test
    void shortRecordingsAreFollowedInAcceleration() {
        MachineDescription fan = SurveyedMachines.fan().withPoint(SurveyedMachines.radial("P")).measuredAt(NOW);
        MachineSurvey survey = Survey.of(fan, Map.of("P", SurveyedMachines.quiet(1).waveform().part(0,
                (int) SurveyedMachines.RATE / 10)));
        double now = survey.points().get(0).description().value("acceleration-rms").orElseThrow();
        List<Visit> visits = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            visits.add(Visit.of("day " + i, Map.of("P", Map.of("acceleration-rms", now * (0.3 + 0.05 * i), RMS, 1.0)))
                    .measuredAt(Growth.at(30 * i)));
        }
        List<DescriptorHistory> histories = MachineHistory.of(survey, visits).at("P");
        assertEquals(List.of("acceleration-rms"), histories.stream().map(DescriptorHistory::descriptor).toList());
        assertEquals(13, histories.get(0).readings().size());
        assertTrue(histories.get(0).rises());
    }

    @Test
    void withoutADateNothingIsCompared() {
        MachineDescription fan = SurveyedMachines.fan().withPoint(SurveyedMachines.radial("P"));
        MachineSurvey survey = Survey.of(fan, Map.of("P", SurveyedMachines.quiet(1).waveform()));
        assertEquals(1, MachineHistory.of(survey, visits(1.0)).left().size());
        assertEquals(List.of(), MachineHistory.of(survey, List.of()).left());
    }

    @Test
    void theSoonestDateIsTheMostPressing() {
        double[] levels = new double[13];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = 0.5 + (i % 2) * 0.02 + Math.max(0, i - 3) * 0.3;
        }
        MachineHistory history = MachineHistory.of(survey("", 3.6), visits(levels));
        assertEquals(RMS, history.mostPressing().orElseThrow().descriptor());
        assertTrue(rms(history).timeToLimit().orElseThrow().earliest().isAfter(NOW));
        assertTrue(history.notable().contains(rms(history)));
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("value of kurtosis at P must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> Visit.of("a", Map.of("P", Map.of("kurtosis", Double.NaN)))).getMessage());
        assertThrows(IllegalArgumentException.class, () -> HistoryLimits.alarmAt(2, "s").withTrip(2));
        assertThrows(IllegalArgumentException.class, () -> DescriptorHistory.of("P", RMS,
                Readings.ofDays(new double[] {0, 1}, new double[] {1, 2}, Unit.MM_PER_S)));
    }
}
