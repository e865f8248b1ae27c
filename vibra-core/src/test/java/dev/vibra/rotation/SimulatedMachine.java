package dev.vibra.rotation;

import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.Random;

/**
 * A machine drawn at random and its recording, by a forward model that shares nothing with the estimator: what sort of
 * machine it is, its true speed, and the acceleration of its housing.
 *
 * <p>Every machine that runs has a residual 1x of 0.1 to 3 mm/s rms and weaker low multiples, a floor of white noise
 * and of noise through three housing modes, a speed that wanders by up to 0.1 %, and with probabilities of their own
 * hum, vane and slot lines and a line that isn't its own. Two in five turn as induction motors do. Its sort adds what
 * dominates. Sizes are common practice, no source; impacts follow the model of {@code ImpactTrain}, written a
 * second time with a wandering shaft angle.
 */
final class SimulatedMachine {
    /** What dominates the recording. */
    enum Sort { UNBALANCE, MISALIGNMENT, LOOSENESS, BEARING, GEAR, VANE, SECOND_SHAFT, HUM, HEALTHY, NOISE }

    private static final double[] RATES = {2560, 5120, 6400, 12_800, 25_600, 51_200};

    private static final double[] COSINES = cosines(16_384);

    private final Random random;
    private final Sort sort;
    private final double hertz;
    private final double mains;
    private final boolean motor;
    private final double rate;
    private final double[] samples;
    /** Angle of the shaft in revolutions, sample by sample. */
    private final double[] turned;
    private double residual;

    private SimulatedMachine(long seed, int number) {
        random = new Random(seed * 1_000_003L + number);
        random.nextInt();
        sort = Sort.values()[number % Sort.values().length];
        mains = random.nextBoolean() ? 50 : 60;
        motor = random.nextDouble() < 0.4;
        hertz = motor ? mains / (1 + random.nextInt(4)) * (1 - uniform(0.002, 0.06)) : uniform(5, 60);
        rate = RATES[random.nextInt(RATES.length)];
        double seconds = 2 * Math.pow(10, random.nextDouble());
        samples = new double[(int) (rate * seconds)];
        turned = new double[samples.length];
    }

    /** Draws a machine; the sorts take turns. */
    static SimulatedMachine draw(long seed, int number) {
        SimulatedMachine machine = new SimulatedMachine(seed, number);
        machine.turn();
        machine.addNoise();
        if (machine.sort != Sort.NOISE) {
            machine.addResidual();
        }
        machine.addSort();
        if (machine.sort == Sort.HUM || machine.random.nextDouble() < 0.35) {
            machine.addHum();
        }
        if (machine.random.nextDouble() < (machine.sort == Sort.NOISE ? 0.4 : 0.15)) {
            machine.addForeign();
        }
        return machine;
    }

    Waveform wave() {
        return Waveform.ofSi(Quantity.ACCELERATION, rate, samples);
    }

    Sort sort() {
        return sort;
    }

    /** True mean speed in Hz; meaningless for noise alone. */
    double hertz() {
        return turned[turned.length - 1] / (turned.length - 1) * rate;
    }

    /** Tells whether the shaft is that of an induction motor of 2, 4, 6 or 8 poles on the mains. */
    boolean isMotor() {
        return motor;
    }

    double mainsHertz() {
        return mains;
    }

    /** Within 1 % of the true speed; never for a machine that doesn't turn. */
    boolean turnsAt(double speedHertz) {
        return sort != Sort.NOISE && Math.abs(speedHertz / hertz() - 1) <= 0.01;
    }

    private void turn() {
        double wander = logarithmic(1e-5, 1e-3);
        double period = uniform(0.5, 2) * samples.length / rate;
        double phase = uniform(0, 6.28);
        double revolutions = 0;
        for (int i = 0; i < turned.length; i++) {
            turned[i] = revolutions;
            revolutions += hertz * (1 + wander * Math.sin(6.2832 * i / rate / period + phase)) / rate;
        }
    }

