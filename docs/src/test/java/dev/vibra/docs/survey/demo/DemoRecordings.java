package dev.vibra.docs.survey.demo;

import dev.vibra.filter.FirDesign;
import dev.vibra.filter.FirFilter;
import dev.vibra.io.SampleFormat;
import dev.vibra.io.WavFile;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.SpeedProfile;
import dev.vibra.synthesis.Synthesis;
import dev.vibra.window.Window;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Makes the recordings of the demonstration machine, a motor that drives an overhung fan by belts. Put in on purpose:
 *
 * <ul>
 * <li>unbalance of the fan wheel: 1× at the fan end 5.2 mm/s rms horizontally, 63° behind the mark, and 3.9 mm/s
 * vertically, a quarter turn later; the far bearing is pulled the other way, and the wheel's tilt shakes the rotor
 * along the shaft;
 * <li>a defect of the outer race at the drive end: impacts at the outer-race rate of the bearing, with slip;
 * <li>worn belts: multiples of the rate of the belts, 2.7 mm/s rms at the motor's pulley.
 * </ul>
 *
 * <p>The rest is what a sound fan has: small multiples, blade passing, twice the line frequency at the motor, noise.
 * The signals are made at four times the rate and brought down through a low pass, as an acquisition does: 80 dB from
 * 5.9 kHz on.
 */
public final class DemoRecordings {
    /** Speed of the fan. */
    public static final RotationSpeed SPEED = RotationSpeed.ofRevolutionsPerMinute(1485);
    /** Outer-race rate of the drive-end bearing over the speed: 8 elements of 22.2 mm on 96 mm, 4·(1 − 22.2/96). */
    public static final double OUTER_RACE_MULTIPLE = 4 * (1 - 22.2 / 96);
    /** Value in g that full scale of the files stands for; the machine description carries it as {@code scale}. */
    public static final double FULL_SCALE_G = 4;

    private static final int BLADES = 10;
    private static final double TWICE_LINE_HERTZ = 100;
    /** Pulleys of 355 mm and 236 mm, without creep. */
    private static final double MOTOR_HERTZ = SPEED.hertz() * 236 / 355;
    private static final double BELT_HERTZ = Math.PI * 355 * MOTOR_HERTZ / 3200;
    /** Velocity at multiples of the rate of the belts over that at the second. */
    private static final double[] BELT_SHARES = {0, 0.25, 1, 0.5, 0.3};
    private static final double RATE = 12_800;
    private static final int LENGTH = 65_536;
    static final int OVERSAMPLING = 4;
    private static final double TACHOMETER_RATE = 3200;
    private static final FirFilter LOW_PASS = FirDesign.lowPass(401, 5600, OVERSAMPLING * RATE, Window.kaiser(8));
    private static final List<Place> PLACES = List.of(
            new Place("fe-h", 5.2, 63, 0.30, 0.1, 0.05, 200, 0.5, 0, 0.01, 0.25),
            new Place("fe-v", 3.9, 153, 0.22, 0.1, 0.05, 110, 0.4, 0, 0.01, 0.25),
            new Place("fe-a", 2.2, 75, 0.25, 0.1, 0.05, 15, 0.7, 0, 0.005, 0.25),
            new Place("de-h", 1.35, 238, 0.36, 1.4, 0.35, 195, 0.2, 0.04, 1, 0.2),
            new Place("de-v", 1.05, 331, 0.30, 0.6, 0.25, 280, 0.2, 0.04, 0.9, 0.2),
            new Place("de-a", 1.6, 70, 0.20, 0.2, 0.1, 320, 0.3, 0.02, 0.4, 0.2),
            new Place("m-de-h", 0.3, 265, 0.10, 2.7, 0.8, 40, 0.05, 0.25, 0, 0.15),
            new Place("m-de-v", 0.2, 350, 0.10, 1.1, 0.6, 75, 0.05, 0.3, 0, 0.15),
            new Place("m-de-a", 0.2, 110, 0.10, 0.3, 0.3, 300, 0.05, 0.1, 0, 0.15),
            new Place("m-nde-h", 0.15, 95, 0.05, 0.8, 0.5, 52, 0.03, 0.25, 0, 0.15));

    private DemoRecordings() {}

    /**
     * What reaches a point: velocities in mm/s rms, the lag of 1× of the fan and of the motor behind their marks in
     * degrees, the share of the impacts, and the rms of the noise in m/s².
     */
    private record Place(String name, double once, double lag, double twice, double belts, double motor,
            double motorLag, double passing, double twiceLine, double impacts, double noise) {}

    /**
     * How far the faults have come, 1 as of today.
     *
     * @param wheel unbalance of the wheel
     * @param race impacts of the outer race
     * @param belts lines of the belts
     * @param visit number of the visit, 0 for today's
     */
    record Stage(double wheel, double race, double belts, int visit) {
        static final Stage TODAY = new Stage(1, 1, 1, 0);
    }

    /**
     * Makes the recordings of all points as they are today; each call gives the same samples.
     *
     * @return recording in acceleration by file name
     */
    public static Map<String, Waveform> all() {
        return at(Stage.TODAY, PLACES.stream().map(Place::name).toList());
    }

