package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.evidence.Confidence;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every limit of the tables against the published values, and the behaviour on, just below and just above each. */
class LimitsTest {
    private static final CriterionTables TABLES = CriterionTables.shipped();
    private static final Set<String> GENERAL = Set.of("ISO 20816-3:2022", "ISO 10816-3:2009", "ISO 10816-1:1995");

    /** Criteria of the standards for machines in general, without vibration of the shaft. */
    private static List<Criterion> general() {
        return TABLES.criteria().stream().filter(criterion -> GENERAL.contains(criterion.standard())).toList();
    }

    /** One published row: standard, table, class, support, quantity, unit, limits. */
    record Row(List<String> cells) {
        String get(int column) {
            return cells.get(column);
        }
    }

    static List<Row> published() throws IOException {
        try (InputStream in = LimitsTest.class.getResourceAsStream("/reference/severity-limits.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#")).map(line -> new Row(List.of(line.split(";"
                    + " "))))
                    .collect(Collectors.toList());
        }
    }

    private static List<Criterion> criteriaOf(Row row) {
        return TABLES.criteria().stream()
                .filter(criterion -> criterion.standard().equals(row.get(0)) && criterion.clause().equals(row.get(1))
                        && criterion.groupLabel().equals(row.get(2))
                        && criterion.support().map(Support::toString).orElse("any").equals(row.get(3))
                        && criterion.quantity().toString().equals(row.get(4)))
                .collect(Collectors.toList());
    }

    @Test
    void tablesHoldThePublishedRowsAndNoOthers() throws IOException {
        List<String> published = published().stream().map(row -> String.join("; ", row.cells().subList(0, 5)))
                .collect(Collectors.toList());
        Set<String> shipped = general().stream()
                .map(criterion -> String.join("; ", criterion.standard(), criterion.clause(), criterion.groupLabel(),
                        criterion.support().map(Support::toString).orElse("any"), criterion.quantity().toString()))
                .collect(Collectors.toSet());
        assertEquals(20, published.size());
        assertEquals(Set.copyOf(published), shipped);
        assertEquals(16 * 2 + 4, general().size(), "two bands for part 3, one for part 1");
    }

    @ParameterizedTest
    @MethodSource("published")
    void limitsAreThePublishedOnes(Row row) {
        List<Double> expected = row.cells().stream().skip(6).map(Double::valueOf).collect(Collectors.toList());
        for (Criterion criterion : criteriaOf(row)) {
            assertEquals(row.get(5), criterion.unit().plainSymbol());
            assertEquals(expected, criterion.limits());
            assertEquals(Detector.RMS, criterion.detector());
            assertEquals(1000, criterion.band().highestHertz());
        }
    }

    @ParameterizedTest
    @MethodSource("published")
    void onALimitTheBetterZoneHoldsAndJustAboveTheWorse(Row row) {
        for (Criterion criterion : criteriaOf(row)) {
            for (int i = 0; i < 3; i++) {
                double limit = Double.parseDouble(row.get(6 + i));
                Unit unit = Unit.ofSymbol(row.get(5));
                Level on = Level.of(limit, unit, Detector.RMS).within(criterion.band());
                Zone better = Zone.values()[i];
                Zone worse = Zone.values()[i + 1];
                assertEquals(better, criterion.zoneOf(on), on::toString);
                assertEquals(better, criterion.zoneOf(moved(on, Math.nextDown(on.si()))), on::toString);
                assertEquals(worse, criterion.zoneOf(moved(on, Math.nextUp(on.si()))), on::toString);
                assertEquals(better, criterion.zoneOf(moved(on, on.si() * 0.999)));
                assertEquals(worse, criterion.zoneOf(moved(on, on.si() * 1.001)));
            }
            assertEquals(Zone.A, criterion.zoneOf(moved(criterion.levelIn(Zone.A, 1), 0)));
            assertEquals(Zone.D, criterion.zoneOf(moved(criterion.levelIn(Zone.A, 1), 1e6)));
        }
    }

    private static Level moved(Level level, double si) {
        return Level.ofSi(si, level.quantity(), level.detector()).within(level.band().orElseThrow());
    }

    /** Displacement = velocity / (2 pi f): 12.5 Hz for group 1, 10 Hz for group 2; the table rounds to within 3 %. */
    @Test
    void displacementLimitsAreTheVelocityLimitsAtOneFrequency() {
        int compared = 0;
        for (Criterion displacement : ofQuantity(Quantity.DISPLACEMENT)) {
            Criterion velocity = ofQuantity(Quantity.VELOCITY).stream()
                    .filter(other -> other.source().equals(displacement.source())).findFirst().orElseThrow();
            double hertz = displacement.group().equals("1") ? 12.5 : 10;
            for (int i = 0; i < 3; i++) {
                double micrometres = Level.of(velocity.limits().get(i), Unit.MM_PER_S, Detector.RMS)
                        .sineAs(Quantity.DISPLACEMENT, Detector.RMS, hertz).in(Unit.UM);
                assertEquals(micrometres, displacement.limits().get(i), 0.03 * micrometres, displacement.toString());
                compared++;
            }
            assertEquals(Confidence.SECONDARY, displacement.confidence());
            assertEquals(Confidence.FIRM, velocity.confidence());
        }
        assertEquals(2 * 2 * 4 * 3, compared);
    }

    private static List<Criterion> ofQuantity(Quantity quantity) {
        return general().stream().filter(criterion -> criterion.quantity() == quantity).collect(Collectors.toList());
    }

    /** The severity ladder of ISO 2372:1974: 0.28 mm/s and upwards by 4 dB, printed rounded. */
    @Test
    void classLimitsAreRungsOfTheLadder() {
        List<Double> ladder = List.of(0.28, 0.45, 0.71, 1.12, 1.8, 2.8, 4.5, 7.1, 11.2, 18.0, 28.0, 45.0);
        List<Double> limits = new ArrayList<>();
        TABLES.criteria().stream().filter(criterion -> criterion.standard().equals("ISO 10816-1:1995"))
                .forEach(criterion -> limits.addAll(criterion.limits()));
        assertEquals(12, limits.size());
        assertTrue(ladder.containsAll(limits), limits::toString);
    }

    @Test
    void levelInTellsWhatIsWrong() {
        Criterion criterion = TABLES.criteria().get(0);
        assertEquals("fraction must be above 0 and at most 1: NaN",
                assertThrows(IllegalArgumentException.class, () -> criterion.levelIn(Zone.B, Double.NaN)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> criterion.levelIn(Zone.B, 0));
        assertThrows(IllegalArgumentException.class, () -> criterion.levelIn(Zone.B, 1.001));
    }

    @Test
    void levelOfOtherQuantityDetectorOrBandIsRefused() {
        Criterion criterion = TABLES.choose(Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID)).criteria().get(0);
        Band band = Band.of(10, 1000);
        assertEquals("level must measure velocity for ISO 20816-3:2022 group 2: displacement",
                message(criterion, Level.of(3, Unit.UM, Detector.RMS).within(band)));
        assertEquals("level must have the detector rms for ISO 20816-3:2022 group 2: 0-peak",
                message(criterion, Level.of(3, Unit.MM_PER_S, Detector.ZERO_TO_PEAK).within(band)));
        assertEquals("level must be limited to the band 10\u20131000 Hz for ISO 20816-3:2022 group 2: 2\u20131000 Hz",
                message(criterion, Level.of(3, Unit.MM_PER_S, Detector.RMS).within(Band.of(2, 1000))));
        assertEquals("level must be limited to the band 10\u20131000 Hz for ISO 20816-3:2022 group 2: no band stated",
                message(criterion, Level.of(3, Unit.MM_PER_S, Detector.RMS)));
    }

    private static String message(Criterion criterion, Level level) {
        return assertThrows(IllegalArgumentException.class, () -> criterion.zoneOf(level)).getMessage();
    }

    @Test
    void criterionPrintsItsSource() {
        List<String> lines = TABLES.choose(Machine.of(MachineKind.BLOWER).withRatedPowerKilowatts(37)
                .withSupport(Support.RIGID)).criteria().stream().map(Criterion::toString).collect(Collectors.toList());
        assertEquals(List.of("velocity 1.4 / 2.8 / 4.5 mm/s rms (10\u20131000 Hz); ISO 20816-3:2022 Table A.2, group 2,"
                + " rigid",
                "displacement 22 / 45 / 71 µm rms (10\u20131000 Hz); ISO 20816-3:2022 Table A.2, group 2, rigid"
                        + " (secondary source, verify)"), lines);
    }
}
