package dev.vibra.descriptor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.meter.LevelMeter;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A line of known velocity: levels by closed form. */
class DescriptorsTest {
    private static final int RATE = 6400;

    /** Acceleration of a line of given rms velocity: {@code √2·2πf·v}. */
    private static Waveform line(double hertz, double velocityMillimetresPerSecond) {
        return Synthesis.silence(Quantity.ACCELERATION, RATE, 4 * RATE).noise(1e-4, 1)
                .tone(Math.sqrt(2) * 2 * Math.PI * hertz * velocityMillimetresPerSecond / 1e3, hertz, 0.3).waveform();
    }

    @Test
    void levelsOfALineAreThoseOfTheClosedForm() {
        Signals signals = Signals.of(line(25, 3)).at(RotationSpeed.ofHertz(25), 0.02);
        Map<String, Double> values = Descriptors.standard().of(signals).values();
        double acceleration = 3e-3 * 2 * Math.PI * 25;
        assertEquals(acceleration, values.get("acceleration-rms"), 1e-3 * acceleration);
        assertEquals(Math.sqrt(2) * acceleration, values.get("acceleration-peak"), 2e-3 * acceleration);
        assertEquals(1.5, values.get("kurtosis"), 0.01, "kurtosis of a sine");
        assertEquals(Math.sqrt(2), values.get("crest-factor"), 0.01);
        // The chain of ISO 2954:2012 passes 25 Hz with 1/sqrt(1 + (10/25)^6) = 0.99796.
        assertEquals(3 * 0.99796, values.get("velocity-rms-10-1000Hz"), 0.003);
        assertEquals(3, values.get("velocity-rms-1x"), 0.003);
        double displacement = 2 * Math.sqrt(2) * 3e-3 / (2 * Math.PI * 25) * 1e6;
        assertEquals(displacement, values.get("displacement-peak-to-peak-10-1000Hz"), 0.001 * displacement);
    }

    @Test
    void whatCannotBeMadeSaysWhy() {
        Description description = Descriptors.standard().of(line(25, 3));
        assertEquals("the speed is not known", description.missing().get("velocity-rms-1x"));
        Description twice = Descriptors.standard().of(Signals.of(line(25, 3)).at(RotationSpeed.ofHertz(25), 0.02));
        assertEquals("no line of its own stands out there", twice.missing().get("velocity-rms-2x"));
        Waveform slow = Synthesis.silence(Quantity.ACCELERATION, 1000, 8000).noise(0.1, 2).waveform();
        assertTrue(Descriptors.standard().of(slow).missing().get("velocity-rms-10-1000Hz").contains("sample rate"));
        Waveform brief = line(25, 3).part(0, 640);
        assertTrue(Descriptors.standard().of(brief).missing().get("velocity-rms-10-1000Hz").contains("at least 0."));
        Waveform velocity = Waveform.of(Unit.MM_PER_S, RATE, new double[4 * RATE]);
        assertEquals("the recording measures velocity",
                Descriptors.standard().of(velocity).missing().get("kurtosis"));
        Waveform constant = Waveform.of(Unit.M_PER_S2, RATE, new double[4 * RATE]);
        assertEquals("all samples are equal", Descriptors.standard().of(constant).missing().get("kurtosis"));
    }

    @Test
    void aNumberOfOnesOwnIsOneRow() {
        Descriptor shape = new Descriptor("shape-factor", "1", Descriptor.Basis.SAMPLES, "rms over mean magnitude",
                signals -> Outcome.of(signals.moments().shapeFactor()));
        Description description = Descriptors.standard().with(shape).of(line(25, 3));
        // A sine: (1/√2)/(2/π) = 1.1107.
        assertEquals(Math.PI / (2 * Math.sqrt(2)), description.value("shape-factor").orElseThrow(), 0.001);
        assertEquals("1", description.units().get("shape-factor"));
    }

    @Test
    void aMeterIsReadByTheSameTable() {
        LevelMeter meter = LevelMeter.withDefaults().at(RATE);
        assertEquals(Map.of(), Descriptors.standard().of(meter).values());
        meter.push(line(25, 3).samples(), 0, 4 * RATE);
        Map<String, Double> read = Descriptors.standard().of(meter).values();
        assertEquals(Set.of("acceleration-rms", "acceleration-peak", "crest-factor", "kurtosis",
                "velocity-rms-10-1000Hz"), read.keySet());
        Map<String, Double> whole = Descriptors.standard().of(line(25, 3)).values();
        read.forEach((name, value) -> assertEquals(whole.get(name), value, 1e-9 * value, name));
        LevelMeter slow = LevelMeter.withDefaults().withBand(Band.of(2, 1000)).at(RATE);
        slow.push(line(25, 3).samples(), 0, 4 * RATE);
        assertTrue(Descriptors.standard().of(slow).missing().get("velocity-rms-10-1000Hz").contains("2"));
    }

    @Test
    void namesLeadToRows() {
        for (String name : Descriptors.standard().withTachometer().names()) {
            assertEquals(name, Descriptors.named(name).orElseThrow().name());
        }
        assertEquals(Descriptors.rms(Quantity.VELOCITY, Band.of(2, 1000)).name(),
                Descriptors.named("velocity-rms-2-1000Hz").orElseThrow().name());
        for (String wrong : List.of("velocity", "velocity-rms-1000-10Hz", "velocity-rms-0-10Hz", "velocity-rms-1.-10Hz",
                "velocity-rms-010-1000Hz", "force-rms-10-1000Hz")) {
            assertTrue(Descriptors.named(wrong).isEmpty(), wrong);
        }
    }
}
