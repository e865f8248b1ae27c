package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.BearingSignal;
import dev.vibra.bearing.synthesis.GearMesh;
import dev.vibra.bearing.synthesis.Resonance;
import dev.vibra.bearing.synthesis.SensorResponse;
import dev.vibra.bearing.synthesis.Surroundings;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/** A recording of a bearing that nobody tuned to, drawn from a seed, with the truth about it. */
final class SimulatedBearing {
    /** What may stand beside a defect. */
    static final List<Disturbance> BESIDE_DEFECTS = List.of(Disturbance.LOOSE, Disturbance.GEAR, Disturbance.VANE);

    private static final int MOST_SAMPLES = 160_000;
    private static final double[] SAMPLE_RATES = {12_800, 25_600, 51_200};
    private static final double HEALTHY = 1 / 3.0;
    private static final double DISTURBED = 0.3;

    private final SplittableRandom random;
    private final long seed;
    private final BearingElement defect; // null if healthy
    private final BearingGeometry geometry;
    private final RotatingRing ring;
    private KinematicFrequencies truth;
    private KinematicFrequencies told;
    private double sampleRate;
    private int length;
    private final double slip;
    private final double decibels;
    private final Disturbance disturbance;
    private final List<Resonance> resonances;
    private final Optional<SensorResponse> sensor;
    private final List<Double> foreignRates = new ArrayList<>();
    private final Waveform wave;

    private SimulatedBearing(long seed) {
        this.seed = seed;
        random = new SplittableRandom(seed);
        defect = Draw.chance(random, HEALTHY) ? null : drawDefect();
        geometry = Draw.geometry(random);
        ring = Draw.chance(random, 0.2) ? RotatingRing.OUTER : RotatingRing.INNER;
        drawRunning();
        slip = random.nextDouble(-0.015, 0.015);
        decibels = random.nextDouble(-30, 10);
        resonances = drawResonances();
        sensor = drawSensor();
        disturbance = drawDisturbance();
        wave = drawWave();
    }

    static SimulatedBearing of(long seed) {
        return new SimulatedBearing(seed);
    }

    private BearingElement drawDefect() {
        double which = random.nextDouble();
        return which < 0.4 ? BearingElement.OUTER_RACE
                : which < 0.75 ? BearingElement.INNER_RACE : BearingElement.ROLLING_ELEMENT;
    }

    /** Speed, sample rate and length: fast enough for four harmonics in an octave, short enough for the study. */
    private void drawRunning() {
        // Above 20 even after the length was rounded down and the speed was told too low.
        double revolutions = Draw.logarithmic(random, 21, 400);
        double hertz;
        do {
            sampleRate = SAMPLE_RATES[random.nextInt(SAMPLE_RATES.length)];
            hertz = Draw.logarithmic(random, 5, 60);
            truth = geometry.frequencies(ring, RotationSpeed.ofHertz(hertz));
        } while (revolutions / hertz * sampleRate > MOST_SAMPLES || highestRate() > sampleRate / 2.56 / 8);
        length = Draw.fastLength((int) (revolutions / hertz * sampleRate));
        double error = random.nextBoolean() ? random.nextDouble(-0.005, 0.005) : 0;
        told = geometry.frequencies(ring, RotationSpeed.ofHertz(hertz * (1 + error)));
    }

    private double highestRate() {
        return Math.max(truth.innerRaceHertz(), Math.max(truth.outerRaceHertz(), truth.rollingElementHertz()));
    }

    private List<Resonance> drawResonances() {
        List<Resonance> drawn = new ArrayList<>();
        int count = random.nextInt(1, 3);
        double lowest = Math.max(1200, 5 * highestRate());
        for (int i = 0; i < count; i++) {
            drawn.add(new Resonance(Draw.logarithmic(random, Math.min(lowest, 0.2 * sampleRate), 0.36 * sampleRate),
                    Draw.logarithmic(random, 0.01, 0.1), i == 0 ? 1 : random.nextDouble(0.3, 1)));
        }
        return drawn;
    }

    private Optional<SensorResponse> drawSensor() {
        double which = random.nextDouble();
        double hertz = sampleRate * random.nextDouble(0.2, 0.5);
        return which < 0.3 ? Optional.empty()
                : which < 0.6 ? Optional.of(SensorResponse.firstOrder(hertz))
                : Optional.of(SensorResponse.secondOrder(hertz, which < 0.8 ? 0.707 : random.nextDouble(0.02, 0.1)));
    }

    private Disturbance drawDisturbance() {
        if (defect == null) {
            int which = random.nextInt(-2, Disturbance.values().length);
            return Disturbance.values()[Math.max(0, which)];
        }
        return Draw.chance(random, DISTURBED) ? BESIDE_DEFECTS.get(random.nextInt(BESIDE_DEFECTS.size()))
                : Disturbance.NONE;
    }

