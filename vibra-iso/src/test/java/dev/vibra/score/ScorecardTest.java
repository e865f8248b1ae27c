package dev.vibra.score;

import static dev.vibra.score.LabelOutcome.ABSENT;
import static dev.vibra.score.LabelOutcome.FALSE_ALARM;
import static dev.vibra.score.LabelOutcome.FOUND_NOT_NAMED;
import static dev.vibra.score.LabelOutcome.NOT_DETERMINED;
import static dev.vibra.score.LabelOutcome.REFUSED;
import static dev.vibra.score.LabelOutcome.RIGHT;
import static dev.vibra.score.LabelOutcome.WRONG_CODE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.ElementVerdict;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.diagnosis.Finding;
import dev.vibra.diagnosis.Rank;
import dev.vibra.diagnosis.Sign;
import dev.vibra.evidence.Share;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import dev.vibra.quantity.Quantity;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.survey.SurveyedMachines;
import dev.vibra.synthesis.Synthesis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Outcomes of made findings and surveyed recordings, decided by hand. */
class ScorecardTest {
    private static final String OUTER = "rolling-bearing-outer-race";
    private static final String INNER = "rolling-bearing-inner-race";
    private static final BearingGeometry GEOMETRY = BearingGeometry.of(9, 7.94, 39.04, 0);
    private static final MeasuringPoint POINT = SurveyedMachines.radial("P").withBearing("DE");
    private static final MachineDescription FAN = SurveyedMachines.fan()
            .withBearing(new BearingData("DE", GEOMETRY, RotatingRing.INNER)).withPoint(POINT);
    /** Fifty seconds of noise, in which every defect of the stated depth would show. */
    private static final PointSurvey NOISE = Survey.begin(FAN).point(POINT, noise(640_000).waveform()).withoutTraces();
    /** Too few turns for any verdict. */
    private static final PointSurvey SHORT = Survey.begin(FAN).point(POINT, noise(12_800).waveform()).withoutTraces();
    private static final PointSurvey UNSOUND = Survey.begin(FAN).point(POINT, noise(64_000).dropOut(1.3, 0.12)
            .waveform()).withoutTraces();
    private static final PointSurvey MISSING = PointSurvey.withoutRecording(POINT, "lost");

    private static Synthesis noise(int length) {
        return Synthesis.silence(Quantity.ACCELERATION, SurveyedMachines.RATE, length).noise(0.5, 3);
    }

    private static Finding finding(String code, String point, String... alike) {
        return new Finding(code, "fault " + code, 0.7, 0.7, Rank.WATCH, List.of(point), false,
                List.of(Sign.of("line of " + code)), List.of(), List.of(), List.of(), List.of(alike), List.of(), "made by the test");
    }

    private static ScoredLabel row(PointSurvey point, Label label, Finding... findings) {
        List<ScoredLabel> rows = Scorecard.empty().with("M", List.of(point), Arrays.asList(findings),
                Map.of("P", label)).rows();
        assertEquals(1, rows.size());
        return rows.get(0);
    }

    private static void assertOutcome(LabelOutcome expected, PointSurvey point, Label label, Finding... findings) {
        assertEquals(expected, row(point, label, findings).outcome());
    }

    @Test
    void recordingsGiveTheVerdictsThatTheTestsRestOn() {
        assertTrue(NOISE.bearings().get(0).diagnosis().findings().stream()
                .allMatch(one -> one.verdict() == ElementVerdict.ABSENT), NOISE.bearings().toString());
        assertTrue(SHORT.bearings().get(0).diagnosis().findings().stream()
                .allMatch(one -> one.verdict() == ElementVerdict.NOT_DETERMINED), SHORT.bearings().toString());
        assertTrue(UNSOUND.refused());
    }

    @Test
    void aNamedFaultIsRight() {
        ScoredLabel row = row(SHORT, Label.of(OUTER), finding(OUTER, "P"));
        assertEquals(RIGHT, row.outcome());
        assertFalse(row.isWrong());
        assertEquals("M, P: " + OUTER + ": right (" + OUTER + ")", row.toString());
    }

    /** What is said beside the right fault is not hidden; what is only another word for it is no extra. */
    @Test
    void aSecondFaultBesideTheRightOneIsTold() {
        ScoredLabel row = row(SHORT, Label.of(OUTER), finding(OUTER, "P"), finding(INNER, "P"),
                finding("periodic-impacts", "P", OUTER));
        assertEquals(RIGHT, row.outcome());
        assertEquals(List.of(INNER), row.extra());
        assertTrue(row.isWrong());
        assertTrue(row.evidence().toString().contains("line of " + INNER), row.evidence().toString());
    }

