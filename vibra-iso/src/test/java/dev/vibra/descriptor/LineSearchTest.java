package dev.vibra.descriptor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.synthesis.Synthesis;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Lines put in come out with the name, the level and the significance that they have. */
class LineSearchTest {
    private static final int RATE = 6400;

    private static Synthesis line(Synthesis signal, double hertz, double millimetresPerSecond) {
        return signal.tone(Math.sqrt(2) * 2 * Math.PI * hertz * millimetresPerSecond / 1e3, hertz, hertz);
    }

    private static Signals signals(Synthesis signal, double given) {
        return Signals.of(signal.waveform()).at(RotationSpeed.ofHertz(given), 0.02);
    }

    private static Synthesis noise() {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 8 * RATE).noise(0.02, 4);
    }

    @Test
    void theLargestLinesAreNamedByWhatMakesThem() {
        Synthesis signal = line(line(line(noise(), 24.75, 1), 6 * 24.75, 5), 103.3, 0.8);
        Signals signals = signals(signal, 25);
        DriveTrain train = DriveTrain.plain().withBlades(6).withLineHertz(50);
        List<DominantLine> lines = signals.dominantLines(signals.lines(train.ratesAt(25)));
        assertEquals(3, lines.size(), lines.toString());
        assertEquals("blade passing", lines.get(0).name().orElseThrow());
        assertEquals(6, lines.get(0).order().orElseThrow(), 1e-3);
        assertEquals(5, lines.get(0).level().in(Unit.MM_PER_S), 0.05);
        assertEquals("shaft speed", lines.get(1).name().orElseThrow());
        assertTrue(lines.get(2).name().isEmpty(), "103.3 Hz belongs to no rate: " + lines.get(2));
    }

    @Test
    void aLineKeepsLevelAndSignificance() {
        Signals signals = signals(line(noise(), 50, 0.2), 25);
        NamedLine once = signals.shaftLines().get(0);
        NamedLine twice = signals.shaftLines().get(1);
        assertFalse(once.stands(), once.toString());
        assertTrue(twice.stands());
        assertEquals(0.2, twice.level().in(Unit.MM_PER_S), 0.01);
        assertTrue(twice.log10Probability() < -10, twice.toString());
        assertTrue(once.level().si() > 0, "the noise there is told too");
    }

    @Test
    void ratesFollowTheLineOfTheShaftAndForcesOfTheLineDoNot() {
        Signals signals = signals(line(line(line(noise(), 24.6, 1), 24.6 * 7, 1), 100, 1), 25);
        List<NamedLine> lines = signals.lines(DriveTrain.plain().withBlades(7).withLineHertz(50).ratesAt(25));
        NamedLine blade = lines.stream().filter(one -> one.rate().kind() == Rate.Kind.BLADE_PASSING).findFirst()
                .orElseThrow();
        assertTrue(blade.stands(), blade.toString());
        assertEquals(24.6 * 7, blade.hertz(), 0.02);
        NamedLine line = lines.stream().filter(one -> one.rate().kind() == Rate.Kind.TWICE_LINE).findFirst()
                .orElseThrow();
        assertTrue(line.stands(), line.toString());
        assertEquals(100, line.hertz(), 0.02);
    }

    @Test
    void noiseHasNoLines() {
        int standing = 0;
        for (int seed = 0; seed < 50; seed++) {
            Synthesis noise = Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * RATE).noise(0.3, 100 + seed);
            Signals signals = signals(noise, 25);
            standing += (int) signals.lines(DriveTrain.plain().withBlades(7).ratesAt(25)).stream()
                    .filter(NamedLine::stands).count() + signals.dominantLines(List.of()).size();
        }
        // 50 recordings, some 15 searches each at 1e-4: 0.08 expected.
        assertTrue(standing <= 2, standing + " lines in noise alone");
    }

    @Test
    void aRecordingTooShortToPartTheMultiplesHasNone() {
        Signals signals = signals(Synthesis.silence(Quantity.ACCELERATION, RATE, RATE / 4).noise(0.1, 1)
                .tone(1, 25, 0), 25);
        assertEquals(List.of(), signals.shaftLines());
        assertTrue(Descriptors.standard().of(signals).missing().get("velocity-rms-1x").contains("too short"));
    }

    private static void assertNamed(String argument, Executable call) {
        assertEquals(argument, assertThrows(NullPointerException.class, call).getMessage());
    }

    @Test
    void nullsAreNamed() {
        Signals signals = Signals.of(noise().waveform());
        assertNamed("newSpeed", () -> signals.at(null, 0.01));
        assertNamed("quantity", () -> signals.chainObstacle(null, Band.of(10, 1000)));
        assertNamed("band", () -> signals.throughChain(Quantity.VELOCITY, null));
        assertNamed("rates[0]", () -> signals.lines(Arrays.asList((Rate) null)));
        assertNamed("known[0]", () -> signals.dominantLines(Arrays.asList((NamedLine) null)));
        assertNamed("signals", () -> Descriptors.standard().of(null, Set.of(), "why"));
        assertNamed("reason", () -> Descriptors.standard().of(signals, Set.of(), null));
        assertEquals("none: its value isn't a finite number", Outcome.of(Double.NaN).toString());
        Descriptor row = new Descriptor("x", "1", Descriptor.Basis.SAMPLES, "nothing", one -> null);
        assertEquals("rule of x must give an outcome: null", assertThrows(IllegalStateException.class,
                () -> Descriptors.standard().with(row).of(signals)).getMessage());
    }
}
