package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.synthesis.Synthesis;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Eight points of a fan that vibrate by a multiple of their number, the last one in zone C. */
class FullDataTest {
    private static MachineSurvey survey;

    @BeforeAll
    static void survey() {
        MachineDescription fan = MachineDescription.of("Fan").withMachine(Machine.of(MachineKind.FAN)
                .withRatedPowerKilowatts(45).withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(25)));
        Map<String, Waveform> recordings = new HashMap<>();
        for (int i = 1; i <= 8; i++) {
            fan = fan.withPoint(MeasuringPoint.of("P" + i));
            recordings.put("P" + i, Synthesis.silence(Quantity.ACCELERATION, 6400, 25_600).noise(0.05, i)
                    .tone(0.09 * i, 25, 0).noise(0.01, 10 + i).waveform());
        }
        survey = Survey.of(fan, recordings);
    }

    private static Set<String> chosen(long bytesEach, boolean all) {
        Map<String, Long> bytes = new LinkedHashMap<>();
        survey.points().forEach(point -> bytes.put(point.point().id(), bytesEach));
        return FullData.points(survey, bytes, all);
    }

    @Test
    void whatNeedsALookAndTheThreeHighestAreKeptWhole() {
        Set<String> chosen = chosen(1000, false);
        assertTrue(chosen.containsAll(List.of("P6", "P7", "P8")), chosen.toString());
        survey.findings().forEach(finding -> assertTrue(chosen.containsAll(finding.points())));
        assertFalse(chosen.contains("P1"), chosen.toString());
        assertEquals(8, chosen(1000, true).size());
    }

    /** Two of one and a half megabytes fit into the budget, the most urgent ones; all of them only when asked. */
    @Test
    void theReportStaysSmallUnlessAskedOtherwise() {
        assertEquals(2, chosen(1_500_000, false).size());
        assertTrue(chosen(1_500_000, false).contains("P8"));
        assertEquals(8, chosen(1_500_000, true).size());
        assertEquals(Set.of(), chosen(100_000_000, false));
    }
}
