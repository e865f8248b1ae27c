package dev.vibra.properties;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.envelope.Demodulation;
import dev.vibra.envelope.Envelope;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.FullSpectrum;
import dev.vibra.rotation.Orbit;
import dev.vibra.rotation.OrderSpectrum;
import dev.vibra.rotation.OrderTrack;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.rotation.SynchronousAverage;
import dev.vibra.rotation.Tachometer;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What a shaft is made to do is what rotation and envelope read. */
class RotationProperties {
    private static final double RATE = 4096;

    private static SpeedProfile profile(double from, double to) {
        return new SpeedProfile(RotationSpeed.ofHertz(from), RotationSpeed.ofHertz(to), 3);
    }

    private static Waveform order(SpeedProfile profile, double order, double amplitude, double lag) {
        double[] x = new double[(int) (RATE * profile.seconds())];
        for (int i = 0; i < x.length; i++) {
            x[i] = amplitude * Math.cos(2 * Math.PI * order * profile.revolutionsAt(i / RATE) - lag);
        }
        return Signals.wave(RATE, x);
    }

    private static ShaftAngle angle(SpeedProfile profile) {
        Waveform signal = profile.tachometer(RATE, 1);
        return ShaftAngle.of(Tachometer.fitting(signal).pulses(signal), 1);
    }

    private static double angularDistance(double a, double b) {
        return Math.abs(Math.IEEEremainder(a - b, 2 * Math.PI));
    }

    /** A run-up smears in time and not in angle; ends are left out, where the spline is straighter than the shaft. */
    @Property(tries = 25)
    void orderTrackReturnsTheOrderPutIn(@ForAll @DoubleRange(min = 15, max = 30) double from,
            @ForAll @DoubleRange(min = 15, max = 30) double to, @ForAll @IntRange(min = 1, max = 5) int order,
            @ForAll @DoubleRange(min = 0.1, max = 10) double amplitude,
            @ForAll @DoubleRange(min = 0, max = 6.2) double lag) {
        SpeedProfile profile = profile(from, to);
        AngularWaveform angular = AngularWaveform.of(order(profile, order, amplitude, lag), angle(profile), 64);
        List<SpeedPoint> points = OrderTrack.of(angular, order, 4).points();
        for (SpeedPoint point : points.subList(2, points.size() - 2)) {
            assertEquals(amplitude, point.vector().amplitude(), 0.01 * amplitude);
            assertTrue(angularDistance(lag, point.vector().lagRadians()) < 0.05, "" + point);
            assertEquals(profile.speedAt(point.seconds()).hertz(), point.speed().hertz(), 0.1);
        }
    }

    @Property(tries = 25)
    void orderSpectrumReadsTheOrder(@ForAll @DoubleRange(min = 18, max = 30) double from,
            @ForAll @DoubleRange(min = 18, max = 30) double to, @ForAll @IntRange(min = 1, max = 8) int order) {
        SpeedProfile profile = profile(from, to);
        AngularWaveform angular = AngularWaveform.of(order(profile, order, 2, 0.5), angle(profile), 64);
        OrderSpectrum spectrum = OrderSpectrum.of(angular, 8, Window.hann());
        assertEquals(Math.sqrt(2), spectrum.level(order).si(), 0.02);
        int best = 1;
        for (int k = 1; k < spectrum.lines(); k++) {
            best = spectrum.amplitude(k, Detector.RMS) > spectrum.amplitude(best, Detector.RMS) ? k : best;
        }
        assertEquals(order, spectrum.order(best), 1e-9);
    }

    @Property(tries = 25)
    void synchronousAverageKeepsWhatRepeats(@ForAll @DoubleRange(min = 18, max = 30) double hertz,
            @ForAll @DoubleRange(min = 0, max = 6.2) double lag, @ForAll @IntRange(min = 1, max = 6) int order) {
        SpeedProfile profile = profile(hertz, hertz);
        AngularWaveform angular = AngularWaveform.of(order(profile, order, 1.5, lag), angle(profile), 64);
        SynchronousAverage average = SynchronousAverage.of(angular);
        assertEquals(1.5, average.vector(order).amplitude(), 0.005);
        assertTrue(angularDistance(lag, average.vector(order).lagRadians()) < 0.02);
        assertTrue(average.repeatingShare() > 0.99, "" + average.repeatingShare());
        double[] residual = average.residual().samples();
        assertTrue(Signals.largest(residual) < 0.1);
        double[] difference = average.difference(order);
        assertTrue(Signals.largest(difference) < 0.01);
    }

    /** Average and residual add up to the waveform, whatever it holds. */
    @Property(tries = 25)
    void averageAndResidualAddUp(@ForAll long seed) {
        SpeedProfile profile = profile(20, 25);
        AngularWaveform angular = AngularWaveform.of(Signals.wave(RATE, Signals.noise(12_288, seed)), angle(profile),
                32);
        SynchronousAverage average = SynchronousAverage.of(angular);
        double[] revolution = average.revolution();
        for (int i = 0; i < angular.length(); i++) {
            assertEquals(angular.at(i), average.residual().at(i) + revolution[i % 32], 1e-13);
            if (i > 100) {
                break; // residual() builds a whole waveform a call
            }
        }
        assertTrue(average.repeatingShare() >= 0 && average.repeatingShare() <= 1 + 1e-12);
    }

