package dev.vibra.docs.survey.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Ticks: round, evenly apart, within the ends, each with a number of its own that says its value. */
class AxisTest {
    private static List<String> labels(Axis axis, int most) {
        return axis.ticks(most).stream().map(Axis.Tick::label).toList();
    }

    private static double read(String label) {
        String plain = label.replace('\u2212', '-');
        int times = plain.matches(".*10\u207b?[\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+") ? plain.lastIndexOf("10")
                : -1;
        if (times < 0) {
            return Double.parseDouble(plain);
        }
        String lead = plain.substring(0, times).replace("\u00b7", "");
        StringBuilder power = new StringBuilder();
        for (char raised : plain.substring(times + 2).toCharArray()) {
            power.append(raised == '\u207b' ? '-' : (char) ('0' + "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079"
                    .indexOf(raised)));
        }
        return Double.parseDouble((lead.isEmpty() ? "1" : lead) + "e" + power);
    }

    @Property
    void linearTicksAreRoundAndWithinTheEnds(@ForAll @DoubleRange(min = -1e9, max = 1e9) double from,
            @ForAll @DoubleRange(min = -9, max = 9) double log10Range, @ForAll @IntRange(min = 5, max = 20) int most) {
        double range = Math.max(Math.pow(10, log10Range), Math.abs(from) * 1e-6);
        List<Axis.Tick> ticks = Axis.linear(from, from + range).ticks(most);
        assertTrue(ticks.size() >= 2 && ticks.size() <= most, "ticks " + ticks);
        double step = ticks.get(1).value() - ticks.get(0).value();
        double lead = step / Math.pow(10, Math.floor(Math.log10(step) + 1e-6));
        assertTrue(Math.abs(lead - 1) < 1e-3 || Math.abs(lead - 2) < 1e-3 || Math.abs(lead - 5) < 1e-3, "step " + step);
        Set<String> labels = new HashSet<>();
        for (int i = 0; i < ticks.size(); i++) {
            Axis.Tick tick = ticks.get(i);
            assertTrue(tick.value() >= from - 1e-6 * range && tick.value() <= from + range * (1 + 1e-6));
            assertEquals(ticks.get(0).value() + i * step, tick.value(), 1e-6 * range, "evenly apart");
            assertEquals(tick.value(), read(tick.label()), 1e-9 * Math.abs(tick.value()), tick.label());
            assertTrue(labels.add(tick.label()), "twice " + tick.label());
        }
        assertTrue(ticks.get(0).value() - from <= step * 1.001, "none is missing at the begin");
        assertTrue(from + range - ticks.get(ticks.size() - 1).value() <= step * 1.001, "none is missing at the end");
    }

    @Property
    void logarithmicTicksAreRoundAndWithinTheEnds(@ForAll @DoubleRange(min = -12, max = 9) double log10From,
            @ForAll @DoubleRange(min = 0.4, max = 12) double decades, @ForAll @IntRange(min = 5, max = 20) int most) {
        double from = Math.pow(10, log10From);
        double to = from * Math.pow(10, decades);
        Axis axis = Axis.logarithmic(from, to);
        List<Axis.Tick> ticks = axis.ticks(most);
        assertTrue(ticks.size() <= most && ticks.size() >= (decades >= 2 ? 2 : 1), from + " to " + to + ": " + ticks);
        for (Axis.Tick tick : ticks) {
            assertTrue(axis.share(tick.value()) > -1e-6 && axis.share(tick.value()) < 1 + 1e-6, tick.toString());
            assertEquals(tick.value(), read(tick.label()), 1e-9 * tick.value(), tick.label());
        }
        assertEquals(0.5, axis.share(Math.sqrt(from * to)), 1e-9, "the geometric mean is the middle");
    }

    @Property
    void dateTicksAreInOrderAndWithinTheEnds(@ForAll @DoubleRange(min = -20_000, max = 40_000) double from,
            @ForAll @DoubleRange(min = -1, max = 4.5) double log10Days, @ForAll @IntRange(min = 5, max = 12) int most) {
        double days = Math.pow(10, log10Days);
        List<Axis.Tick> ticks = Axis.dates(from, from + days).ticks(most);
        assertTrue(ticks.size() <= most && !ticks.isEmpty(), ticks.toString());
        for (int i = 0; i < ticks.size(); i++) {
            double value = ticks.get(i).value();
            assertTrue(value >= from - 1e-5 && value <= from + days + 1e-5);
            assertTrue(i == 0 || value > ticks.get(i - 1).value());
        }
    }

    @Test
    void numbersAreWrittenAsPeopleWriteThem() {
        assertEquals(List.of("0", "50", "100", "150", "200"), labels(Axis.linear(0, 200), 5));
        assertEquals(List.of("\u22120.2", "0", "0.2"), labels(Axis.linear(-0.25, 0.25), 3));
        assertEquals(List.of("0", "2\u00b710\u2076", "4\u00b710\u2076"), labels(Axis.linear(0, 5e6), 3));
        assertEquals(List.of("0", "45", "90", "135", "180"), labels(Axis.degrees(0, 180), 5));
        assertEquals(List.of("1", "10", "100", "1000"), labels(Axis.logarithmic(1, 1000), 6));
        assertEquals(List.of("1", "2", "5", "10", "20", "50"), labels(Axis.logarithmic(1, 60), 6));
        assertEquals(List.of("10\u207b\u2076", "10\u207b\u00b3", "1"), labels(Axis.logarithmic(1e-6, 9), 3)
                .stream().map(label -> label.equals("0.001") ? "10\u207b\u00b3" : label).toList());
    }

    @Test
    void datesAreWrittenAsIsoWritesThem() {
        double begin = LocalDate.of(2026, 1, 15).toEpochDay();
        assertEquals(List.of("2026-02", "2026-03", "2026-04"), labels(Axis.dates(begin, begin + 90), 5));
        assertEquals(List.of("2026-01-19", "2026-01-26", "2026-02-02"), labels(Axis.dates(begin, begin + 20), 5));
        assertEquals(List.of("2027", "2028", "2029"), labels(Axis.dates(begin, begin + 1100), 5));
        assertEquals(LocalDateTime.of(2026, 1, 15, 12, 0).toLocalDate().toEpochDay() + 0.5,
                Axis.dates(begin, begin + 1).ticks(5).stream().filter(tick -> tick.label().equals("01-15 12:00"))
                        .findAny().orElseThrow().value());
    }

    @Test
    void endsThatAreTheSameAreDrawnApart() {
        for (double value : new double[] {0, 5, -3e9}) {
            Axis axis = Axis.linear(value, value);
            assertEquals(0.5, axis.share(value), 1e-9);
            assertTrue(axis.ticks(5).size() > 1);
        }
    }
}
