package dev.vibra.diagnosis.study;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.MachineDescription;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.complex.ComplexUtils;

/** A simulated machine with the faults that it has; each follows from its seed. */
final class StudyMachine {
    /** Share of faults that are smaller than what is a fault by level: they begin. */
    private static final double BEGINNINGS = 0.2;
    /** What the transients of the start take. */
    private static final double SETTLING = 1.5;
    private static final double TRIAL_SETTLING = 0.7;
    private static final double TRIAL = 1.2;
    private static final int CONTACT_STEPS = 3;
    /** A change of the level beyond this within a tenth of the speed is a peak; a stiffness line alone gives 1.8. */
    private static final double PEAK = 3;

    private final long seed;
    private final Plant plant;
    private final List<Planted> faults;
    private final Modes sound;
    private final Modes sick;
    private final List<Sized> innocent = new ArrayList<>();
    private final List<Sized> guilty = new ArrayList<>();
    private final Contact contact;
    private final Noise noise = new Noise();
    private final double noiseFactor;
    private final double sensorNoise;
    private final double rate;
    private final Told told;
    private final Session first;
    private final double[] limits;

    /** A source with the factor that gives it its size. */
    private record Sized(String name, Source source, double factor) {}

    private StudyMachine(long seed) {
        this.seed = seed;
        SplittableRandom random = new SplittableRandom(seed);
        plant = Plant.draw(random);
        Map<String, BearingGeometry> geometries = geometries(random);
        rate = geometries.isEmpty() && plant.meshes.isEmpty() ? 6400 : 8192;
        double damping = Draw.logarithmic(random, 0.012, 0.06);
        long dampingSeed = random.nextLong();
        sound = modes(plant.structure, damping, dampingSeed);
        boolean healthy = random.nextDouble() < 0.25;
        int number = healthy ? 0 : random.nextDouble() < 1.0 / 3 ? 2 : 1;
        FaultDraws draws = new FaultDraws(plant, rates(geometries), random);
        faults = draws.draw(number);
        Structure changed = plant.structure;
        for (Planted fault : faults) {
            changed = fault.change() == null ? changed : fault.change().apply(changed);
        }
        sick = changed == plant.structure ? sound : modes(changed, damping, dampingSeed);
        told = Told.draw(plant, geometries, random);
        limits = told.limits();
        Sizes sizes = Sizes.draw(random);
        addInnocent(draws, sizes, random);
        noiseFactor = addNoise(sizes, random);
        sensorNoise = Draw.logarithmic(random, 1e-4, 3e-3);
        contact = plant(random);
        double turns = Math.max(60, Draw.logarithmic(random, 80, 400));
        double seconds = Math.min(10, Math.max(5, turns / plant.motorHertz()));
        first = new Session(random.nextBoolean(), random.nextDouble() < 0.75, false, seconds, random.nextBoolean(),
                false, Map.of());
    }

    static StudyMachine of(long seed) {
        return new StudyMachine(seed);
    }

    private Map<String, BearingGeometry> geometries(SplittableRandom random) {
        Map<String, BearingGeometry> all = new TreeMap<>();
        if (random.nextDouble() < 0.55) {
            int number = random.nextInt(1, 3);
            for (int i = 0; i < number; i++) {
                int elements = random.nextInt(8, 18);
                double widest = Math.min(0.32, 0.9 * Math.sin(Math.PI / elements));
                double pitch = random.nextDouble(50, 160);
                double angle = random.nextDouble() < 0.7 ? 0 : random.nextDouble(10, 40);
                all.put(plant.housings.get(random.nextInt(plant.housings.size())).name(),
                        BearingGeometry.of(elements, pitch * random.nextDouble(0.6, 1) * widest, pitch, angle));
            }
        }
        return all;
    }