    /** The ellipse of the two circles runs through what the probes show. */
    @Property(tries = 150)
    void orbitRecombines(@ForAll @DoubleRange(min = 0.01, max = 10) double ax,
            @ForAll @DoubleRange(min = 0, max = 6.28) double lx,
            @ForAll @DoubleRange(min = 0.01, max = 10) double ay, @ForAll @DoubleRange(min = 0, max = 6.28) double ly) {
        Orbit orbit = Orbit.of(new OrderVector(ax, lx), new OrderVector(ay, ly));
        double largest = 0;
        double smallest = Double.POSITIVE_INFINITY;
        double power = 0;
        for (int i = 0; i < 720; i++) {
            double x = ax * Math.cos(2 * Math.PI * i / 720 - lx);
            double y = ay * Math.cos(2 * Math.PI * i / 720 - ly);
            largest = Math.max(largest, Math.hypot(x, y));
            smallest = Math.min(smallest, Math.hypot(x, y));
            power += (x * x + y * y) / 720;
        }
        // 720 places miss an extreme by at most a quarter of a degree: 1e-5 of the long axis squared.
        assertEquals(largest, orbit.longHalfAxis(), 1e-4 * largest);
        assertEquals(smallest, orbit.shortHalfAxis(), 0.005 * largest);
        assertEquals(power, orbit.forward() * orbit.forward() + orbit.backward() * orbit.backward(), 1e-9 * power);
        assertTrue(orbit.inclinationRadians() >= 0 && orbit.inclinationRadians() < Math.PI);
        // The area law: turning from x to y is forward.
        double area = ax * ay * Math.sin(ly - lx);
        assertEquals(area, orbit.forward() * orbit.forward() - orbit.backward() * orbit.backward(), 1e-9 * power);
    }

    @Property(tries = 60)
    void fullSpectrumTellsForwardFromBackward(@ForAll @DoubleRange(min = 0.1, max = 5) double forward,
            @ForAll @DoubleRange(min = 0.1, max = 5) double backward, @ForAll @IntRange(min = 10, max = 100) int line) {
        double[] x = new double[2048];
        double[] y = new double[2048];
        for (int i = 0; i < x.length; i++) {
            double angle = 2 * Math.PI * line * i / 512;
            x[i] = (forward + backward) * Math.cos(angle);
            y[i] = (forward - backward) * Math.sin(angle);
        }
        FullSpectrum spectrum = FullSpectrum.of(Signals.wave(512, x), Signals.wave(512, y),
                SpectrumSettings.withDefaults().withResolution(1));
        assertEquals(forward, spectrum.radius(line), 1e-9);
        assertEquals(backward, spectrum.radius(-line), 1e-9);
        assertEquals(0, spectrum.radius(line + 4), 1e-9);
    }

    @Property(tries = 40)
    void tachometerFindsEveryMark(@ForAll @DoubleRange(min = 5, max = 40) double from,
            @ForAll @DoubleRange(min = 5, max = 40) double to) {
        SpeedProfile profile = profile(from, to);
        Waveform signal = profile.tachometer(RATE, 1);
        PulseTrain pulses = Tachometer.fitting(signal).pulses(signal);
        int marks = (int) Math.floor(profile.revolutionsAt(3 - 1 / RATE)); // the mark at 0 s has no rise before it
        assertTrue(Math.abs(marks - pulses.size()) <= 1, pulses + " of " + marks);
        for (double seconds : pulses.seconds()) {
            double turned = profile.revolutionsAt(seconds);
            assertEquals(Math.rint(turned), turned, 0.02); // an edge of one sample turns by 40/4096 of a revolution
        }
    }

    /** One pulse lost and one doubled, far apart: both are found, and the train is nearly as before. */
    @Property(tries = 60)
    void repairUndoesALostAndADoubledPulse(@ForAll @DoubleRange(min = 8, max = 40) double from,
            @ForAll @DoubleRange(min = 8, max = 40) double to, @ForAll @IntRange(min = 8, max = 30) int lost,
            @ForAll @IntRange(min = 45, max = 60) int doubled,
            @ForAll @DoubleRange(min = 0.05, max = 0.4) double place) {
        List<Double> whole = new ArrayList<>();
        double time = 0;
        for (int i = 0; i < 80; i++) {
            whole.add(time);
            time += 1 / (from + (to - from) * i / 80);
        }
        List<Double> hurt = new ArrayList<>(whole);
        hurt.add(doubled + 1, whole.get(doubled) + place * (whole.get(doubled + 1) - whole.get(doubled)));
        hurt.remove(lost);
        PulseTrain train = PulseTrain.of(hurt.stream().mapToDouble(Double::doubleValue).toArray());
        assertEquals(List.of(lost - 1), train.gaps());
        assertEquals(List.of(doubled), train.doubled());
        double[] repaired = train.repaired().seconds();
        assertEquals(80, repaired.length);
        for (int i = 0; i < 80; i++) {
            // The pulse put in stands half-way; a speed that changes moves the true one by a hundredth of a period.
            assertEquals(whole.get(i), repaired[i], i == lost ? 0.02 / Math.min(from, to) : 1e-12);
        }
    }

