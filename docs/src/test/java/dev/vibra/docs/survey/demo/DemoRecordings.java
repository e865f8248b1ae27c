package dev.vibra.docs.survey.demo;

import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Makes the recordings of the demonstration machine. Put in on purpose:
 *
 * <ul>
 * <li>unbalance of the fan wheel: 1× at the fan end 5.2 mm/s rms horizontally and 3.9 mm/s vertically, a quarter turn
 * apart, little of it at the drive end and along the shaft;
 * <li>blade passing of the ten blades, 3.4 mm/s rms along the shaft at the fan end;
 * <li>a defect of the outer race at the drive end: impacts at the outer-race rate of the bearing, with slip.
 * </ul>
 */
public final class DemoRecordings {
    /** Speed of the fan. */
    public static final RotationSpeed SPEED = RotationSpeed.ofRevolutionsPerMinute(1485);
    /** Outer-race rate of the drive-end bearing over the speed: 8 elements of 22.2 mm on 96 mm, 4·(1 − 22.2/96). */
    public static final double OUTER_RACE_MULTIPLE = 4 * (1 - 22.2 / 96);
    /** Value in g that full scale of the files stands for; the machine description carries it as {@code scale}. */
    public static final double FULL_SCALE_G = 4;

    private static final int BLADES = 10;
    private static final double RATE = 12_800;
    private static final int LENGTH = 51_200;

    private DemoRecordings() {}

    /**
     * Makes all recordings; each call gives the same samples.
     *
     * @return recording in acceleration by file name
     */
    public static Map<String, Waveform> all() {
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        recordings.put("fe-h.wav", fanEnd(5.2, 0, 11).waveform());
        recordings.put("fe-v.wav", fanEnd(3.9, -Math.PI / 2, 12).waveform());
        recordings.put("fe-a.wav", order(fanEnd(0.7, 0.4, 13), BLADES, 3.4, 0.8).waveform());
        recordings.put("de-h.wav", driveEnd(1.3, 14).waveform());
        recordings.put("de-v.wav", driveEnd(1.1, 15).waveform());
        return Collections.unmodifiableMap(recordings);
    }

    /**
     * Puts a recording in the place of {@code de-v.wav} that isn't sound: the signal stands still for 0.12 s.
     *
     * @param folder folder of the demonstration machine
     */
    public static void spoil(Path folder) {
        WavFile.write(driveEnd(1.1, 15).dropOut(1.3, 0.12).waveform(), folder.resolve("de-v.wav"), Unit.G, FULL_SCALE_G,
                SampleFormat.INTEGER_16);
    }

    /**
     * Writes all recordings as 16-bit WAV files.
     *
     * @param folder folder to write to; files of the same names are replaced
     */
    public static void writeTo(Path folder) {
        all().forEach((name, wave) ->
                WavFile.write(wave, folder.resolve(name), Unit.G, FULL_SCALE_G, SampleFormat.INTEGER_16));
    }

    private static Synthesis fanEnd(double velocityAt1x, double phase, long seed) {
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.6, seed);
        return order(order(signal, 1, velocityAt1x, phase), 2, 0.08 * velocityAt1x, 1.1);
    }

    private static Synthesis driveEnd(double velocityAt1x, long seed) {
        ImpactTrain impacts = ImpactTrain.of(SPEED.hertzOfOrder(OUTER_RACE_MULTIPLE), 11, 3300, 0.04).withJitter(0.01);
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, RATE, LENGTH).noise(0.6, seed);
        return order(order(signal, 1, velocityAt1x, 0.7), 2, 0.3, 2.0).impacts(impacts, seed);
    }

    /** Adds a line of given rms velocity in mm/s: an acceleration of {@code √2·2πf·v}. */
    private static Synthesis order(Synthesis signal, int order, double velocityMillimetresPerSecond, double phase) {
        double hertz = SPEED.hertzOfOrder(order);
        double amplitude = Math.sqrt(2) * 2 * Math.PI * hertz * velocityMillimetresPerSecond * 1e-3;
        return signal.tone(amplitude, hertz, phase);
    }
}
