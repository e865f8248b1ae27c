package dev.vibra.docs.survey.demo;

import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.speedrun.RunModel;
import dev.vibra.synthesis.SpeedProfile;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Makes the coast-down of the demonstration machine, the power cut at the speed of service: the pedestal at the fan
 * end has a natural frequency of 14.9 Hz horizontally, passed at 894 r/min, and of 38 Hz vertically, above all speeds.
 * At the beginning both directions turn as the recordings in service do: 5.2 mm/s rms 63° and 3.9 mm/s rms 153° behind
 * the mark.
 */
final class DemoCoastDown {
    /** Natural frequency of the pedestal, horizontally. */
    static final double NATURAL_HERTZ = 14.9;
    /** Its damping ratio. */
    static final double DAMPING = 0.05;
    /** Value in g that full scale of the files stands for. */
    static final double FULL_SCALE_G = 1;

    private static final double RATE = 512;
    private static final int LENGTH = 45 * 512;
    private static final RotationSpeed LOWEST = RotationSpeed.ofRevolutionsPerMinute(360);
    private static final double NOISE = 0.03;

    private DemoCoastDown() {}

    /** {@return acceleration by file name} */
    static Map<String, Waveform> all() {
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        recordings.put("down-fe-h.wav", recording(5.2, 63, NATURAL_HERTZ, DAMPING, 31));
        recordings.put("down-fe-v.wav", recording(3.9, 153, 38, 0.03, 32));
        return recordings;
    }

    /** {@return volts of the tachometer, one pulse a turn, at twice the rate of the recordings} */
    static Waveform tachometer() {
        return profile().tachometer(2 * RATE, 1).part((int) Math.round(2 * RATE * delay()), 2 * LENGTH);
    }

    static void writeTo(Path folder) {
        all().forEach((name, wave) -> WavFile.write(wave, folder.resolve(name), Unit.G, FULL_SCALE_G,
                SampleFormat.INTEGER_16));
        WavFile.write(tachometer(), folder.resolve("down-tacho.wav"), Unit.V, 2, SampleFormat.INTEGER_16);
    }

    /** The run begins before the recordings and ends behind them, by what the low pass delays. */
    private static SpeedProfile profile() {
        double seconds = LENGTH / RATE;
        double beyond = (DemoRecordings.SPEED.hertz() - LOWEST.hertz()) * delay() / seconds;
        return new SpeedProfile(RotationSpeed.ofHertz(DemoRecordings.SPEED.hertz() + beyond),
                RotationSpeed.ofHertz(LOWEST.hertz() - beyond), seconds + 2 * delay());
    }

    private static double delay() {
        return DemoRecordings.settling() / 2 / (DemoRecordings.OVERSAMPLING * RATE);
    }

    /** The mode is excited such that it moves at the speed of service as told. */
    private static Waveform recording(double velocity, double lag, double naturalHertz, double damping, long seed) {
        double hertz = DemoRecordings.SPEED.hertz();
        double r = hertz / naturalHertz;
        double gain = r * r / Math.hypot(1 - r * r, 2 * damping * r);
        double metres = Math.sqrt(2) * velocity * 1e-3 / (2 * Math.PI * hertz * gain);
        double behind = Math.toDegrees(Math.atan2(2 * damping * r, 1 - r * r)) - 90;
        double fast = DemoRecordings.OVERSAMPLING * RATE;
        return DemoRecordings.decimated(RunModel.of(profile()).withMode(metres, naturalHertz, damping, lag - behind)
                .withNoise(2 * NOISE, seed).recording(Quantity.ACCELERATION, fast).samples(), RATE);
    }
}
