package dev.vibra.rotation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.envelope.SquaredEnvelope;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Recordings of a shaft whose speed is known in closed form. */
class VaryingSpeedTest {
    private static final double RATE = 12_800;
    private static final SpeedProfile RAMP = new SpeedProfile(hertz(24.375), hertz(25.625), 8);
    private static final SpeedProfile WANDER = new SpeedProfile(hertz(25), hertz(25), 8).withWander(0.02, 0.25);
    /**
     * In its first and last step the spline lies between the parabola and its chord. The sharpest change, 0.02·25·2π/4
     * Hz/s at 25 Hz, bends it by 1.26e-3 of a turn a turn squared; the chord is an eighth of that away.
     */
    private static final double BEND = 0.02 * 25 * 2 * Math.PI * 0.25 / (25 * 25) / 8;

    private static RotationSpeed hertz(double value) {
        return RotationSpeed.ofHertz(value);
    }

    private static ShaftAngle angle(SpeedProfile profile) {
        Waveform pulses = profile.tachometer(102_400, 1);
        return ShaftAngle.of(Tachometer.fitting(pulses).pulses(pulses), 1);
    }

    private static Synthesis silence(SpeedProfile profile) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, (int) (profile.seconds() * RATE));
    }

    /** Noise whose power swings as {@code 1 + depth·cos} at an order of the shaft. */
    private static Waveform swinging(SpeedProfile profile, double order, double depth, long seed) {
        double[] noise = silence(profile).noise(1, seed).waveform().samples();
        for (int i = 0; i < noise.length; i++) {
            double turned = order * profile.revolutionsAt(i / RATE);
            noise[i] *= Math.sqrt(1 + depth * Math.cos(2 * Math.PI * turned));
        }
        return Waveform.ofSi(Quantity.ACCELERATION, RATE, noise);
    }

    /** A line between two bins is spread over four; 1.5 is the noise bandwidth of the Hann window. */
    private static double depth(EnvelopeSpectrum spectrum, double hertz) {
        int line = (int) Math.rint(hertz / spectrum.resolutionHertz());
        return Math.sqrt(IntStream.rangeClosed(line - 2, line + 2).mapToDouble(spectrum::depth).map(m -> m * m).sum()
                / 1.5);
    }

    /** Ramp of Δ within N revolutions: N·Δ/8 ahead or behind in the middle; the angle is a parabola of time. */
    @Test
    void angleAndTimeAreInversesAndAgreeWithTheClosedForm() {
        for (SpeedProfile profile : List.of(RAMP, WANDER)) {
            ShaftAngle angle = angle(profile);
            double first = profile.revolutionsAt(angle.firstSeconds());
            for (double time = angle.firstSeconds(); time < angle.lastSeconds(); time += 0.0371) {
                double turned = angle.revolutionsAt(time);
                assertEquals(time, angle.secondsAt(turned), 1e-12);
                assertEquals(profile.revolutionsAt(time) - first, turned, BEND);
            }
            assertEquals(angle.revolutions(), angle.revolutionsAt(angle.lastSeconds()), 1e-12);
            assertEquals(0, angle.revolutionsAt(angle.firstSeconds()), 0);
        }
        double turns = angle(RAMP).revolutions(); // Of 200, with their share of the ramp.
        assertEquals(turns * 0.05 * turns / 200 / 8, angle(RAMP).wanderRevolutions(), 1e-3);
        assertEquals(0, angle(new SpeedProfile(hertz(25), hertz(25), 8)).wanderRevolutions(), 1e-3);
        assertEquals(angle(RAMP).secondsAt(0), angle(RAMP).secondsAt(-0.0));
    }

    @Test
    void aGearedShaftTurnsByItsRatio() {
        ShaftAngle angle = angle(RAMP);
        ShaftAngle slow = angle.geared(0.4);
        assertEquals(0.4 * angle.revolutions(), slow.revolutions(), 1e-12);
        assertEquals(angle.secondsAt(50), slow.secondsAt(20), 1e-9);
        assertEquals(0.4 * angle.meanSpeed().hertz(), slow.meanSpeed().hertz(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> angle.geared(0));
    }

    /** An order is a cosine of constant frequency at mean speed. */
    @Test
    void anOrderBecomesASteadyTone() {
        for (SpeedProfile profile : List.of(RAMP, WANDER)) {
            ShaftAngle angle = angle(profile);
            Waveform even = angle.atMeanSpeed(silence(profile).order(2, 40.3, profile, 0).waveform());
            double first = profile.revolutionsAt(angle.firstSeconds());
            double mean = angle.meanSpeed().hertz();
            assertEquals(angle.revolutions() / mean, even.durationSeconds(), 2 / RATE);
            for (int i = 100; i < even.length() - 100; i++) {
                double turned = mean * (even.startSeconds() + i / RATE - angle.firstSeconds());
                assertEquals(2 * Math.cos(2 * Math.PI * 40.3 * (first + turned)), even.at(i),
                        2 * 2 * Math.PI * 40.3 * BEND + 1e-3);
            }
        }
    }

    @Test
    void aSteadyRecordingStaysAsItIs() {
        SpeedProfile steady = new SpeedProfile(hertz(25), hertz(25), 8);
        Waveform wave = silence(steady).tone(1, 333, 0.3).tone(1, 4000, 1).waveform();
        ShaftAngle angle = ShaftAngle.of(PulseTrain.of(IntStream.rangeClosed(0, 200).mapToDouble(i -> i / 25.0)
                .toArray()), 1);
        Waveform even = angle.atMeanSpeed(wave);
        for (int i = 50; i < even.length() - 50; i++) {
            assertEquals(wave.at(i), even.at(i), 1e-4);
        }
    }

    /**
     * Closed form: in a band of width B a pulsation of depth m at f reads {@code m·(1 - f/B)}, since the components
     * that beat must both lie in the band. Depths scatter by {@code √(2/(B·8 s))} = 0.011 a bin; five are gathered.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.3983, 3.5848, 10.83})
    void aPulsationThatFollowsTheShaftGivesBackItsLine(double order) {
        for (SpeedProfile profile : List.of(RAMP, WANDER)) {
            ShaftAngle angle = angle(profile);
            Waveform wave = swinging(profile, order, 0.8, 4);
            Band band = Band.of(2000, 4000);
            double hertz = order * angle.meanSpeed().hertz();
            SquaredEnvelope envelope = Envelope.squared(wave, band);
            SquaredEnvelope even = angle.atMeanSpeed(envelope);
            assertEquals(band, even.band());
            assertEquals(envelope.sampleRateHertz(), even.sampleRateHertz());
            assertTrue(Arrays.stream(even.squares()).allMatch(square -> square >= 0));
            EnvelopeSpectrum sharp = EnvelopeSpectrum.unlessSilent(even, 0.25).orElseThrow();
            double expected = 0.8 * (1 - hertz / band.widthHertz());
            assertEquals(expected, depth(sharp, hertz), 0.05);
            assertEquals(expected, depth(EnvelopeSpectrum.of(angle.atMeanSpeed(wave), band, 0.25), hertz), 0.05);
            if (order > 3) {
                assertTrue(depth(EnvelopeSpectrum.unlessSilent(envelope, 0.25).orElseThrow(), hertz) < 0.5);
            }
        }
    }

    @Test
    void whatSharesNoTimeWithTheAngleIsRefused() {
        ShaftAngle angle = angle(RAMP);
        Waveform late = silence(RAMP).noise(1, 1).waveform().startingAt(8);
        assertEquals(0, angle.revolutionsWithin(late));
        assertEquals("at least 4 samples must lie inside the signal, 8.0 to 15.999921875 s, and the angle, "
                + angle.firstSeconds() + " to " + angle.lastSeconds() + " s: 0",
                assertThrows(IllegalArgumentException.class, () -> angle.atMeanSpeed(late)).getMessage());
        assertThrows(IllegalArgumentException.class,
                () -> angle.atMeanSpeed(Envelope.squared(late, Band.of(2000, 4000))));
        assertThrows(IllegalArgumentException.class, () -> angle.revolutionsAt(angle.lastSeconds() + 1e-9));
        assertThrows(IllegalArgumentException.class, () -> angle.revolutionsAt(Double.NaN));
        SquaredEnvelope envelope = Envelope.squared(silence(RAMP).noise(1, 1).waveform(), Band.of(2000, 4000));
        assertThrows(IllegalArgumentException.class, () -> envelope.with(0, 1, 2, 3));
        assertThrows(IllegalArgumentException.class, () -> envelope.with(0, 1, 2, 3, -1));
        assertThrows(IllegalArgumentException.class, () -> envelope.with(Double.NaN, 1, 2, 3, 4));
    }

    /** The quick sum over whole taps and the general one are the same sum. */
    @Test
    void bothWaysOfInterpolatingAgree() {
        double[] noise = silence(RAMP).noise(1, 3).waveform().samples();
        Random random = new Random(5);
        for (int i = 0; i < 2000; i++) {
            double place = i < 20 ? i : noise.length * random.nextDouble();
            assertEquals(SincInterpolator.at(noise, place, Math.nextDown(1.0)), SincInterpolator.at(noise, place, 1),
                    1e-10);
        }
    }

    @Test
    void aProfileSwingsInClosedForm() {
        SpeedProfile swing = new SpeedProfile(hertz(20), hertz(30), 10).withWander(0.1, 0.3);
        double sum = 0;
        for (int i = 0; i < 100_000; i++) { // Midpoint rule.
            sum += swing.speedAt((i + 0.5) * 1e-4).hertz() * 1e-4;
        }
        assertEquals(sum, swing.revolutionsAt(10), 1e-6);
        assertEquals(sum / 10, swing.meanSpeed().hertz(), 1e-7);
        assertEquals(25 * (1 + 0.1), swing.withWander(0.1, 0).fastest().hertz() - 5, 1e-12);
        for (double time = 0; time <= 10; time += 0.173) {
            assertEquals(time, swing.secondsAt(swing.revolutionsAt(time)), 1e-12);
        }
        assertEquals("1200 r/min (20.00 Hz) to 1800 r/min (30.00 Hz) in 10.0 s, ±10 % at 0.3 Hz", swing.toString());
        assertThrows(IllegalArgumentException.class, () -> new SpeedProfile(hertz(1), hertz(99), 1, 0.2, 1));
        assertThrows(IllegalArgumentException.class, () -> swing.withWander(0.3, 1));
    }

    /** The sweep is a formula of its own; impacts of a steady shaft are those without a shaft. */
    @Test
    void ordersAndImpactsFollowTheProfile() {
        double[] order = silence(RAMP).order(2, 3, RAMP, 0).waveform().samples();
        double[] sweep = silence(RAMP).sweep(2, 3 * 24.375, 3 * 25.625).waveform().samples();
        for (int i = 0; i < order.length; i++) {
            assertEquals(sweep[i], order[i], 1e-9);
        }
        SpeedProfile steady = new SpeedProfile(hertz(25), hertz(25), 8);
        ImpactTrain train = ImpactTrain.of(90, 5, 3000, 0.05).withJitter(0.01).withModulation(25, 0.9);
        double[] followed = silence(steady).impacts(train, steady, 3).waveform().samples();
        double[] alone = silence(steady).impacts(train, 3).waveform().samples();
        for (int i = 0; i < alone.length; i++) {
            assertEquals(alone[i], followed[i], 1e-6);
        }
        Synthesis longer = Synthesis.silence(Quantity.ACCELERATION, RATE, 8 * 12_800 + 1);
        assertEquals("duration of the profile must be at least that of the signal, 8.000078125 s: 8.0",
                assertThrows(IllegalArgumentException.class, () -> longer.impacts(train, steady, 1)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> longer.order(1, 1, steady, 0));
        assertThrows(IllegalArgumentException.class, () -> silence(RAMP).order(1, 250, RAMP, 0));
        assertFalse(Arrays.equals(followed, silence(RAMP).impacts(train, RAMP, 3).waveform().samples()));
    }
}
