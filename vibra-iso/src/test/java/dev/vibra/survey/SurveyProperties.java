package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.severity.Zone;
import dev.vibra.signal.Waveform;
import dev.vibra.measuring.Direction;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** What is put into a recording comes out of its survey. */
class SurveyProperties {
    private static final double RATE = 5120;

    private static PointSurvey survey(double speedHertz, double hertz, double velocity) {
        double amplitude = Math.sqrt(2) * 2 * Math.PI * hertz * velocity / 1e3;
        // A tone without noise repeats its largest samples, as a clipped recording does, and would be refused.
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * (int) RATE).noise(0.01 * amplitude, 7)
                .tone(amplitude, hertz, 1).waveform();
        MachineDescription machine = MachineDescription.of("any").withMachine(Machine.of(MachineKind.FAN)
                .withRatedPowerKilowatts(50).withSupport(Support.RIGID).withSpeed(RotationSpeed.ofHertz(speedHertz)))
                .withPoint(MeasuringPoint.of("P").withDirection(Direction.VERTICAL));
        return Survey.of(machine, Map.of("P", wave)).points().get(0);
    }

    @Property(tries = 40)
    void theLineAtShaftSpeedIsFoundWithItsVelocity(@ForAll @DoubleRange(min = 16, max = 120) double speed,
            @ForAll @DoubleRange(min = 0.5, max = 20) double velocity,
            @ForAll @DoubleRange(min = -0.01, max = 0.01) double slip) {
        PointSurvey point = survey(speed, speed * (1 + slip), velocity);
        assertEquals(velocity, point.description().value("velocity-rms-1x").orElseThrow(), 0.01 * velocity);
        assertEquals(1 + slip, point.dominantLines().get(0).hertz() / speed, 0.001);
    }

    @Property(tries = 40)
    void moreVibrationIsNeverABetterZone(@ForAll @DoubleRange(min = 20, max = 800) double hertz,
            @ForAll @DoubleRange(min = 0.1, max = 10) double velocity, @ForAll @DoubleRange(min = 1, max =
                    3) double more) {
        Zone lower = survey(25, hertz, velocity).zone().orElseThrow();
        Zone higher = survey(25, hertz, velocity * more).zone().orElseThrow();
        assertTrue(!lower.isWorseThan(higher), lower + " at " + velocity + ", " + higher + " at " + velocity * more);
    }

    /** Half of the energy that the boundary B/C of 2.8 mm/s allows is 0.7 of it; below, one line at 1× is no fault. */
    @Property(tries = 30)
    void unbalanceIsInTheGroupExactlyWhereTheLineIsHigh(@ForAll @DoubleRange(min = 0.2, max = 12) double velocity) {
        Assume.that(Math.abs(velocity / (0.7 * 2.8) - 1) > 0.02);
        PointSurvey point = survey(25, 25, velocity);
        MachineDescription machine = MachineDescription.of("any").withPoint(point.point());
        assertEquals(velocity > 0.7 * 2.8, Survey.begin(machine).conclude(List.of(point)).findings().stream()
                .anyMatch(one -> one.code().equals("unbalance") || one.alikeTo().contains("unbalance")));
    }
}