    private Map<String, KinematicFrequencies> rates(Map<String, BearingGeometry> geometries) {
        Map<String, KinematicFrequencies> rates = new TreeMap<>();
        geometries.forEach((id, geometry) -> {
            Housing housing = plant.housings.stream().filter(one -> one.name().equals(id)).findFirst().orElseThrow();
            rates.put(id, geometry.frequencies(RotatingRing.INNER,
                    RotationSpeed.ofHertz(plant.hertz(housing.rotor()))));
        });
        return rates;
    }

    /** Damping is drawn mode by mode about a value; high modes have more. */
    private static Modes modes(Structure structure, double damping, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return structure.modes(hertz -> Math.min(0.2, damping * random.nextDouble(0.6, 1.6)));
    }

    // ---- sizes

    private Forces forces(double seconds, SplittableRandom random) {
        return new Forces(Clock.run(rate, (int) Math.round(seconds * rate), plant.lineHertz, plant.poles / 2.0,
                plant.slip, random));
    }

    private List<Tap> allTaps() {
        List<Tap> taps = new ArrayList<>();
        plant.housings.forEach(one -> taps.addAll(List.of(one.taps())));
        return taps;
    }

    /** Largest rms velocity over the boundary B/C of its point that a source makes alone. */
    private double loudness(Source source, Modes modes) {
        Forces forces = forces(TRIAL_SETTLING + TRIAL, new SplittableRandom(seed));
        forces.add(source, 1);
        return largest(new Response(modes, forces).of(allTaps(), (int) (TRIAL_SETTLING * rate), true));
    }

    private double largest(double[][] velocities) {
        double most = 0;
        for (int i = 0; i < velocities.length; i++) {
            most = Math.max(most, rms(velocities[i]) / limits[i / 3]);
        }
        return most;
    }

    /** Largest ratio of the rms acceleration that a source makes at a housing to that of the noise there. */
    private double overNoise(Source source) {
        int settled = (int) (TRIAL_SETTLING * rate);
        Forces forces = forces(TRIAL_SETTLING + TRIAL, new SplittableRandom(seed));
        forces.add(source, 1);
        double[][] knocks = new Response(sound, forces).of(allTaps(), settled, false);
        Forces random = forces(TRIAL_SETTLING + TRIAL, new SplittableRandom(seed));
        random.add(noise.seeded(new SplittableRandom(seed)), noiseFactor);
        double[][] rest = new Response(sound, random).of(allTaps(), settled, false);
        double most = 0;
        for (int i = 0; i < knocks.length; i++) {
            most = Math.max(most, rms(knocks[i]) / Math.hypot(rms(rest[i]), sensorNoise * Math.sqrt(rate / 2)));
        }
        return most;
    }

    static double rms(double[] samples) {
        double mean = 0;
        double square = 0;
        for (double sample : samples) {
            mean += sample / samples.length;
            square += sample * sample / samples.length;
        }
        return Math.sqrt(Math.max(0, square - mean * mean));
    }

    private void innocent(String name, Source source, double part) {
        double loud = loudness(source, sound);
        innocent.add(new Sized(name, source, loud > 0 ? part / loud : 0));
    }

    private void addInnocent(FaultDraws draws, Sizes sizes, SplittableRandom random) {
        Map<String, Source> sources = new LinkedHashMap<>();
        for (int i = 0; i < plant.rotors.size(); i++) {
            Lines both = draws.unbalance(i);
            double share = random.nextDouble(0, 0.5);
            draws.couple(i).lines().forEach(line -> both.add(line.tap(), line.shaft(), line.line(),
                    share * line.amplitude(), line.turns()));
            sources.put("unbalance " + i, both);
            sources.put("multiples " + i, draws.multiples(i));
        }
        if (plant.coupled) {
            sources.put("coupling", draws.coupling());
        }
        sources.put("magnetic", draws.pull(new AirGap(plant.poles / 2, random.nextDouble(0.02, 0.1),
                random.nextDouble(0, 0.03), 0), 0.3));
        plant.meshes.forEach(mesh -> sources.put("mesh " + mesh.id(), draws.soundMesh(mesh)));
        if (plant.bladed >= 0) {
            sources.put("passing", draws.vanes(1, random.nextDouble(0, 0.2)));
        }
        if (plant.drive != null) {
            sources.put("belt", draws.belt(0.001, 0.2));
        }
        if (random.nextDouble() < 0.3) {
            sources.put("neighbour", draws.foreign());
        }
        sources.forEach((name, source) -> innocent(name, source, sizes.of(name)));
        boundUnbalance();
    }

