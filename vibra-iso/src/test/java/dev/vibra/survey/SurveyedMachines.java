package dev.vibra.survey;

import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.severity.Machine;
import dev.vibra.severity.MachineKind;
import dev.vibra.severity.Support;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;

/** Machines and signals of known content for the tests of the survey. */
public final class SurveyedMachines {
    /** Sample rate in Hz. */
    public static final double RATE = 12_800;
    /** Samples of a recording, four seconds. */
    public static final int LENGTH = 51_200;
    /** Speed of the shaft. */
    public static final RotationSpeed SPEED = RotationSpeed.ofHertz(25);

    private SurveyedMachines() {}

    /** A fan of 37 kW on rigid support, at 1500 r/min: ISO 20816-3:2022, group 2, rigid, 1.4 / 2.8 / 4.5 mm/s. */
    public static MachineDescription fan() {
        return MachineDescription.of("fan").withMachine(Machine.of(MachineKind.FAN).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID).withSpeed(SPEED));
    }

    /** A horizontal point. */
    public static MeasuringPoint radial(String id) {
        return MeasuringPoint.of(id).withDirection(Direction.HORIZONTAL);
    }

    /** A little noise of the measuring chain. */
    public static Synthesis quiet(long seed) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.02, seed);
    }

    /** Adds the acceleration of a line of given rms velocity at a multiple of the speed: {@code √2·2πf·v}. */
    public static Synthesis line(Synthesis signal, double order, double millimetresPerSecond) {
        double hertz = SPEED.hertzOfOrder(order);
        return signal.tone(Math.sqrt(2) * 2 * Math.PI * hertz * millimetresPerSecond / 1e3, hertz, 0.3);
    }

    /** A smooth shaft line with knocks of 60 m/s² at a rate of no shaft. */
    public static Synthesis knocking(long seed) {
        return line(Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(1, seed), 1, 0.8)
                .impacts(ImpactTrain.of(37.3, 60, 3000, 0.05).withJitter(0.005), seed);
    }

    /** The same with knocks once in a turn, as of a loose part. */
    public static Synthesis hammering(long seed) {
        return line(Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(1, seed), 1, 0.8)
                .impacts(ImpactTrain.of(SPEED.hertz(), 60, 3000, 0.05), seed);
    }
}