    @Property(tries = 60)
    void unevenMarksAreCalibratedOut(@ForAll @DoubleRange(min = 0.15, max = 0.5) double first,
            @ForAll @DoubleRange(min = 0.15, max = 0.3) double second,
            @ForAll @DoubleRange(min = 5, max = 50) double hertz) {
        double[] share = {first, second, 1 - first - second};
        double[] times = new double[60];
        for (int i = 1; i < times.length; i++) {
            times[i] = times[i - 1] + share[(i - 1) % 3] / hertz;
        }
        PulseTrain train = PulseTrain.of(times);
        double[] measured = train.markSpacing(3);
        Signals.assertClose(share, measured, 1e-11);
        ShaftAngle angle = ShaftAngle.of(train, measured);
        assertEquals(hertz, angle.meanSpeed().hertz(), 1e-9 * hertz);
        for (double r = 0; r < angle.revolutions(); r += 0.37) {
            assertEquals(hertz, angle.speedAt(r).hertz(), 1e-7 * hertz);
            assertEquals(r / hertz, angle.secondsAt(r), 1e-10);
        }
    }

    /** Whole periods of carrier and modulation in the recording: the transform has no ends to leak from. */
    @Property(tries = 60)
    void demodulationReturnsAmplitudeAndPhase(@ForAll @IntRange(min = 200, max = 800) int carrier,
            @ForAll @IntRange(min = 1, max = 10) int slow, @ForAll @DoubleRange(min = 0, max = 0.9) double depth,
            @ForAll @DoubleRange(min = 0, max = 0.5) double index,
            @ForAll @DoubleRange(min = 0.1, max = 20) double amplitude) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 2048, 2048)
                .modulatedTone(amplitude, carrier, slow, depth, index).waveform();
        Demodulation demodulation = Demodulation.of(wave, carrier, 150);
        double[] a = demodulation.amplitude();
        double[] phase = demodulation.phaseRadians();
        for (int i = 0; i < a.length; i++) {
            double angle = 2 * Math.PI * slow * i / 2048;
            assertEquals(amplitude * (1 + depth * Math.cos(angle)), a[i], 1e-8 * amplitude);
            assertEquals(index * Math.sin(angle), phase[i], 1e-7);
        }
    }

    @Property(tries = 60)
    void envelopeOfAToneIsItsAmplitude(@ForAll @IntRange(min = 210, max = 290) int hertz,
            @ForAll @DoubleRange(min = 0.01, max = 50) double amplitude,
            @ForAll @DoubleRange(min = -3, max = 3) double phase) {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 1000, 1000).tone(amplitude, hertz, phase).waveform();
        for (double value : Envelope.of(wave, Band.of(200, 300)).samples()) {
            assertEquals(amplitude, value, 1e-9 * amplitude);
        }
    }

    /** The mean of the squared envelope is twice the mean square in the band (Parseval); nothing of it is negative. */
    @Property(tries = 60)
    void squaredEnvelopeHoldsThePowerOfTheBand(@ForAll long seed,
            @ForAll @DoubleRange(min = 10, max = 200) double lowest,
            @ForAll @DoubleRange(min = 20, max = 200) double width) {
        double[] x = Signals.noise(1500, seed);
        Band band = Band.of(lowest, lowest + width);
        double[] squared = Envelope.squared(Signals.wave(1000, x), band).squares();
        double mean = 0;
        for (double value : squared) {
            assertTrue(value >= 0);
            mean += value / squared.length;
        }
        double level = dev.vibra.spectrum.Spectrum.of(Signals.wave(1000, x), SpectrumSettings.withDefaults()
                .withWindow(Window.rectangular()).withResolution(1000.0 / 1500)).bandLevel(band).si();
        assertEquals(2 * level * level, mean, 1e-9 * mean);
    }

    @Property(tries = 40)
    void envelopeScalesWithTheSignal(@ForAll long seed, @ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
        double[] x = Signals.noise(900, seed);
        double[] y = java.util.Arrays.stream(x).map(v -> -factor * v).toArray();
        double[] ex = Envelope.of(Signals.wave(1000, x), Band.of(100, 250)).samples();
        double[] ey = Envelope.of(Signals.wave(1000, y), Band.of(100, 250)).samples();
        Signals.assertClose(java.util.Arrays.stream(ex).map(v -> factor * v).toArray(), ey, 1e-11);
    }
}
