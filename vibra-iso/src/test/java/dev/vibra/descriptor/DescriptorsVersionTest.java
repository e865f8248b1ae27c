package dev.vibra.descriptor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.quantity.Quantity;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Own output, so that stored numbers aren't mixed with others of the same name: whoever changes how a number is made
 * raises {@link Descriptors#VERSION} and renews it here. That the numbers are right is tested elsewhere.
 */
class DescriptorsVersionTest {
    /** JDKs and processors differ in the last bits of sines and square roots. */
    private static final double SHARE = 1e-9;

    private static final Waveform RECORDING = Synthesis.silence(Quantity.ACCELERATION, 6400, 25_600).noise(0.2, 7)
            .tone(0.8, 24.75, 0.3).tone(0.4, 49.5, 1.1).waveform();

    @Test
    void numbersOfThisVersion() {
        assertEquals(1, Descriptors.VERSION);
        Map<String, Double> expected = new LinkedHashMap<>();
        expected.put("acceleration-rms", 0.6617991689064998);
        expected.put("acceleration-peak", 1.9515041847388517);
        expected.put("crest-factor", 2.948786091652774);
        expected.put("kurtosis", 2.161477542200977);
        expected.put("skewness", 0.5768557861589889);
        expected.put("velocity-rms-10-1000Hz", 3.738042072619311);
        expected.put("displacement-peak-to-peak-10-1000Hz", 76.67980095880118);
        expected.put("displacement-rms-10-1000Hz", 23.56984809528162);
        expected.put("velocity-rms-1x", 3.629937304631203);
        expected.put("velocity-rms-2x", 0.9099321832500302);
        expected.put("velocity-1x-amplitude", 5.129652720646888);
        expected.put("velocity-1x-lag", 343.96059959814875);
        ShaftAngle angle = ShaftAngle.of(
                PulseTrain.of(IntStream.rangeClosed(0, 98).mapToDouble(turn -> 0.01 + turn / 24.75).toArray()), 1);
        Map<String, Double> values = Descriptors.standard().withTachometer().of(Signals.of(RECORDING).at(angle)).values();
        assertEquals(expected.keySet(), values.keySet());
        expected.forEach((name, value) -> assertEquals(value, values.get(name), SHARE * Math.abs(value), name));
    }
}