    /** Rotors of one speed make one line, which no sound machine has larger than the others may be. */
    private void boundUnbalance() {
        Forces forces = forces(TRIAL_SETTLING + TRIAL, new SplittableRandom(seed));
        List<Sized> all = innocent.stream().filter(one -> one.name().startsWith("unbalance")).toList();
        all.forEach(one -> forces.add(one.source(), one.factor()));
        double together = largest(new Response(sound, forces).of(allTaps(), (int) (TRIAL_SETTLING * rate), true));
        if (together > Sizes.MOST) {
            innocent.replaceAll(one -> all.contains(one) ? new Sized(one.name(), one.source(),
                    one.factor() * Sizes.MOST / together) : one);
        }
    }

    private double addNoise(Sizes sizes, SplittableRandom random) {
        for (Casing casing : plant.casings) {
            for (Tap tap : List.of(casing.x(0, 0), casing.y(0, 0), casing.z(0, 0), casing.turn(0), casing.turn(2))) {
                noise.add(tap, Draw.logarithmic(random, 30, 900), random.nextDouble(0.3, 1));
            }
        }
        for (Housing housing : plant.housings) {
            noise.add(housing.knock(), Draw.logarithmic(random, 300, 3000), random.nextDouble(0.02, 0.3));
        }
        double loud = loudness(noise.seeded(new SplittableRandom(seed)), sound);
        return sizes.of("noise") / loud;
    }

    /** Gives each fault its size; returns the contact, if a fault has one. */
    private Contact plant(SplittableRandom random) {
        Contact made = null;
        for (Planted fault : faults) {
            if (fault.grows() > 0) {
                grow(fault.grows());
            }
            if (fault.contact() != null) {
                made = fault.contact().at(amplitude(fault.contact().felt()));
            }
        }
        for (Planted fault : faults) {
            for (Source source : fault.sources()) {
                guilty.add(new Sized(fault.id(), source, factor(fault, source, random)));
            }
        }
        return made;
    }

    private double factor(Planted fault, Source source, SplittableRandom random) {
        if (fault.isKnocking()) {
            return Draw.logarithmic(random, 0.15, 4) / overNoise(source);
        }
        double part = fault.id().equals("broken-rotor-bars") ? Draw.logarithmic(random, 0.01, 0.3)
                : random.nextDouble() < BEGINNINGS ? Draw.logarithmic(random, 0.05, Sizes.LEAST)
                : Draw.logarithmic(random, Sizes.LEAST, 3);
        return part / loudness(source, sick);
    }

    /** Makes the residual unbalance grow until it takes a part of the boundary B/C in the sick structure. */
    private void grow(double part) {
        for (int i = 0; i < innocent.size(); i++) {
            Sized one = innocent.get(i);
            if (one.name().startsWith("unbalance")) {
                double now = one.factor() * loudness(one.source(), sick);
                double factor = Math.max(0.5, Math.min(6, part / Math.max(1e-9, now)));
                innocent.set(i, new Sized(one.name(), one.source(), one.factor() * factor));
            }
        }
    }

    private double amplitude(Tap tap) {
        Forces forces = forces(TRIAL_SETTLING + TRIAL, new SplittableRandom(seed));
        innocent.stream().filter(one -> one.name().startsWith("unbalance"))
                .forEach(one -> forces.add(one.source(), one.factor()));
        double[] velocity = new Response(sick, forces).of(List.of(tap), (int) (TRIAL_SETTLING * rate), true)[0];
        return Math.sqrt(2) * rms(velocity) / (2 * Math.PI * plant.motorHertz());
    }

