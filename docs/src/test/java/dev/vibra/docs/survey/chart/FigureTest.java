package dev.vibra.docs.survey.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bandmap.BandCriterion;
import dev.vibra.bandmap.BandMap;
import dev.vibra.quantity.Band;
import java.awt.GraphicsEnvironment;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Figures as pictures: size, inks, and that the marks stand where they should. */
class FigureTest {
    private static BufferedImage picture(Figure figure) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(figure.png()));
    }

    private static Figure spectrum(double lineAt) {
        double[] values = new double[1001];
        values[(int) lineAt] = 2;
        return SpectrumFigure.of(values, 1).withLanes(List.of(new Lane("found",
                List.of(new Lane.Mark(lineAt, "1×", true))))).draw("Velocity in mm/s rms", "test");
    }

    /** Centre of gravity of the pixels of one ink, in pixels from the left; NaN if there are none. */
    private static double centre(BufferedImage image, int ink) {
        double sum = 0;
        int count = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                if ((image.getRGB(x, y) & 0xffffff) == ink) {
                    sum += x;
                    count++;
                }
            }
        }
        return sum / count;
    }

    @Test
    void rendersHeadlessAtDoubleResolution() throws IOException {
        assertTrue(GraphicsEnvironment.isHeadless());
        BufferedImage image = picture(spectrum(500));
        assertEquals(1800, image.getWidth());
        assertEquals(2 * (270 + 24 + 4), image.getHeight());
    }

    @Test
    void marksStandOverTheirFrequency() throws IOException {
        double at250 = centre(picture(spectrum(250)), Look.MARK);
        double at500 = centre(picture(spectrum(500)), Look.MARK);
        double at750 = centre(picture(spectrum(750)), Look.MARK);
        assertEquals(at500 - at250, at750 - at500, 1, "equal distances in Hz are equal distances on paper");
        assertEquals(2.0 * (Look.WIDTH - Look.LEFT - Look.RIGHT) / 4, at500 - at250, 1, "a quarter of the axis");
    }

    /** 500 Hz is the middle of 400 Hz to 600 Hz as of 0 Hz to 1000 Hz; marks below and above are left out. */
    @Test
    void zoomedAxisBeginsWithItsRange() throws IOException {
        double[] values = new double[1001];
        values[500] = 2;
        SpectrumFigure zoomed = SpectrumFigure.of(values, 1).withLanes(List.of(new Lane("found", List.of(
                new Lane.Mark(300, "", true), new Lane.Mark(500, "", true), new Lane.Mark(700, "", true)))))
                .zoomedTo(400, 600);
        assertEquals(centre(picture(spectrum(500)), Look.MARK),
                centre(picture(zoomed.draw("Level in mm/s rms", "test")), Look.MARK), 4);
    }

    @Test
    void figureKnowsItsSize() throws IOException {
        BufferedImage image = picture(spectrum(500));
        assertEquals(image.getWidth(), spectrum(500).widthPixels());
        assertEquals(image.getHeight(), spectrum(500).heightPixels());
    }

    @Test
    void theSameInputGivesTheSameBytes() {
        assertArrayEquals(spectrum(300).png(), spectrum(300).png());
    }

    @Test
    void anOpenMarkHasNoFilledInk() throws IOException {
        Figure open = SpectrumFigure.of(new double[101], 1).withLanes(List.of(new Lane("open",
                List.of(new Lane.Mark(50, "", false))))).draw("Level in mm/s rms", "test");
        assertTrue(Double.isNaN(centre(picture(open), Look.MARK)));
    }

    @Test
    void severityMarkMovesWithItsValue() throws IOException {
        List<Double> limits = List.of(1.4, 2.8, 4.5);
        List<String> names = List.of("A", "B", "C", "D");
        double low = centre(picture(SeverityFigure.of(List.of(new SeverityFigure.Row("DE-H", 1.4, 0.1, "A/B")), limits,
                names, "Velocity in mm/s rms", "test")), Look.MARK);
        double high = centre(picture(SeverityFigure.of(List.of(new SeverityFigure.Row("DE-H", 2.8, 0.1, "B/C")), limits,
                names, "Velocity in mm/s rms", "test")), Look.MARK);
        assertTrue(high > low + 200, low + " " + high);
    }

    private static BandMap map(int darkest) {
        List<BandMap.Cell> cells = new ArrayList<>();
        for (int parts : new int[] {1, 2, 4}) {
            for (int i = 0; i < parts; i++) {
                cells.add(new BandMap.Cell(Band.of(8000.0 * i / parts, 8000.0 * (i + 1) / parts), parts,
                        parts == 4 && i == darkest ? 3 : 0));
            }
        }
        return new BandMap(BandCriterion.SPECTRAL_KURTOSIS, cells);
    }

    @Test
    void highestCellIsDarkestAndTheChosenBandIsFramedWhereItLies() throws IOException {
        double first = centre(picture(BandMapFigure.of(map(0), Band.of(4000, 8000), "test")), Look.TRACE);
        double last = centre(picture(BandMapFigure.of(map(3), Band.of(4000, 8000), "test")), Look.TRACE);
        double perHertz = 2.0 * (Look.WIDTH - Look.LEFT - Look.RIGHT) / 8000;
        // The key holds the darkest shade too, in both figures at the same place.
        assertTrue(last - first > 0.6 * 6000 * perHertz, first + " " + last);
        double low = centre(picture(BandMapFigure.of(map(0), Band.of(500, 2500), "test")), Look.MARK);
        double high = centre(picture(BandMapFigure.of(map(0), Band.of(5500, 7500), "test")), Look.MARK);
        assertTrue(high - low > 0.6 * 5000 * perHertz, low + " " + high);
    }

    @Test
    void mapOfOneValueIsDrawn() throws IOException {
        BandMap flat = new BandMap(BandCriterion.MEAN_NEGENTROPY, List.of(new BandMap.Cell(Band.of(0, 500), 1, 0.4)));
        assertEquals(1800, picture(BandMapFigure.of(flat, Band.of(0, 500), "flat")).getWidth());
    }

    @Test
    void waveformKeepsEachPeakOfALongRecording() {
        double[] values = new double[1_000_000];
        values[123_456] = 7;
        values[765_432] = -9;
        Decimation thinned = Decimation.of(values, 0, values.length, 1e-3, 500);
        assertEquals(1000, thinned.x().length);
        assertTrue(contains(thinned, 123.456, 7) && contains(thinned, 765.432, -9));
        for (int i = 1; i < thinned.x().length; i++) {
            assertTrue(thinned.x()[i] >= thinned.x()[i - 1], "in the order of time");
        }
    }

    private static boolean contains(Decimation trace, double x, double y) {
        for (int i = 0; i < trace.x().length; i++) {
            if (Math.abs(trace.x()[i] - x) < 1e-9 && trace.y()[i] == y) {
                return true;
            }
        }
        return false;
    }

    @Test
    void shortAndConstantRecordingsAreDrawn() throws IOException {
        assertEquals(1800, picture(WaveformFigure.of(new double[2], 1000, 0.2, "Acceleration in m/s²", "two"))
                .getWidth());
        assertEquals(480, picture(WaveformFigure.of(new double[4000], 1000, 0.2, "Acceleration in m/s²", "flat"))
                .getHeight());
    }

    @Test
    void manyColoursBecomeFewAndTheFrequentOnesStay() throws IOException {
        int[] pixels = manyColours();
        BufferedImage few = ImageIO.read(new ByteArrayInputStream(Png.of(200, 200, FewColours.of(pixels))));
        assertEquals(0xfff2f3f4, few.getRGB(10, 10));
        int[] drawn = few.getRGB(0, 0, 200, 200, null, 0, 200);
        long colours = Arrays.stream(drawn).distinct().count();
        assertTrue(colours <= 256 && colours > 100, "colours " + colours);
        assertArrayEquals(plainlyReduced(pixels), drawn, "what another writing of the same rule gives");
    }

    /** Half of the picture one grey, half of it noise. */
    private static int[] manyColours() {
        int[] pixels = new int[200 * 200];
        Random random = new Random(5);
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = i < 100 * 200 ? 0xf2f3f4 : random.nextInt(0x1000000);
        }
        return pixels;
    }

    /** The rule with maps and lists, pixel by pixel. */
    private static int[] plainlyReduced(int[] pixels) {
        Map<Integer, Integer> counts = new TreeMap<>();
        Arrays.stream(pixels).forEach(pixel -> counts.merge(pixel, 1, Integer::sum));
        List<Integer> byCount = new ArrayList<>(counts.keySet());
        byCount.sort(Comparator.comparing(counts::get).reversed());
        Set<Integer> chosen = new LinkedHashSet<>(byCount.subList(0, 16));
        Set<Integer> cells = new HashSet<>();
        byCount.stream().filter(colour -> cells.add(colour & 0xf0f0f0)).forEach(chosen::add);
        List<Integer> palette = chosen.stream().limit(256).toList();
        return Arrays.stream(pixels).map(pixel -> 0xff000000 | palette.stream().min(Comparator.comparingInt(colour ->
                squared(colour >> 16, pixel >> 16) + squared(colour >> 8, pixel >> 8) + squared(colour, pixel)))
                .orElseThrow()).toArray();
    }

    private static int squared(int a, int b) {
        int difference = (a & 0xff) - (b & 0xff);
        return difference * difference;
    }

    /** Read back by the image library of the JDK: rows as they are, from above, of one pixel, of one colour. */
    @Test
    void aPackedPictureIsReadAsItWas() throws IOException {
        for (int[] size : new int[][] {{1, 1}, {1, 7}, {7, 1}, {64, 48}}) {
            int[] pixels = new int[size[0] * size[1]];
            for (int i = 0; i < pixels.length; i++) {
                pixels[i] = i % size[0] % 3 == 0 ? 0x004f7f : i % 5 * 0x10101;
            }
            for (int[] one : new int[][] {pixels, new int[pixels.length]}) {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(Png.of(size[0], size[1],
                        FewColours.of(one))));
                assertArrayEquals(Arrays.stream(one).map(pixel -> 0xff000000 | pixel).toArray(),
                        image.getRGB(0, 0, size[0], size[1], null, 0, size[0]), size[0] + " x " + size[1]);
            }
        }
    }
}