    @Test
    void anotherFaultIsAWrongCodeWithItsEvidence() {
        ScoredLabel row = row(SHORT, Label.of(OUTER), finding(INNER, "P"));
        assertEquals(WRONG_CODE, row.outcome());
        assertEquals(List.of(INNER), row.said());
        assertEquals("fault " + INNER + " (confidence 0.70) at P: line of " + INNER, row.evidence().get(0));
        assertTrue(row.evidence().get(1).startsWith("outer race not determined: "), row.evidence().toString());
    }

    @Test
    void whatCannotBeToldApartIsFoundAndNotNamed() {
        assertOutcome(FOUND_NOT_NAMED, SHORT, Label.of(OUTER), finding("periodic-impacts", "P", "rub", OUTER));
        assertOutcome(WRONG_CODE, SHORT, Label.of(OUTER), finding("periodic-impacts", "P", "rub"));
        assertOutcome(WRONG_CODE, SHORT, Label.of(OUTER), finding("periodic-impacts", "P", OUTER),
                finding(INNER, "P"));
    }

    @Test
    void silenceIsAbsentOrNotDetermined() {
        assertOutcome(ABSENT, NOISE, Label.of(OUTER));
        assertOutcome(NOT_DETERMINED, SHORT, Label.of(OUTER));
        assertOutcome(NOT_DETERMINED, NOISE, Label.of("unbalance"));
        assertTrue(row(NOISE, Label.of(OUTER)).isWrong());
        assertFalse(row(SHORT, Label.of(OUTER)).isWrong());
    }

    @Test
    void findingsAtOtherPointsDoNotCount() {
        assertOutcome(NOT_DETERMINED, SHORT, Label.of(OUTER), finding(OUTER, "Q"));
        assertOutcome(RIGHT, NOISE, Label.healthy(), finding(OUTER, "Q"));
    }

    @Test
    void aHealthyPointIsRightOnlyWhereItWasCleared() {
        assertOutcome(RIGHT, NOISE, Label.healthy());
        assertOutcome(NOT_DETERMINED, SHORT, Label.healthy());
        PointSurvey bare = Survey.begin(SurveyedMachines.fan()).point(SurveyedMachines.radial("P"),
                noise(64_000).waveform());
        assertOutcome(NOT_DETERMINED, bare, Label.healthy());
        assertEquals(List.of("the description has no bearing at this point"), row(bare, Label.healthy()).evidence());
        assertOutcome(FALSE_ALARM, NOISE, Label.healthy(), finding("impulsiveness", "P", OUTER));
    }

    @Test
    void aRefusedRecordingIsNeitherRightNorWrong() {
        for (PointSurvey point : List.of(UNSOUND, MISSING)) {
            assertOutcome(REFUSED, point, Label.healthy());
            assertOutcome(REFUSED, point, Label.of(OUTER));
            assertOutcome(REFUSED, point, Label.of("unbalance"));
        }
        assertEquals(List.of("recording: not determined, lost"), row(MISSING, Label.of(OUTER)).evidence());
        assertTrue(row(UNSOUND, Label.of(OUTER)).evidence().get(0).contains("drop-out"));
    }

    /** Too low frequencies are doubtful: the velocity is refused, the bearing is not. */
    @Test
    void aDoubtCountsOnlyWhereItConcernsTheLabel() {
        PointSurvey sloping = Survey.begin(FAN).point(POINT, noise(12_800).tone(40, 0.4, 0).waveform());
        assertEquals(1, sloping.recording().orElseThrow().refused().size(), sloping.recording().toString());
        assertOutcome(REFUSED, sloping, Label.of("unbalance"));
        assertOutcome(NOT_DETERMINED, sloping, Label.of(OUTER));
    }

    @Test
    void severalFaultsOfAPointAreARowEach() {
        List<ScoredLabel> rows = Scorecard.empty().with("M", List.of(SHORT),
                List.of(finding("unbalance", "P")), Map.of("P", Label.of("unbalance", OUTER))).rows();
        assertEquals(List.of(RIGHT, NOT_DETERMINED), rows.stream().map(ScoredLabel::outcome).toList());
        assertEquals(List.of(), rows.get(0).extra());
    }

    @Test
    void pointsWithoutLabelAreNotedAndLabelsWithoutPointRefused() {
        Scorecard card = Scorecard.empty().with("M", List.of(SHORT), List.of(), Map.of());
        assertEquals(List.of(), card.rows());
        assertEquals("M, P: no label", card.notScored().get(0).toString());
        assertEquals("0 labels", card.toString());
        String message = assertThrows(IllegalArgumentException.class, () -> card.with("M", List.of(SHORT), List.of(),
                Map.of("Q", Label.healthy()))).getMessage();
        assertEquals("labels must name points of M (P): Q", message);
    }

