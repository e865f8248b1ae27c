package dev.vibra.docs.survey.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Figures of run-ups: small, without a number that is none, drawn whatever the values are. */
class RunFigureTest {
    private static final double NONE = Double.NaN;

    private static SpeedCurve curve(double... lags) {
        double[] speeds = new double[lags.length];
        double[] levels = new double[lags.length];
        Arrays.setAll(speeds, i -> 300 + 100 * i);
        Arrays.setAll(levels, i -> 1.0 + i);
        return new SpeedCurve("1\u00d7", speeds, levels, lags);
    }

    private static void assertSound(Figure figure, int most) {
        String svg = figure.svg();
        assertFalse(svg.contains("NaN") || svg.contains("Infinity"), svg);
        assertTrue(svg.length() < most, svg.length() + " bytes");
        assertTrue(figure.png().length > 2000);
    }

    @Test
    void lagsGoOnAcrossAFullTurn() {
        assertArrayEquals(new double[] {350, 370, NONE, 400}, curve(350, 10, NONE, 40).goingOn());
        assertArrayEquals(new double[] {370, 350}, curve(10, 350).goingOn());
        assertArrayEquals(new double[] {NONE, NONE}, curve(NONE, NONE).goingOn());
    }

    @Test
    void levelsThatNoiseHidesAreLeftOut() {
        assertArrayEquals(new double[] {NONE, 2}, curve(NONE, 20).standing().levels());
        assertEquals(2, curve(NONE, 20).standing().most());
        assertThrows(IllegalArgumentException.class, () -> new SpeedCurve("x", new double[2], new double[1],
                new double[2]));
    }

    @Test
    void bodeAndPolarAreDrawnWhateverIsKnown() {
        for (SpeedCurve curve : List.of(curve(10, 60, 120, 170), curve(350, 10, NONE, 40), curve(NONE, NONE),
                curve(5), new SpeedCurve("2", new double[] {100, 200}, new double[2], new double[2]))) {
            assertSound(BodeFigure.of(curve, List.of(new BodeFigure.Mark(450, "450 r/min"), new BodeFigure.Mark(9000,
                    "beyond")), new BodeFigure.Titles("Speed", "Level", "Lag"), "d"), 6000);
            assertSound(SpeedPolarFigure.of(List.of(curve.standing(), curve), List.of(300.0, 500.0),
                    new SpeedPolarFigure.Titles("mm/s", "rotation", "Speed", "Level"), "d"), 9000);
        }
    }

    /** Noise has no lines to show; a line that follows the shaft shows at each speed. */
    @Test
    void cascadeLeavesNoiseOut() {
        Random random = new Random(3);
        double[] speeds = new double[21];
        double[][] noise = new double[21][500];
        double[][] lines = new double[21][500];
        for (int s = 0; s < 21; s++) {
            speeds[s] = 300 + 120 * s;
            for (int k = 0; k < 500; k++) {
                noise[s][k] = Math.hypot(random.nextGaussian(), random.nextGaussian());
                lines[s][k] = noise[s][k] + (k == 10 + 4 * s ? 100 : 0);
            }
        }
        String empty = cascade(speeds, noise).svg();
        String following = cascade(speeds, lines).svg();
        assertTrue(following.length() > empty.length() + 21 * 8, following.length() + " and " + empty.length());
        assertSound(cascade(speeds, lines), 8000);
        assertSound(cascade(speeds, new double[21][500]), 8000);
    }

    private static Figure cascade(double[] speeds, double[][] spectra) {
        return CascadeFigure.of(speeds, spectra, 0.5, 200, List.of(1.0, 2.0, 10.0), "Frequency", "Speed", "20 dB", "d");
    }

    @Test
    void orbitsAndCentreLineAreDrawn() {
        double[] rights = new double[64];
        double[] ups = new double[64];
        Arrays.setAll(rights, i -> 30 * Math.cos(i * Math.PI / 8));
        Arrays.setAll(ups, i -> 10 * Math.sin(i * Math.PI / 8));
        OrbitFigure.Path path = new OrbitFigure.Path("1500 r/min", "with the shaft", rights, ups, 16, 30, 0, 10, 90);
        assertSound(OrbitFigure.of(List.of(path, path, path, path, path), "Right", "Up", List.of("path", "ellipse",
                "mark"), "d"), 16_000);
        OrbitFigure.Path still = new OrbitFigure.Path("0", "", new double[16], new double[16], 16, 0, 0, 0, 0);
        assertSound(OrbitFigure.of(List.of(still), "Right", "Up", List.of("path", "ellipse", "mark"), "d"), 8000);
        assertSound(CentreLineFigure.of(new CentreLineFigure.Way(new double[] {300, 600}, new double[2], new double[2],
                List.of(300.0), "Right", "Up"), new CentreLineFigure.TwoSided(new double[5], 1, 2, "Frequency",
                "Radius"), "d"), 6000);
    }
}