    // ---- measuring

    /** A machine as it is told, with recordings by point. */
    record Measured(MachineDescription description, Map<String, Waveform> recordings, Map<String, Waveform> references) {}

    Session firstSession() {
        return first;
    }

    Measured measure(Session session, int visit) {
        SplittableRandom random = new SplittableRandom(seed * 31 + visit);
        Map<String, Waveform> now = record(session, false, random);
        Map<String, Waveform> then = session.references() ? record(session, true, random) : Map.of();
        return new Measured(describe(session), now, then);
    }

    MachineDescription describe(Session session) {
        return told.describe(session, naturalHertz());
    }

    private Map<String, Waveform> record(Session session, boolean reference, SplittableRandom random) {
        List<Told.Point> points = told.points(session.everywhere());
        double spread = session.simultaneous() ? 0 : 2;
        int length = (int) Math.round(session.seconds() * rate);
        Forces forces = forces(SETTLING + session.seconds() + spread, random);
        innocent.forEach(one -> forces.add(one.source(), soundFactor(one, reference)));
        forces.add(noise.seeded(random.split()), noiseFactor);
        if (!reference) {
            guilty.forEach(one -> forces.add(one.source(), one.factor()));
        }
        double[][] motion = respond(forces, points.stream().map(Told.Point::tap).toList(), reference);
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        for (int i = 0; i < points.size(); i++) {
            int from = (int) (random.nextDouble() * spread * rate);
            double[] samples = new double[length];
            for (int k = 0; k < length; k++) {
                samples[k] = motion[i][from + k] + sensorNoise * Math.sqrt(rate / 2) * random.nextGaussian();
            }
            recordings.put(points.get(i).id(), Waveform.ofSi(Quantity.ACCELERATION, rate, samples));
        }
        return recordings;
    }

    /** When it was sound, a machine whose residual unbalance has grown to show the fault had no more than half of it. */
    private double soundFactor(Sized one, boolean reference) {
        boolean grown = faults.stream().anyMatch(fault -> fault.contact() != null) && one.name().startsWith("unbalance");
        return reference && grown ? one.factor() * 0.8 : one.factor();
    }

    private double[][] respond(Forces forces, List<Tap> taps, boolean reference) {
        int settled = (int) (SETTLING * rate);
        Response response = new Response(reference ? sound : sick, forces);
        return reference || contact == null ? response.of(taps, settled, false)
                : response.with(contact, taps, settled, CONTACT_STEPS);
    }

    private List<Double> naturalHertz() {
        List<Double> found = new ArrayList<>();
        List<double[]> gains = allTaps().stream().map(sick::gains).toList();
        for (int mode = 0; mode < sick.count(); mode++) {
            int at = mode;
            double part = gains.stream().mapToDouble(one -> Math.abs(one[at])).max().orElse(0);
            if (sick.hertz(mode) < 1000 && part > 0.1 / Math.sqrt(plant.casings.get(0).mass())) {
                found.add(Math.round(10 * sick.hertz(mode)) / 10.0);
            }
        }
        return found;
    }

    /** What a crew finds in a test, at a site as the engine names it; one outcome in fifty is wrong. */
    boolean observe(String test) {
        SplittableRandom random = new SplittableRandom(seed ^ test.hashCode());
        if (test.equals("speed-peaks")) {
            return random.nextDouble() < (speedPeaks() > PEAK ? 0.98 : 0.02);
        }
        double yes = faults.stream().mapToDouble(fault -> fault.tests().getOrDefault(test, 0.0)).max().orElse(0);
        double base = switch (test) {
            case "trial-mass-answers" -> faults.isEmpty() ? 0.9 : 0.1;
            case "flow-changes" -> 0.3;
            case "load-raises" -> 0.1;
            default -> 0.02;
        };
        return random.nextDouble() < Math.max(base, yes);
    }