    /** White noise, and the same through three modes of the housing. */
    private void addNoise() {
        double rms = logarithmic(1e-4, 1e-2) * Math.sqrt(0.5 * rate);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = rms * random.nextGaussian();
        }
        double[] white = samples.clone();
        for (int mode = 0; mode < 3; mode++) {
            addMode(white, logarithmic(0.1, 2), logarithmic(60, 0.4 * rate), uniform(0.02, 0.1));
        }
    }

    /** Adds noise through a resonator that lets white noise through with the given gain. */
    private void addMode(double[] white, double gain, double natural, double damping) {
        double radius = Math.exp(-2 * Math.PI * damping * natural / rate);
        double first = 2 * radius * Math.cos(2 * Math.PI * natural / rate);
        double scale = gain * Math.sqrt(2 * (1 - radius)) * Math.sin(2 * Math.PI * natural / rate);
        double one = 0;
        double two = 0;
        for (int i = 0; i < samples.length; i++) {
            double now = scale * white[i] + first * one - radius * radius * two;
            two = one;
            one = now;
            samples[i] += now;
        }
    }

    private void addResidual() {
        residual = logarithmic(0.1, 3);
        addShaft(1, residual, sort == Sort.UNBALANCE ? 0.3 : 0.7);
        if (random.nextDouble() < 0.25 && sort != Sort.VANE && sort != Sort.UNBALANCE) {
            addVane(logarithmic(0.1, 1));
        }
        if (random.nextDouble() < 0.2) {
            addSlots();
        }
    }

    /** The first multiple of a shaft, and up to the fourth, each there with a probability if the one before it is. */
    private void addShaft(double ratio, double velocity, double probability) {
        order(ratio, velocity);
        double decay = uniform(0.05, 0.5);
        for (int n = 2; n <= 4 && random.nextDouble() < probability; n++) {
            order(n * ratio, velocity * Math.pow(decay, n - 1) * uniform(0.5, 1.5));
        }
    }

    private void addSort() {
        switch (sort) {
            case UNBALANCE -> order(1, logarithmic(1, 10));
            case MISALIGNMENT -> addMisalignment();
            case LOOSENESS -> addLooseness();
            case BEARING -> addBearing();
            case GEAR -> addGear();
            case VANE -> addVane(logarithmic(0.5, 8));
            case SECOND_SHAFT -> addSecondShaft();
            default -> { }
        }
    }

    private void addMisalignment() {
        double one = logarithmic(0.5, 4);
        double two = one * logarithmic(0.3, 2.5);
        order(1, one);
        order(2, two);
        order(3, two * logarithmic(0.1, 0.8));
        order(4, two * logarithmic(0.03, 0.4));
    }

    private void addLooseness() {
        double one = logarithmic(0.5, 5);
        double power = uniform(0.3, 1.5);
        double half = random.nextDouble() < 0.7 ? logarithmic(0.03, 0.5) : 0;
        for (int n = 1; n <= 10; n++) {
            double size = one * Math.pow(n, -power) * logarithmic(0.6, 1.6);
            order(n, size);
            if (half > 0 && n <= 5) {
                order(n - 0.5, half * size * logarithmic(0.6, 1.6));
            }
        }
    }

    /** A defect of a ring or a ball of a bearing with 7 to 15 balls. */
    private void addBearing() {
        int balls = 7 + random.nextInt(9);
        double slip = 1 - uniform(0, 0.02);
        double cage = 0.5 * (1 - uniform(0.15, 0.3)) * slip;
        double peak = logarithmic(0.5, 30);
        if (random.nextBoolean()) {
            addCage(cage, balls);
        }
        switch (random.nextInt(3)) {
            case 0 -> addImpacts(balls * cage, peak, 1, random.nextDouble() < 0.5 ? 0 : uniform(0, 0.4));
            case 1 -> addImpacts(balls * (1 - cage), peak, 1, uniform(0.3, 1));
            default -> addImpacts(uniform(3.5, 7), peak, cage, uniform(0.3, 1));
        }
    }

    /** A worn cage, or balls of unlike size: its own rate, its beats with the shaft and the passing of the balls. */
    private void addCage(double cage, int balls) {
        double size = residual * logarithmic(0.02, 0.5);
        for (double order : new double[] {cage, 2 * cage, 1 - cage, 1 + cage, balls * cage, balls * (1 - cage)}) {
            order(order, size * logarithmic(0.1, 1));
        }
    }

    /** Slots of a motor that pass its poles: lines twice the mains apart about a multiple of the speed. */
    private void addSlots() {
        int slots = 20 + random.nextInt(30);
        for (int side = -2; side <= 2; side++) {
            order(slots + side * 2 * mains / hertz, logarithmic(0.01, 0.5));
        }
    }

    private void addImpacts(double order, double peak, double modulationOrder, double depth) {
        double natural = Math.min(logarithmic(1000, 6000), 0.4 * rate);
        double decay = 2 * Math.PI * uniform(0.02, 0.08) * natural;
        double jitter = logarithmic(0.001, 0.02);
        double next = uniform(0, 1) / order;
        for (int i = 1; i < samples.length; i++) {
            if (turned[i] < next) {
                continue;
            }
            double late = (turned[i] - next) / hertz;
            double strength = peak * (1 + depth * Math.cos(2 * Math.PI * modulationOrder * next)) / (1 + depth);
            for (int k = i; k < samples.length && decay * (k - i) / rate < 12; k++) {
                double t = late + (k - i) / rate;
                samples[k] += strength * Math.exp(-decay * t) * Math.sin(2 * Math.PI * natural * t);
            }
            next += Math.max(0.1, 1 + jitter * random.nextGaussian()) / order;
        }
    }

    private void addGear() {
        int teeth = 13 + random.nextInt(60);
        double size = logarithmic(0.3, 4);
        for (int mesh = 1; mesh <= 3; mesh++) {
            double here = size / (mesh * mesh);
            order(mesh * teeth, here);
            for (int k = 1; k <= 4; k++) {
                order(mesh * teeth + k, here * Math.pow(0.5, k) * logarithmic(0.1, 1.5));
                order(mesh * teeth - k, here * Math.pow(0.5, k) * logarithmic(0.1, 1.5));
            }
        }
    }

    private void addVane(double size) {
        int vanes = 3 + random.nextInt(10);
        order(vanes, size);
        order(2 * vanes, size * uniform(0, 0.3));
    }

    /** A shaft behind a belt or a neighbour, of the same law, from a tenth to twice as strong. */
    private void addSecondShaft() {
        double ratio = random.nextBoolean() ? uniform(0.3, 0.93) : uniform(1.07, 3);
        addShaft(ratio, residual * logarithmic(0.1, 2), 0.7);
    }

    /** A line that has nothing to do with the machine: a neighbour, a pulsation in a pipe. */
    private void addForeign() {
        double actual = logarithmic(5, 200);
        order(actual / hertz, logarithmic(0.03, 3));
    }

    private void addHum() {
        double size = logarithmic(0.02, 1);
        double actual = mains * (1 + uniform(-5e-4, 5e-4));
        for (int n = 1; n <= 6; n++) {
            double amplitude = Math.sqrt(2) * 2e-3 * Math.PI * n * actual * size * (n == 2 ? 1 : uniform(0, 0.4));
            double phase = uniform(0, 1);
            for (int i = 0; i < samples.length && n * actual < 0.45 * rate; i++) {
                samples[i] += amplitude * cosine(n * actual / rate * i + phase);
            }
        }
    }

    /** Adds a line at a multiple of the speed, of the given velocity in mm/s rms. */
    private void order(double order, double velocity) {
        double amplitude = Math.sqrt(2) * 2e-3 * Math.PI * order * hertz * velocity;
        double phase = uniform(0, 1);
        if (!(order > 0 && order * hertz < 0.45 * rate)) {
            return;
        }
        for (int i = 0; i < samples.length; i++) {
            samples[i] += amplitude * cosine(order * turned[i] + phase);
        }
    }

    /** Cosine of turns, zero or more, from a table between whose entries is a straight line; error below 1e-7. */
    private static double cosine(double turns) {
        double place = (turns - Math.floor(turns)) * (COSINES.length - 1);
        int entry = (int) place;
        return COSINES[entry] + (place - entry) * (COSINES[Math.min(entry + 1, COSINES.length - 1)] - COSINES[entry]);
    }

    private static double[] cosines(int count) {
        double[] table = new double[count + 1];
        for (int i = 0; i <= count; i++) {
            table[i] = Math.cos(2 * Math.PI * i / count);
        }
        return table;
    }

    private double uniform(double from, double to) {
        return from + (to - from) * random.nextDouble();
    }

    private double logarithmic(double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }
}
