package dev.vibra.balance.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.vector.PhaseSense;
import dev.vibra.balance.vector.VibrationVector;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.signal.Waveform;
import org.apache.commons.math3.random.Well19937c;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SynchronousFitTest {
    private static final double RATE = 2048;

    private static double[] marks(double hertz, double first, int count) {
        double[] out = new double[count];
        for (int i = 0; i < count; i++) {
            out[i] = first + i / hertz;
        }
        return out;
    }

    /** Order 1 of amplitude 2 mm/s at a lag of 50°, with offset, slope, orders 2 and 3, and noise. */
    private static double[] signal(double hertz, double first, double noise) {
        Well19937c random = new Well19937c(3);
        double[] out = new double[(int) (4 * RATE)];
        for (int i = 0; i < out.length; i++) {
            double angle = 2 * Math.PI * hertz * (i / RATE - first);
            out[i] = 2 * Math.cos(angle - Math.toRadians(50)) + 0.7 + 0.1 * i / RATE
                    + 1.5 * Math.cos(2 * angle + 1) + 0.8 * Math.cos(3 * angle) + 0.3 * Math.cos(4 * angle - 2)
                    + noise * random.nextGaussian();
        }
        return out;
    }

    @Test
    void findsTheVectorBesideOtherOrders() {
        double hertz = 24.63; // no whole number of samples per revolution
        Waveform w = Waveform.of(Unit.MM_PER_S, RATE, signal(hertz, 0.0123, 0));
        RepeatedReading r = SynchronousFit.withDefaults().read(w, marks(hertz, 0.0123, 97), PhaseSense.LAG);
        assertEquals(9, r.count());
        for (VibrationVector v : r.readings()) {
            assertEquals(2 / Math.sqrt(2), v.amplitude(), 1e-9);
            assertEquals(50, v.phaseDegrees(), 1e-7);
        }
        RepeatedReading lead = SynchronousFit.withDefaults().withRevolutionsPerBlock(20)
                .read(w, marks(hertz, 0.0123, 97), PhaseSense.LEAD);
        assertEquals(4, lead.count());
        assertEquals(310, lead.mean().phaseDegrees(), 1e-7);
    }

    // Noise of standard deviation s on n samples per block: order 1 scatters by s·√(2/n) in each part.
    @Test
    void scatterIsThatOfTheNoise() {
        double hertz = 25;
        Waveform w = Waveform.of(Unit.MM_PER_S, RATE, signal(hertz, 0, 0.5));
        RepeatedReading r = SynchronousFit.withDefaults().withRevolutionsPerBlock(2)
                .read(w, marks(hertz, 0, 100), PhaseSense.LAG);
        double expected = 0.5 * Math.sqrt(2 / (2 * RATE / hertz)) / 2;
        assertEquals(49, r.count());
        assertEquals(expected, r.amplitudeScatter(), 0.25 * expected);
        assertEquals(Math.toDegrees(expected), r.phaseScatterDegrees(), 0.25 * Math.toDegrees(expected));
    }

    /** A whole number of few samples per revolution: the higher orders look like lower ones and are left out. */
    @Test
    void fewSamplesPerRevolutionTellTheOrderAllTheSame() {
        for (double perRevolution : new double[] {2.5, 3, 4, 5, 6, 7, 8, 9, 10}) {
            double rate = 25 * perRevolution;
            double[] x = new double[(int) (8 * rate)];
            Random random = new Random(3);
            for (int i = 0; i < x.length; i++) {
                x[i] = 1 + 5 * Math.sqrt(2) * Math.cos(2 * Math.PI * 25 * i / rate - Math.toRadians(63))
                        + 0.05 * random.nextGaussian();
            }
            RepeatedReading r = SynchronousFit.withDefaults().withRevolutionsPerBlock(20)
                    .read(Waveform.of(Unit.MM_PER_S, rate, x), marks(25, 0, 200), PhaseSense.LAG);
            assertEquals(5, r.mean().amplitude(), 0.03, perRevolution + " samples per revolution");
            assertEquals(63, r.mean().phaseDegrees(), 0.4, perRevolution + " samples per revolution");
        }
        assertEquals("samples per revolution must be above 2.11 to tell the order 1: 2.00; use a higher sample rate",
                message(() -> SynchronousFit.withDefaults().withRevolutionsPerBlock(20).read(Waveform.of(Unit.MM_PER_S,
                50, new double[400]), marks(25, 0, 200), PhaseSense.LAG)));
    }

    /** Three pulses a turn at 25 Hz: the whole revolutions of the angle are the marks. */
    @Test
    void takesTheAngleOfTheShaftToo() {
        double[] pulses = new double[301];
        for (int k = 0; k < pulses.length; k++) {
            pulses[k] = k / 75.0;
        }
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(pulses), 3);
        Waveform w = Waveform.of(Unit.MM_PER_S, RATE, signal(25, 0, 0));
        RepeatedReading byAngle = SynchronousFit.withDefaults().read(w, angle, PhaseSense.LAG);
        RepeatedReading byMarks = SynchronousFit.withDefaults().read(w, marks(25, 0, 101), PhaseSense.LAG);
        assertEquals(byMarks.count(), byAngle.count(), 1);
        assertEquals(byMarks.mean().amplitude(), byAngle.mean().amplitude(), 1e-9);
        assertEquals(byMarks.mean().phaseDegrees(), byAngle.mean().phaseDegrees(), 1e-6);
    }

    /** A speed that sways by 2 % is followed from mark to mark. */
    @Test
    void followsASwayingSpeed() {
        double[] marks = new double[90];
        double[] t = new double[(int) (4 * RATE)];
        for (int i = 1; i < marks.length; i++) {
            marks[i] = marks[i - 1] + 1 / (24.0 + (i % 7) * 0.08);
        }
        int m = 0;
        for (int i = 0; i < t.length; i++) {
            double time = i / RATE;
            while (m + 2 < marks.length && time >= marks[m + 1]) {
                m++;
            }
            t[i] = 3 * Math.cos(2 * Math.PI * (time - marks[m]) / (marks[m + 1] - marks[m]) - 1);
        }
        RepeatedReading r = SynchronousFit.withDefaults().read(Waveform.of(Unit.UM, RATE, t), marks, PhaseSense.LAG);
        assertEquals(3 / Math.sqrt(2), r.mean().amplitude(), 1e-9);
        assertEquals(Math.toDegrees(1), r.mean().phaseDegrees(), 1e-7);
        assertEquals(Unit.UM, r.mean().unit());
    }

    @Test
    void aPartKeepsTheClockOfItsRecording() {
        double hertz = 24.63;
        Waveform w = Waveform.of(Unit.MM_PER_S, RATE, signal(hertz, 0.0123, 0)).part(1500, 6000);
        RepeatedReading r = SynchronousFit.withDefaults().read(w, marks(hertz, 0.0123, 97), PhaseSense.LAG);
        assertEquals(50, r.mean().phaseDegrees(), 1e-7);
        assertEquals(7, r.count());
    }

    @Test
    void meanSpeedAndBadInput() {
        assertEquals(24.63, SynchronousFit.meanSpeed(marks(24.63, 0.5, 11)).hertz(), 1e-9);
        assertEquals("count of marks must be at least 2: 1", message(() -> SynchronousFit.meanSpeed(1)));
        Waveform w = Waveform.of(Unit.MM_PER_S, RATE, signal(25, 0, 0));
        SynchronousFit fit = SynchronousFit.withDefaults();
        assertEquals("order 1 in blocks of 10 revolution(s)", fit.toString());
        assertEquals("revolutionsPerBlock must be at least 1: 0", message(() -> fit.withRevolutionsPerBlock(0)));
        assertEquals("markSeconds[1] must be above the mark before it, 1.0 s: 1.0",
                message(() -> fit.read(w, new double[] {1, 1}, PhaseSense.LAG)));
        assertEquals("markSeconds[1] must be finite: NaN",
                message(() -> fit.read(w, new double[] {1, Double.NaN}, PhaseSense.LAG)));
        assertEquals("marks must cover at least two blocks of 10 revolutions of the recording: 1",
                message(() -> fit.read(w, marks(25, 0, 20), PhaseSense.LAG)));
        assertEquals(2, fit.read(w, marks(25, 0, 21), PhaseSense.LAG).count());
        assertEquals("marks must cover at least two blocks of 10 revolutions of the recording: 0",
                message(() -> fit.read(w, marks(25, 3.9, 50), PhaseSense.LAG)));
        Waveform coarse = Waveform.of(Unit.MM_PER_S, 60, new double[600]);
        assertEquals("samples per block must be at least 8: 5; use more revolutions per block or a higher sample"
                + " rate",
                message(() -> fit.withRevolutionsPerBlock(2).read(coarse, marks(25, 0, 50), PhaseSense.LAG)));
        assertTrue(fit.withRevolutionsPerBlock(9).read(coarse, marks(25, 0, 50), PhaseSense.LAG).count() > 1);
    }

    private static String message(Executable code) {
        return assertThrows(IllegalArgumentException.class, code).getMessage();
    }
}