    /** Five faults and two healthy points; counts and shares by hand, bounds by SciPy in the test of the share. */
    private static Scorecard seven() {
        Scorecard card = Scorecard.empty();
        List<Finding> inner = List.of(finding(INNER, "P"));
        card = card.with("a", List.of(SHORT), inner, Map.of("P", Label.of(INNER)));
        card = card.with("b", List.of(SHORT), inner, Map.of("P", Label.of(OUTER)));
        card = card.with("c", List.of(SHORT), List.of(), Map.of("P", Label.of(OUTER)));
        card = card.with("d", List.of(NOISE), List.of(), Map.of("P", Label.of(OUTER)));
        card = card.with("e", List.of(MISSING), List.of(), Map.of("P", Label.of(INNER)));
        card = card.with("f", List.of(NOISE), List.of(), Map.of("P", Label.healthy()));
        card = card.with("g", List.of(NOISE), inner, Map.of("P", Label.healthy()));
        return card.without(new NotScored("h", List.of(), "there is no labels.json"));
    }

    @Test
    void sharesAreOfWhatWasNotRefused() {
        Scorecard card = seven();
        assertEquals(new Share(1, 4), card.defects().share(RIGHT));
        assertEquals(new Share(1, 4), card.defects().share(WRONG_CODE));
        assertEquals(new Share(1, 4), card.defects().share(ABSENT));
        assertEquals(new Share(1, 5), card.defects().share(REFUSED));
        assertEquals(new Share(1, 2), card.healthy().share(FALSE_ALARM));
        assertEquals(new Share(1, 1), card.ofLabel(INNER).share(RIGHT));
        assertEquals(List.of("b", "d", "g"), card.wrong().stream().map(ScoredLabel::machine).toList());
        assertEquals(List.of("healthy", INNER, OUTER), card.labels());
        assertEquals("7 labels: 2 right; 1 wrong code; 1 absent; 1 not determined; 1 refused; 1 false alarm",
                card.toString());
    }

    @Test
    void theTableHoldsTheCountsAndEachWrongRow() {
        List<String> lines = new ArrayList<>(seven().describe().lines().map(line -> line.trim().replaceAll(" +", " "))
                .toList());
        assertEquals("label n right named code sent det. fused alarm", lines.get(1));
        assertTrue(lines.contains("healthy 2 1 0 0 0 0 0 1"), lines.toString());
        assertTrue(lines.contains(INNER + " 2 1 0 0 0 0 1 0"), lines.toString());
        assertTrue(lines.contains(OUTER + " 3 0 0 1 1 1 0 0"), lines.toString());
        assertTrue(lines.contains("all 7 2 0 1 1 1 1 1"), lines.toString());
        assertTrue(lines.contains("faults, right: 1 of 4 (0.6 to 80.6 %)"), lines.toString());
        int wrong = lines.indexOf("Wrong");
        int open = lines.indexOf("Left open");
        assertTrue(lines.subList(wrong, open).contains("b, P: " + OUTER + ": wrong code (" + INNER + ")"));
        assertTrue(lines.subList(wrong, open).contains("g, P: healthy: false alarm (" + INNER + ")"));
        assertTrue(lines.indexOf("c, P: " + OUTER + ": not determined") > open);
        assertEquals("h: there is no labels.json", lines.get(lines.size() - 1));
        assertEquals("nothing was scored", Scorecard.empty().describe());
    }

    /** From signals to the card: the defect put in is right at its point, and the noise beside it no false alarm. */
    @Test
    void surveyedMachinesAreScored() {
        MachineDescription two = FAN.withPoint(SurveyedMachines.radial("Q").withBearing("DE"));
        MachineSurvey survey = Survey.of(two, Map.of("P", BearingSignal.of(GEOMETRY.frequencies(RotatingRing.INNER,
                SurveyedMachines.SPEED)).withDefect(BearingElement.OUTER_RACE, 8).withResonance(3200, 0.04)
                .withNoise(0.5).waveform(SurveyedMachines.RATE, 128_000, 5), "Q", noise(640_000).waveform()));
        Scorecard card = Scorecard.empty().with("fan", survey, Map.of("P", Label.of(OUTER), "Q", Label.healthy()));
        assertEquals("2 labels: 2 right", card.toString());
        assertEquals(List.of(), card.wrong());
    }
}
