package dev.vibra.octave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.filter.SectionCascade;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.Synthesis;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OctaveBandsTest {
    /** IEC 61260-1:2014, exact mid-band frequencies by base ten and their nominal names. */
    @Test
    void frequenciesAreThoseOfTheStandard() {
        List<OctaveBand> octaves = OctaveBand.within(1, Band.of(7.9, 8000));
        double[] exact = {7.943, 15.849, 31.623, 63.096, 125.89, 251.19, 501.19, 1000, 1995.3, 3981.1, 7943.3};
        double[] nominal = {8, 16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000};
        assertEquals(exact.length, octaves.size());
        for (int i = 0; i < exact.length; i++) {
            assertEquals(exact[i], octaves.get(i).midbandHertz(), 5e-5 * exact[i]);
            assertEquals(nominal[i], octaves.get(i).nominalHertz(), 1e-9);
        }
        List<OctaveBand> thirds = OctaveBand.within(3, Band.of(1000, 7950));
        double[] exactThirds = {1, 1.2589, 1.5849, 1.9953, 2.5119, 3.1623, 3.9811, 5.0119, 6.3096, 7.9433};
        double[] names = {1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000};
        for (int i = 0; i < 10; i++) {
            assertEquals(1000 * exactThirds[i], thirds.get(i).midbandHertz(), 0.05);
            assertEquals(names[i], thirds.get(i).nominalHertz(), 1e-9);
        }
        assertEquals("1/3 octave 31.5 Hz", OctaveBand.within(3, Band.of(31, 32)).get(0).toString());
        // Even fractions have no band at 1000 Hz: the first above lies half a step on.
        assertEquals(1000 * Math.pow(10, 0.3 / 4), new OctaveBand(2, 0).midbandHertz(), 1e-9);
    }

    /**
     * Class 1 limits of IEC 61260-1:2014 on the relative attenuation of a one-third-octave filter, dB, by the
     * periodic-test table of IEC 61260-3:2016 (secondary sources; the two values at the band edge from memory,
     * unverified).
     */
    @ParameterizedTest
    @CsvSource({"1.00000, -0.4, 0.4", "1.02667, -0.4, 0.5", "1.05575, -0.4, 0.7", "1.08746, -0.4, 1.4",
        "1.12201, -0.4, 5.3", "1.12203, 1.6, 999", "1.29437, 16.6, 999", "1.88173, 40.5, 999", "3.05365, 60, 999",
        "5.39195, 70, 999"})
    void thirdOctaveFiltersKeepClass1(double ratio, double lowest, double highest) {
        for (double rate : new double[] {25_600, 51_200, 102_400}) {
            for (OctaveBand band : OctaveBand.within(3, Band.of(10, 0.3 * rate))) {
                SectionCascade filter = OctaveBands.filter(band, rate);
                check(filter, band.midbandHertz() * ratio, rate, lowest, highest);
                check(filter, band.midbandHertz() / ratio, rate, lowest, highest);
            }
        }
    }

    private static void check(SectionCascade filter, double hertz, double rate, double lowest, double highest) {
        if (hertz < rate / 2) {
            double attenuation = -20 * Math.log10(filter.gain(hertz, rate));
            assertTrue(attenuation >= lowest && attenuation <= highest, hertz + " Hz at " + rate + ": " + attenuation);
        }
    }

    @Test
    void levelsOfATone() {
        Waveform wave = Synthesis.silence(Quantity.ACCELERATION, 12_800, 51_200).tone(2, 1000, 0).waveform();
        Map<OctaveBand, Level> levels = OctaveBands.levels(wave, 3, Band.of(99, 2600));
        assertEquals(15, levels.size());
        levels.forEach((band, level) -> assertEquals(band.index() == 0 ? 2 / Math.sqrt(2) : 0, level.si(),
                Math.abs(band.index()) <= 1 ? 0.2 : 0.01, band.toString()));
        assertEquals(2 / Math.sqrt(2), levels.get(new OctaveBand(3, 0)).si(), 1e-3);
    }

    @Test
    void badArgumentsAreNamed() {
        assertThrows(IllegalArgumentException.class, () -> new OctaveBand(0, 1));
        assertThrows(IllegalArgumentException.class, () -> OctaveBand.within(3, Band.of(0, 10)));
        assertThrows(IllegalArgumentException.class, () -> OctaveBands.filter(new OctaveBand(3, 0), 2500));
        Waveform brief = Synthesis.silence(Quantity.ACCELERATION, 12_800, 1280).tone(1, 100, 0).waveform();
        assertThrows(IllegalArgumentException.class, () -> OctaveBands.levels(brief, 3, Band.of(10, 20)));
    }
}
