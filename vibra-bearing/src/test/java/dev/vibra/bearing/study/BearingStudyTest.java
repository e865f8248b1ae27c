package dev.vibra.bearing.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.envelope.Envelope;
import dev.vibra.evidence.Share;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Keeps {@link BearingStudy} alive. */
class BearingStudyTest {
    private static final int CASES = 24;

    @Test
    void equalSeedsGiveEqualBearings() {
        assertEquals(SimulatedBearing.of(3).wave(), SimulatedBearing.of(3).wave());
        assertEquals(SimulatedBearing.of(3).toString(), SimulatedBearing.of(3).toString());
    }

    @Test
    void tableAddsUp() {
        List<StudyCase> cases = BearingStudy.run(1, CASES);
        String table = new StudyTable(cases).markdown();
        long healthy = cases.stream().filter(StudyCase::healthy).count();
        assertTrue(table.startsWith(CASES + " simulated bearings, " + healthy + " of them healthy."), table);
        int bearings = 0;
        for (String row : table.lines().filter(l -> l.matches("\\| -?\\d+ to -?\\d+ \\|.*")).toList()) {
            String[] cells = row.split("\\|");
            bearings += Integer.parseInt(cells[2].strip());
        }
        assertEquals(CASES - healthy, bearings);
    }

    @Test
    @DisplayName("0 of 1,000 bounds 0.37 %, 2 of 10 lies within 2.5 to 55.6 %: tables of Clopper and Pearson")
    void boundsAreThoseOfClopperAndPearson() {
        assertEquals(1 - Math.pow(0.025, 1e-3), new Share(0, 1000).upper(), 1e-9);
        assertEquals(0.0252, new Share(2, 10).lower(), 5e-5);
        assertEquals(0.5561, new Share(2, 10).upper(), 5e-5);
    }

    @Test
    void plainEnvelopeFindsLoudDefect() {
        long seed = 1;
        while (!loud(SimulatedBearing.of(seed))) {
            seed++;
        }
        SimulatedBearing bearing = SimulatedBearing.of(seed);
        PlainEnvelope envelope = new PlainEnvelope(Envelope.squared(bearing.wave(), bearing.rightBand()),
                bearing.told().shaftHertz());
        double[] statistics = envelope.statistics(bearing.told());
        assertTrue(statistics[BearingElement.OUTER_RACE.ordinal()] > 100, bearing.toString());
    }

    private static boolean loud(SimulatedBearing bearing) {
        return bearing.defect().filter(d -> d == BearingElement.OUTER_RACE).isPresent() && bearing.decibels() > 0
                && bearing.revolutions() > 100;
    }

    @Test
    void tableReplacesOnlyWhatStandsBetweenItsMarks() {
        String page = "before\n" + BearingStudy.between("", "old") + "behind\n";
        assertEquals(page.replace("old", "new"), BearingStudy.between(page, "new"));
    }
}
