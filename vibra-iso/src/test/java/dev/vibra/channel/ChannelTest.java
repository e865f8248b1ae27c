package dev.vibra.channel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.alarm.AlarmRule;
import dev.vibra.alarm.AlarmState;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.state.StreamState;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.transform.PlanCache;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ChannelTest {
    private static final int RATE = 5120;
    private static final Band BAND = Band.of(10, 1000);
    private static final ChannelSettings SETTINGS = ChannelSettings.named("FE-H").withRule(rule(Quantity.VELOCITY, 3))
            .withSpectrum(SpectrumSettings.withDefaults()).withEnvelope(Band.of(500, 1500), 2).withSpectraEvery(3);

    private static AlarmRule rule(Quantity quantity, double limit) {
        Level alarm = quantity == Quantity.VELOCITY ? Level.of(limit, Unit.MM_PER_S, Detector.RMS).within(BAND)
                : Level.of(limit, Unit.UM, Detector.PEAK_TO_PEAK).within(BAND);
        return AlarmRule.of(alarm).withPersistence(2, 2);
    }

    /** A shaft that turns at 25 Hz with so many mm/s rms, in a little noise. */
    private static double[] machine(double millimetresPerSecond, int seconds) {
        double peak = millimetresPerSecond * 1e-3 * Math.sqrt(2) * 2 * Math.PI * 25;
        return Synthesis.silence(Quantity.ACCELERATION, RATE, seconds * RATE).tone(peak, 25, 0).noise(0.002, 3).waveform()
                .samples();
    }

    @Test
    void aReadingEachSecondAndAnAlarmAfterTwo() {
        Channel channel = SETTINGS.at(RATE);
        Diary diary = new Diary();
        channel.push(machine(2, 4), 0, 4 * RATE, diary);
        assertEquals(4, diary.of("reading").size());
        assertEquals(List.of(), diary.of("alarm"));
        channel.push(machine(4, 4), 0, 4 * RATE, diary);
        assertEquals(List.of("alarm 0 NORMAL ALARM"), diary.of("alarm"));
        assertEquals(AlarmState.ALARM, channel.state());
        assertEquals(List.of("spectra 5", "spectra 5"), diary.of("spectra").stream().map(s -> s.substring(0, 9)).toList());
        channel.push(machine(1, 3), 0, 3 * RATE, diary);
        assertEquals(AlarmState.NORMAL, channel.state(0));
        assertTrue(diary.lines.indexOf("alarm 0 NORMAL ALARM") < diary.lines.size() - 1);
        // The chain passes 25 Hz with 0.99796 by its nominal response; the noise adds less.
        double level = Double.parseDouble(diary.of("reading").get(2).split(" ")[4]);
        assertEquals(2e-3 * 0.99796, level, 5e-6);
    }

    @Test
    void filtersThatSettleMakeNoReading() {
        Channel channel = ChannelSettings.named("slow").withLevels(dev.vibra.meter.LevelMeter.withDefaults()
                .withBand(Band.of(2, 1000))).at(RATE);
        Diary diary = new Diary();
        channel.push(40, machine(2, 4), 0, 4 * RATE, diary);
        // Four periods of 2 Hz and 33 taps: nothing for 2 s, then 0.99 of a second.
        assertEquals(List.of("reading 40 INCOMPLETE 0.0 -", "reading 5160 INCOMPLETE 0.0 -"), diary.of("reading")
                .subList(0, 2));
        assertTrue(diary.of("reading").get(2).startsWith("reading 10280 SOUND 0.99"));
    }

    /** The second half of a second lost, with the next two and a bit: readings keep to their seconds. */
    @Test
    void aGapIsAnEventAndMovesNoInterval() {
        double[] x = machine(4, 8);
        Channel channel = SETTINGS.at(RATE);
        Diary diary = new Diary();
        channel.push(0, x, 0, RATE + 2000, diary);
        int next = 4 * RATE + 1000;
        channel.push(next, x, next, x.length - next, diary);
        assertEquals(List.of("GAP " + (next - RATE - 2000)), diary.of("GAP"));
        assertEquals(List.of("reading 0 SOUND", "reading 5120 INCOMPLETE", "reading 20480 INCOMPLETE",
                "reading 25600 SOUND", "reading 30720 SOUND", "reading 35840 SOUND"), diary.of("reading").stream()
                .map(line -> line.substring(0, line.indexOf(' ', line.indexOf(' ', 9) + 1))).toList());
        // Sound readings: the first, then three more; two in a row raise it.
        assertEquals(1, diary.of("alarm").size());
    }

    @Test
    void aDeadSensorIsNotAHealthyMachine() {
        Channel channel = SETTINGS.at(RATE);
        Diary diary = new Diary();
        channel.push(machine(4, 4), 0, 4 * RATE, diary);
        assertEquals(AlarmState.ALARM, channel.state());
        channel.push(new double[20 * RATE], 0, 20 * RATE, diary);
        assertEquals(AlarmState.ALARM, channel.state());
        assertTrue(diary.of("reading").get(10).contains("NO_SIGNAL"));
    }

    @Test
    void anOverloadIsToldAndJudgesNothing() {
        Channel channel = SETTINGS.withFullScale(5).at(RATE);
        Diary diary = new Diary();
        double[] x = machine(2, 4);
        for (int i = RATE; i < 4 * RATE; i++) {
            x[i] = Math.max(-5, Math.min(5, 100 * x[i]));
        }
        channel.push(x, 0, x.length, diary);
        assertTrue(diary.of("reading").get(0).contains("SOUND"));
        assertTrue(diary.of("reading").get(1).contains("OVERLOADED"));
        assertEquals(AlarmState.NORMAL, channel.state());
    }

    @Test
    void aRuleBringsItsLevelAlong() {
        ChannelSettings settings = SETTINGS.withRule(rule(Quantity.DISPLACEMENT, 20));
        Channel channel = settings.at(RATE);
        assertTrue(channel.levels().measures(Quantity.DISPLACEMENT, BAND));
        // 2 mm/s rms at 25 Hz: 2·√2·2e-3/(2π·25) = 36 µm peak-to-peak.
        channel.push(machine(2, 4), 0, 4 * RATE, new Diary());
        assertEquals(AlarmState.NORMAL, channel.state(0));
        assertEquals(AlarmState.ALARM, channel.state(1));
        assertEquals(AlarmState.ALARM, channel.state());
        assertEquals("rule must be of a level that is measured, acceleration or one of [velocity (10\u20131000 Hz)]: "
                + "3.00 mm/s rms", assertThrows(IllegalArgumentException.class, () -> SETTINGS.withRule(AlarmRule.of(
                Level.of(3, Unit.MM_PER_S, Detector.RMS)))).getMessage());
        assertEquals("spectraSeconds must hold a block of Hann, 0.1 Hz, overlap 0.5, rms, 51200.0 samples: 15360",
                assertThrows(IllegalArgumentException.class, () -> SETTINGS.withSpectrum(SpectrumSettings.withDefaults()
                        .withResolution(0.1)).at(RATE)).getMessage());
        assertThrows(IllegalArgumentException.class, () -> channel.state(2));
        assertThrows(IllegalArgumentException.class, () -> channel.spectrum(-1));
        assertEquals("FE-H: ALARM, reading INCOMPLETE", channel.toString());
    }

    /** Blocks of any size, lost and repeated ones, a stop at any block: the same diary to the last digit. */
    @Property(tries = 25)
    void blocksAndStopsChangeNothing(@ForAll long seed, @ForAll @IntRange(min = 0, max = 30_000) int lost,
            @ForAll @IntRange(min = 1, max = 40_000) int missing) {
        double[] x = machine(4, 16);
        List<String> expected = diary(SETTINGS.at(RATE), x, lost, missing, null);
        assertEquals(expected, diary(SETTINGS.at(RATE), x, lost, missing, new Random(seed)));
    }

    private static List<String> diary(Channel first, double[] x, int lost, int missing, Random random) {
        Diary diary = new Diary();
        Channel channel = first;
        int from = 0;
        while (from < x.length) {
            int end = from < lost ? lost : x.length;
            int length = random == null ? end - from : Math.min(end - from, random.nextInt(9000));
            channel.push(from, x, from, length, diary);
            from += length;
            if (random != null && random.nextInt(4) == 0) {
                channel = StreamState.of(channel.recipe(), channel.snapshot().numbers()).resume();
            }
            if (from == lost) {
                from += missing;
            }
        }
        return diary.lines;
    }

    /** Two channels served in turn by one thread: the plans they share keep nothing of one for the other. */
    @Test
    void sharedPlansChangeNothing() {
        double[] x = machine(4, 7);
        double[] y = machine(1, 7);
        PlanCache plans = PlanCache.ofSize(8);
        Channel[] channels = {SETTINGS.at(RATE, plans), SETTINGS.at(RATE, plans), SETTINGS.at(RATE), SETTINGS.at(RATE)};
        Diary[] diaries = {new Diary(), new Diary(), new Diary(), new Diary()};
        for (int from = 0; from < x.length; from += 896) {
            for (int k = 0; k < channels.length; k++) {
                channels[k].push(k % 2 == 0 ? x : y, from, Math.min(896, x.length - from), diaries[k]);
            }
        }
        assertEquals(diaries[2].lines, diaries[0].lines);
        assertEquals(diaries[3].lines, diaries[1].lines);
        assertEquals(2, diaries[0].of("spectra").size());
        assertArrayEquals(channels[3].snapshot().numbers(), channels[1].snapshot().numbers());
        assertThrows(NullPointerException.class, () -> SETTINGS.at(RATE, null));
    }

    @Test
    void blocksAllocateNothing() {
        double[] x = machine(4, 3);
        Channel channel = SETTINGS.at(RATE);
        ChannelListener quiet = new ChannelListener() {};
        double[] store = new double[channel.stateLength()];
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = 0;
        for (int i = 0; i < 100; i++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            channel.push(x, 0, x.length, quiet);
            channel.snapshotTo(store, 0);
            allocated = threads.getCurrentThreadAllocatedBytes() - before;
        }
        assertTrue(allocated < 512, "bytes allocated for three seconds and a checkpoint: " + allocated);
    }
}