    /** Rotor that the first fault of a shaft sits at; else that of the motor. */
    private Rotor suspect() {
        return faults.stream().flatMap(fault -> plant.rotors.stream().filter(one -> fault.site().equals("shaft " + one.id())))
                .findFirst().orElse(plant.rotors.get(0));
    }

    /** How much 1x at the point that it is largest at changes within a tenth of the speed; its forces follow the square. */
    double speedPeaks() {
        double ratio = suspect().ratio();
        double most = 0;
        double change = 1;
        for (Tap sensor : allTaps()) {
            double[] levels = IntStream.rangeClosed(-2, 2).mapToDouble(i -> once(sensor, ratio, 1 + 0.05 * i)).toArray();
            double highest = Arrays.stream(levels).max().orElse(0);
            if (highest > most) {
                most = highest;
                change = highest / Arrays.stream(levels).min().orElse(highest);
            }
        }
        return change;
    }

    /** 1x of a shaft at a sensor at a part of the speed. */
    private double once(Tap sensor, double ratio, double speed) {
        double hertz = plant.motorHertz() * ratio * speed;
        Complex sum = Complex.ZERO;
        for (Sized one : Stream.concat(innocent.stream(), guilty.stream()).toList()) {
            if (one.source() instanceof Lines lines) {
                for (Lines.Line line : lines.lines()) {
                    if (line.line() == 0 && line.hertz() == 0 && Math.abs(line.shaft() / ratio - 1) < 1e-6) {
                        Complex force = ComplexUtils.polar2Complex(Math.abs(one.factor() * line.amplitude()),
                                2 * Math.PI * (line.turns() + (line.amplitude() < 0 ? 0.5 : 0)));
                        sum = sum.add(force.multiply(sick.mobility(line.tap(), sensor, hertz)));
                    }
                }
            }
        }
        return sum.abs() * speed * speed;
    }

    // ---- truth

    long seed() {
        return seed;
    }

    Plant plant() {
        return plant;
    }

    List<Planted> faults() {
        return faults;
    }

    /** Strongest line that the faults make at the usual points, over the floor in 1 Hz and over the boundary B/C. */
    Strength strength() {
        return Strength.of(spectrumOf(false), spectrumOf(true), told.points(false).stream()
                .mapToDouble(point -> limits[plant.housings.indexOf(point.housing())]).toArray(), rate);
    }

    /** Accelerations at the usual points: all that the faults add without noise, or the noise alone. */
    private double[][] spectrumOf(boolean floor) {
        List<Tap> taps = told.points(false).stream().map(Told.Point::tap).toList();
        int settled = (int) (TRIAL_SETTLING * rate);
        double seconds = TRIAL_SETTLING + 2;
        SplittableRandom random = new SplittableRandom(seed + 1);
        if (floor) {
            Forces forces = forces(seconds, random);
            forces.add(noise.seeded(random.split()), noiseFactor);
            return new Response(sick, forces).of(taps, settled, false);
        }
        Forces with = forces(seconds, random.split());
        innocent.forEach(one -> with.add(one.source(), one.factor()));
        guilty.forEach(one -> with.add(one.source(), one.factor()));
        Response response = new Response(sick, with);
        double[][] sum = contact == null ? response.of(taps, settled, false)
                : response.with(contact, taps, settled, CONTACT_STEPS);
        Forces without = forces(seconds, new SplittableRandom(seed + 1).split());
        innocent.forEach(one -> without.add(one.source(), soundFactor(one, true)));
        double[][] rest = new Response(sound, without).of(taps, settled, false);
        for (int i = 0; i < sum.length; i++) {
            for (int k = 0; k < sum[i].length; k++) {
                sum[i][k] -= rest[i][k];
            }
        }
        return sum;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d: %s, %.2f Hz, %d poles, %s%s", seed, plant.kind, plant.motorHertz(),
                plant.poles, faults.isEmpty() ? "healthy" : faults.stream().map(one -> one.id() + " at " + one.site())
                .toList(), first);
    }
}
