package dev.vibra.bearing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.envelope.EnvelopePlan;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The plan of the core, one band at a time, is the oracle: each value is the same double. */
class BandPowersTest {
    private static final double RATE = 1000;

    private static Waveform noise(int length) {
        return Waveform.ofSi(Quantity.ACCELERATION, RATE, new Random(length).doubles(length, -1, 1).toArray());
    }

    @Test
    void allBandsEqualThePlanOfOneBand() {
        List<Band> bands = List.of(Band.of(0, 500), Band.of(0, 100), Band.of(250, 500), Band.of(125, 250),
                Band.of(123.4, 234.5));
        for (int length : new int[] {64, 100, 101, 997, 1000, 4096, 5000}) {
            Waveform wave = noise(length);
            BandPowers powers = new BandPowers(wave);
            for (Band band : bands) {
                EnvelopePlan plan = EnvelopePlan.squared(length, RATE, band);
                double[] expected = plan.process(wave.samples(), 0, new double[plan.outputLength()]);
                assertArrayEquals(expected, powers.of(band), () -> length + " samples, " + band);
                assertEquals(plan.outputSampleRateHertz(), powers.rateHertz(plan.outputLength()));
            }
        }
    }

    @Test
    void whatThePlanRefusesIsRefusedInTheSameWords() {
        Waveform wave = noise(100);
        for (Band band : List.of(Band.of(10, 501), Band.of(101, 109))) {
            assertEquals(message(() -> EnvelopePlan.squared(100, RATE, band)),
                    message(() -> new BandPowers(wave).of(band)));
        }
        assertEquals(message(() -> EnvelopePlan.squared(3, RATE, Band.of(10, 500))),
                message(() -> new BandPowers(noise(3))));
    }

    private static String message(Runnable call) {
        return assertThrows(IllegalArgumentException.class, call::run).getMessage();
    }
}
