package dev.vibra.balance.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class SynchronousSignalProperties {
    @Property(tries = 60)
    void whatWasMadeIsRead(@ForAll @DoubleRange(min = 0.01, max = 50) double amplitude,
            @ForAll @DoubleRange(min = 0, max = 360) double phase, @ForAll @DoubleRange(min = 12, max =
                    200) double hertz,
            @ForAll @DoubleRange(min = 0, max = 0.99) double start, @ForAll PhaseSense sense,
                    @ForAll Detector detector) {
        VibrationVector v = VibrationVector.of(amplitude, phase, Unit.MM_PER_S, detector, sense);
        SynchronousSignal signal = new SynchronousSignal(v, RotationSpeed.ofHertz(hertz), start / hertz);
        RepeatedReading read = SynchronousFit.withDefaults().read(signal.recording(4096, 8192), signal.marks(2), sense);
        VibrationVector mean = read.mean().in(Unit.MM_PER_S, detector);
        assertEquals(0, mean.minus(v).amplitude(), 1e-9 * amplitude);
        assertTrue(read.remarks().isEmpty());
        assertEquals(hertz, SynchronousFit.meanSpeed(signal.marks(2)).hertz(), 1e-9 * hertz);
    }
}