    static Map<String, Waveform> at(Stage stage, List<String> names) {
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        for (int i = 0; i < PLACES.size(); i++) {
            if (names.contains(PLACES.get(i).name)) {
                recordings.put(PLACES.get(i).name + ".wav", recording(PLACES.get(i), stage, 11 + i));
            }
        }
        return Collections.unmodifiableMap(recordings);
    }

    /**
     * Makes the recordings of the tachometers, one pulse a turn; that of the fan begins at its mark.
     *
     * @return voltage by file name
     */
    public static Map<String, Waveform> tachometers() {
        RotationSpeed motor = RotationSpeed.ofHertz(MOTOR_HERTZ);
        return Map.of("tacho.wav", new SpeedProfile(SPEED, SPEED, LENGTH / RATE).tachometer(TACHOMETER_RATE, 1),
                "m-tacho.wav", new SpeedProfile(motor, motor, LENGTH / RATE).tachometer(TACHOMETER_RATE, 1));
    }

    /**
     * Puts a recording in the place of {@code de-v.wav} that isn't sound: the signal stands still for 0.12 s.
     *
     * @param folder folder of the demonstration machine
     */
    public static void spoil(Path folder) {
        double[] samples = all().get("de-v.wav").samples();
        int from = (int) (1.3 * RATE);
        Arrays.fill(samples, from, from + (int) (0.12 * RATE), samples[from]);
        write(Waveform.ofSi(Quantity.ACCELERATION, RATE, samples), folder.resolve("de-v.wav"));
    }

    /**
     * Writes all recordings as 16-bit WAV files.
     *
     * @param folder folder to write to; files of the same names are replaced
     */
    public static void writeTo(Path folder) {
        all().forEach((name, wave) -> write(wave, folder.resolve(name)));
        tachometers().forEach((name, wave) -> WavFile.write(wave, folder.resolve(name), Unit.V, 2,
                SampleFormat.INTEGER_16));
        DemoCoastDown.writeTo(folder);
    }

    static void write(Waveform wave, Path file) {
        WavFile.write(wave, file, Unit.G, FULL_SCALE_G, SampleFormat.INTEGER_16);
    }

    private static Waveform recording(Place place, Stage stage, long seed) {
        Synthesis signal = Synthesis.silence(Quantity.ACCELERATION, OVERSAMPLING * RATE,
                OVERSAMPLING * LENGTH + settling()).noise(2 * place.noise, seed + 100 * stage.visit);
        signal = order(signal, 1, stage.wheel * place.once, place.lag);
        signal = order(signal, 2, place.twice, 40 * seed);
        signal = order(signal, 3, 0.1 + 0.3 * place.twice, 30 * seed);
        signal = order(signal, BLADES, place.passing, 50 * seed);
        signal = tone(signal, TWICE_LINE_HERTZ, place.twiceLine, 70 * seed);
        signal = tone(signal, MOTOR_HERTZ, place.motor, place.motorLag);
        for (int k = 1; k < BELT_SHARES.length; k++) {
            signal = tone(signal, k * BELT_HERTZ, BELT_SHARES[k] * stage.belts * place.belts, 10 * k * seed);
        }
        ImpactTrain impacts = ImpactTrain.of(SPEED.hertzOfOrder(OUTER_RACE_MULTIPLE),
                11 * stage.race * place.impacts, 3300, 0.04).withJitter(0.01);
        return decimated(signal.impacts(impacts, seed + 100 * stage.visit).waveform().samples(), RATE);
    }

    /** Samples that the low pass still settles from, before decimation; they are cut off. */
    static int settling() {
        return LOW_PASS.taps().length - 1;
    }

    /** Brings samples made at four times a rate down to it; the first of them are cut off. */
    static Waveform decimated(double[] fast, double rate) {
        double[] filtered = LOW_PASS.filtered(fast);
        double[] samples = new double[(fast.length - settling()) / OVERSAMPLING];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = filtered[OVERSAMPLING * i + settling()];
        }
        return Waveform.ofSi(Quantity.ACCELERATION, rate, samples);
    }

    private static Synthesis order(Synthesis signal, int order, double velocity, double lagDegrees) {
        return tone(signal, SPEED.hertzOfOrder(order), velocity, lagDegrees);
    }

    /**
     * Adds a line of given rms velocity in mm/s: an acceleration of {@code √2·2πf·v}, a quarter turn ahead of the
     * velocity. The mark is seen at the first sample of the file, half a filter behind the first sample made.
     */
    private static Synthesis tone(Synthesis signal, double hertz, double velocity, double lagDegrees) {
        double amplitude = Math.sqrt(2) * 2 * Math.PI * hertz * velocity * 1e-3;
        double early = 2 * Math.PI * hertz * LOW_PASS.delaySamples() / (OVERSAMPLING * RATE);
        return signal.tone(amplitude, hertz, Math.PI / 2 - Math.toRadians(lagDegrees) - early);
    }
}