    private Waveform drawWave() {
        double[] rest = drawRest();
        double[] disturbing = drawDisturbing(new Machine(truth, resonances.get(0), sampleRate, length,
                foreignRates));
        double[] samples = Machine.sum(rest, disturbing, drawDisturbingGain());
        if (defect != null) {
            samples = Machine.sum(samples, drawTrain(), defectGain());
        }
        return Waveform.ofSi(Quantity.ACCELERATION, sampleRate, samples);
    }

    /** Over the noise; the hammering beside a defect is weaker than the defect, whatever the noise. */
    private double drawDisturbingGain() {
        return defect == null ? Draw.gain(random, -20, 10)
                : disturbance == Disturbance.LOOSE ? defectGain() * Draw.gain(random, -15, -3)
                : Draw.gain(random, -20, 0);
    }

    private double defectGain() {
        return StrictMath.pow(10, decibels / 20);
    }

    /** Noise of 1 m/s² rms, tones of the shaft and often of a mesh. */
    private double[] drawRest() {
        Surroundings surroundings = Surroundings.ofNoise(1);
        if (random.nextBoolean()) {
            surroundings = surroundings.withNoise(1, random.nextDouble(0.3, 1));
        }
        if (Draw.chance(random, 0.7)) {
            surroundings = surroundings.withShaftTones(Draw.gain(random, -20, 0));
        }
        if (Draw.chance(random, 0.3)) {
            double mesh = Math.min(random.nextInt(17, 60) * truth.shaftHertz(), 0.4 * sampleRate);
            surroundings = surroundings.withGear(new GearMesh(mesh, Draw.gain(random, -20, 0), truth.shaftHertz(),
                    random.nextDouble(0, 0.5)));
        }
        return signal().withSurroundings(surroundings).waveform(sampleRate, length, random.nextLong()).samples();
    }

    private double[] drawTrain() {
        return signal().withDefect(defect, 1).withSlip(slip, Draw.logarithmic(random, 0.002, 0.02))
                .withUnequalStrikes(random.nextDouble(0.4, 1)).waveform(sampleRate, length, random.nextLong())
                .samples();
    }

    private double[] drawDisturbing(Machine machine) {
        double[] samples = disturbance.samples(machine, random);
        return sensor.isEmpty() || !disturbance.mechanical() || disturbance == Disturbance.NONE ? samples
                : sensor.get().applyTo(machine.silence().plus(
                        Waveform.ofSi(Quantity.ACCELERATION, sampleRate, samples))).waveform().samples();
    }

    private BearingSignal signal() {
        BearingSignal silent = BearingSignal.of(truth).withNoise(0)
                .withResonances(resonances.toArray(Resonance[]::new));
        return sensor.map(silent::withSensor).orElse(silent);
    }

    Optional<BearingElement> defect() {
        return Optional.ofNullable(defect);
    }

    long seed() {
        return seed;
    }

    Waveform wave() {
        return wave;
    }

    /** Rates at the speed that the diagnosis is told. */
    KinematicFrequencies told() {
        return told;
    }

    Disturbance disturbance() {
        return disturbance;
    }

    /** Power of the defect's train over that of everything else, in dB. */
    double decibels() {
        return decibels;
    }

    double revolutions() {
        return length / sampleRate * truth.shaftHertz();
    }

    /** Rate at which the defect strikes in truth. */
    double strikesHertz(BearingElement element) {
        return truth.of(element) * (1 + slip);
    }

    /** Band of the resonance that carries most of the train's power as the sensor shows it, an octave at most. */
    Band rightBand() {
        Resonance strongest = resonances.stream().max(Comparator.comparingDouble(this::power)).orElseThrow();
        double half = Math.max(0.2 * strongest.hertz(), Math.min(4 * highestRate(), 0.33 * strongest.hertz()));
        return Band.of(strongest.hertz() - half, Math.min(strongest.hertz() + half, 0.49 * sampleRate));
    }

    private double power(Resonance resonance) {
        return resonance.energySeconds() * sensor.map(s -> s.power(resonance.hertz())).orElse(1.0);
    }

    @Override
    public String toString() {
        String rates = foreignRates.stream().map(rate -> String.format(Locale.ROOT, " at %.4g Hz", rate))
                .collect(Collectors.joining());
        return String.format(Locale.ROOT, "%s, %s%s beside; %s, %s ring turns at %.3f Hz (told %.3f), slip %.2f %%; "
                + "%.0f revolutions at %.0f Hz; %.1f dB; %s; sensor %s", defect().map(Object::toString)
                .orElse("healthy"), disturbance, rates, geometry, ring, truth.shaftHertz(), told.shaftHertz(),
                100 * slip, revolutions(), sampleRate, decibels, resonances,
                sensor.map(Object::toString).orElse("ideal"));
    }
}
