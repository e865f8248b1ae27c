package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is told of a point and its reference: what doubled, that nothing did, or why it can't be said. */
class ReferenceTest {
    private static final MachineDescription FAN = MachineDescription.of("fan")
            .withPoint(MeasuringPoint.of("P").withExpandedUncertaintyPercent(2)).withPoint(MeasuringPoint.of("Q"))
            .withMachine(Machine.unknown().withSpeed(RotationSpeed.ofHertz(24.7)));

    private static Waveform wave(double hertz, double once, long seed) {
        double omega = 2 * Math.PI * hertz;
        return Synthesis.silence(Quantity.ACCELERATION, 3200, 19_200).noise(0.02, seed)
                .tone(Math.sqrt(2) * 1e-3 * once * omega, hertz, 1).waveform();
    }

    private static Optional<Reference> reference(Waveform now, Waveform then) {
        MachineSurvey survey = Survey.of(FAN, Map.of("P", now, "Q", now), Map.of(), Map.of("P", then));
        assertEquals(Optional.empty(), Reference.of(survey, survey.points().get(1)));
        return Reference.of(survey, survey.points().get(0));
    }

    @Test
    void whatDoubledIsTold() {
        Reference rose = reference(wave(24.7, 3, 1), wave(24.7, 1, 2)).orElseThrow();
        assertEquals("shaft speed 3.00 mm/s after 1.00 mm/s: 3.0 times \u00b1 3 %", rose.words());
        Map<String, Object> json = rose.json();
        assertEquals(true, ((Map<?, ?>) ((List<?>) json.get("lines")).get(0)).get("large"));
        assertFalse(((List<?>) json.get("noise")).isEmpty());
    }

    @Test
    void thatNothingDidIsTold() {
        Reference same = reference(wave(24.7, 1.2, 1), wave(24.7, 1, 2)).orElseThrow();
        assertEquals("none of the lines (1) and octaves of noise (7) has doubled or halved", same.words());
    }

    @Test
    void anObstacleIsTold() {
        Reference other = reference(wave(24.7, 1, 1), wave(25.4, 1, 2)).orElseThrow();
        assertTrue(other.words().startsWith("not compared: the reference was recorded at another speed"), other::words);
        assertEquals(List.of(), other.json().get("lines"));
    }
}
