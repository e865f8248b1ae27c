package dev.vibra.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Structure, lines and noise, each against its closed form. */
class RecorderTest {
    private static final double RATE = 6400;

    private static Line line(double order, double offset, double re, double im, Wander wander) {
        return new Line(order, offset, new double[] {re}, new double[] {im}, wander, Cause.Origin.MACHINE, false);
    }

    @Test
    void oneModeAnswersAsOneDegreeOfFreedomAndForcesChangePlaces() {
        Structure.Mode mode = new Structure.Mode(30, 0.02, 4, new double[] {1, 0, 0, 0.5, 0, 0});
        Structure structure = Structure.of(List.of(mode));
        double omega = 2 * Math.PI * 30;
        double[][] motion = structure.respond(Excitation.of(1, 0, 2).push(0, Excitation.HORIZONTAL, 1, 0), 30);
        // At the natural frequency 1/(2iζ·m·ω²): a quarter turn behind the force.
        assertEquals(0, motion[0][0], 1e-12);
        assertEquals(-1 / (2 * 0.02 * 4 * omega * omega), motion[1][0], 1e-12);
        double[][] back = structure.respond(Excitation.of(1, 0, 2).push(1, Excitation.HORIZONTAL, 1, 0), 30);
        assertEquals(motion[1][3], back[1][0], 1e-15);
        double[][] still = structure.respond(Excitation.of(1, 0, 2).push(0, Excitation.HORIZONTAL, 1, 0), 1e-3);
        assertEquals(1 / (4 * omega * omega), still[0][0], 1e-9);
    }

    @Test
    void linesFollowTheTurnsOfTheShaft() {
        LineBank bank = new LineBank(24.7, RATE, Draws.of(3));
        double[][] samples = new double[1][5000];
        bank.add(List.of(line(7.5, 3.1, 2, -1, Wander.NONE)), new double[] {0}, samples);
        for (int i = 0; i < 5000; i++) {
            double t = i / RATE;
            double phase = 2 * Math.PI * (7.5 * bank.turns(t) + 3.1 * t);
            assertEquals(2 * Math.cos(phase) + Math.sin(phase), samples[0][i], 2e-4);
        }
        // Where the speed is told at the edge of a block it is exact.
        assertEquals(2 * Math.cos(2 * Math.PI * (7.5 * bank.turns(0.04) + 0.124))
                + Math.sin(2 * Math.PI * (7.5 * bank.turns(0.04) + 0.124)), samples[0][256], 1e-9);
    }

    /** {@code (1 + m·cos(2πgt))·cos(2πft)} is three lines. */
    @Test
    void twoLinesBesideAnotherModulateIt() {
        LineBank bank = new LineBank(25, RATE, Draws.of(3));
        double[][] samples = new double[1][4096];
        bank.add(List.of(line(0, 400, 1, 0, Wander.NONE), line(0, 425, 0.3, 0, Wander.NONE),
                line(0, 375, 0.3, 0, Wander.NONE)), new double[] {0}, samples);
        for (int i = 0; i < 4096; i++) {
            double t = i / RATE;
            assertEquals((1 + 0.6 * Math.cos(2 * Math.PI * 25 * t)) * Math.cos(2 * Math.PI * 400 * t), samples[0][i],
                    1e-9);
        }
    }

    /** A recording that begins later begins with another phase. */
    @Test
    void recordingsOfOtherTimesHaveOtherPhases() {
        LineBank bank = new LineBank(25, RATE, Draws.of(3));
        double[][] samples = new double[2][256];
        Line one = new Line(0, 50, new double[] {1, 1}, new double[] {0, 0}, Wander.NONE, Cause.Origin.MACHINE, false);
        bank.add(List.of(one), new double[] {2, 2.005}, samples);
        assertEquals(1, samples[0][0], 1e-9);
        assertEquals(0, samples[1][0], 1e-9);
        assertEquals(-1, samples[1][32], 1e-9);
    }

    @Test
    void aWanderingVectorHasTheSpreadTold() {
        double square = 0;
        double mean = 0;
        int n = 0;
        for (int draw = 0; draw < 200; draw++) {
            Wander wander = Wander.of(0.3, 2, Draws.of(draw));
            for (int i = 0; i < 200; i++) {
                double re = wander.re(0.5 * i);
                double im = wander.im(0.5 * i);
                mean += re;
                square += (re - 1) * (re - 1) + im * im;
                n++;
            }
        }
        assertEquals(1, mean / n, 0.01);
        assertEquals(0.3, Math.sqrt(square / n), 0.01);
    }

    /** Rms by the closed form of the density, and the density of one stretch by its Fourier sums. */
    @Test
    void noiseHasItsDensity() {
        Noise noise = new Noise(RATE, 1e-3, 8e-3, 120, 5e-3, 1900);
        double[] samples = new double[1 << 17];
        noise.addTo(samples, Draws.of(8).source());
        double square = 0;
        for (double x : samples) {
            square += x * x / samples.length;
        }
        assertEquals(noise.rms(), Math.sqrt(square), 0.02 * noise.rms());
        for (double hertz : new double[] {30, 120, 600, 1900, 3000}) {
            assertEquals(1, measured(samples, hertz) / noise.densityAt(hertz), 0.1);
        }
    }

    /** Mean of 256 stretches of 512 samples; their lines are 12.5 Hz apart. */
    private static double measured(double[] samples, double hertz) {
        int length = 512;
        double power = 0;
        int stretches = samples.length / length;
        for (int s = 0; s < stretches; s++) {
            double re = 0;
            double im = 0;
            double weights = 0;
            for (int i = 0; i < length; i++) {
                double hann = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
                double phase = 2 * Math.PI * hertz * i / RATE;
                re += hann * samples[s * length + i] * Math.cos(phase);
                im += hann * samples[s * length + i] * Math.sin(phase);
                weights += hann * hann;
            }
            power += 2 * (re * re + im * im) / (RATE * weights) / stretches;
        }
        return Math.sqrt(power);
    }

    @Test
    void decibelsAreThoseOfTheLineOverTheNoise() {
        Scene scene = new Scene(MachinePlan.draw(MachinePlan.Form.PUMP_SET, 5));
        assertTrue(new Recorder(scene, Draws.of(1)).decibels().isEmpty());
        RotorModels.unbalanceStatic(scene, Draws.of(2));
        double all = new Recorder(scene, Draws.of(1)).decibels().orElseThrow();
        Line line = scene.faultLines().get(0);
        double most = 0;
        for (int p = 0; p < scene.parts().points().size(); p++) {
            most = Math.max(most, line.velocity(p, scene.mainHertz()));
        }
        // The noise of machines in the usual band is some hundredths of a limit of some mm/s: 1e-6 to 3e-4 m/s in 1 Hz.
        assertTrue(all > 20 * Math.log10(most / 3e-4) && all < 20 * Math.log10(most / 1e-6), all + " dB");
    }
}
