package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** A machine as it is built: casings on feet, a base, rotors, what couples them, what they carry. */
final class Plant {
    /** Kinds of machines that are drawn. */
    enum Kind { MOTOR, PUMP, FAN_ON_PEDESTAL, FAN_ON_MOTOR, BELT_FAN, ONE_STAGE, TWO_STAGES, BLOWER }

    /** Two wheels in mesh; their line of action leans by 20° from the upright. */
    record Mesh(String id, int driving, int driven, int drivingTeeth, int drivenTeeth, double z) {
        double ratio() {
            return (double) drivingTeeth / drivenTeeth;
        }
    }

    /** A belt between two rotors, at an end of both. */
    record Drive(double length, double driving, double driven, double degrees, double slip) {
        double perTurn() {
            return Math.PI * driving / length;
        }
    }

    final Kind kind;
    final double lineHertz;
    final int poles;
    final double slip;
    final Structure structure = new Structure();
    final List<Casing> casings = new ArrayList<>();
    final List<String> parts = new ArrayList<>();
    final List<Rotor> rotors = new ArrayList<>();
    final List<Housing> housings = new ArrayList<>();
    final List<Mesh> meshes = new ArrayList<>();
    final double kilowatts;
    final double height;
    Drive drive;
    int blades;
    int guideVanes;
    int bladed = -1;
    boolean coupled;
    private final SplittableRandom random;
    private final double scale;

    private Plant(SplittableRandom random) {
        this.random = random;
        Kind[] kinds = Kind.values();
        kind = kinds[random.nextInt(kinds.length)];
        lineHertz = random.nextDouble() < 0.7 ? 50 : 60;
        int[] choice = {2, 4, 4, 6};
        poles = choice[random.nextInt(choice.length)];
        slip = random.nextDouble(0.006, 0.025);
        kilowatts = Math.round(Draw.logarithmic(random, 18.5, 250));
        height = Math.round(10 * Math.min(315, 140 + 25 * Math.log(kilowatts) + random.nextDouble(0, 50))) / 10e3;
        scale = kilowatts;
    }

    static Plant draw(SplittableRandom random) {
        Plant plant = new Plant(random);
        plant.build();
        return plant;
    }

    double motorHertz() {
        return lineHertz * (1 - slip) * 2 / poles;
    }

    double hertz(int rotor) {
        return motorHertz() * rotors.get(rotor).ratio();
    }

    int firstRotorOf(int part) {
        for (int i = 0; i < rotors.size(); i++) {
            if (rotors.get(i).part() == part) {
                return i;
            }
        }
        throw new IllegalArgumentException("no rotor in part " + part);
    }

    private void build() {
        double mass = 60 * Math.pow(scale / 10, 0.8) * random.nextDouble(0.7, 1.4);
        boolean onMotor = kind == Kind.FAN_ON_MOTOR;
        casing("motor", mass);
        rotor("motor", 0, 1, 1, onMotor, 0);
        switch (kind) {
            case MOTOR -> { }
            case PUMP -> driven("pump", mass, random.nextInt(5, 9), random.nextBoolean() ? 1 : random.nextInt(7, 14));
            case BLOWER -> driven("blower", mass, random.nextInt(9, 18), random.nextInt(1, 16));
            case FAN_ON_PEDESTAL -> driven("fan", mass, random.nextInt(8, 17), 1);
            case FAN_ON_MOTOR -> bladesOn(0, random.nextInt(6, 13), 1);
            case BELT_FAN -> beltFan(mass);
            default -> gearbox(mass, kind == Kind.TWO_STAGES);
        }
        base();
    }

    private void bladesOn(int rotor, int number, int vanes) {
        bladed = rotor;
        blades = number;
        guideVanes = vanes;
    }

    private void driven(String name, double mass, int number, int vanes) {
        casing(name, mass * random.nextDouble(0.6, 1.6));
        rotor(name, 1, 1, 1, random.nextDouble() < (kind == Kind.BLOWER ? 0.3 : 0.6), 0);
        couple();
        bladesOn(1, number, vanes);
    }

    private void beltFan(double mass) {
        double driving = random.nextDouble(0.14, 0.3);
        double driven = driving * random.nextDouble(0.8, 2.2);
        double apart = random.nextDouble(0.6, 1.4) + driving;
        double length = 2 * apart + Math.PI * (driving + driven) / 2 + Math.pow(driven - driving, 2) / (4 * apart);
        double creep = random.nextDouble(0.003, 0.015);
        drive = new Drive(length, driving, driven, random.nextDouble(-60, 60), creep);
        casing("fan", mass * random.nextDouble(0.6, 1.6));
        rotor("fan", 1, driving / driven * (1 - creep), 1, random.nextDouble() < 0.5, 0);
        Tap across = beltTap(0).minus(beltTap(1));
        structure.spring("belt", across, 2e5 * random.nextDouble(0.5, 3));
        bladesOn(1, random.nextInt(6, 13), 1);
    }

    /** Pull of the belt on a rotor along the line of centres. */
    Tap beltTap(int rotor) {
        Rotor one = rotors.get(rotor);
        double z = one.bearing(0) * 1.25;
        double angle = Math.toRadians(drive.degrees());
        return one.x(z).times(Math.cos(angle)).plus(Math.sin(angle), one.y(z));
    }

    private void gearbox(double mass, boolean twoStages) {
        casing("gearbox", mass * random.nextDouble(0.7, 1.5));
        Casing casing = casings.get(1);
        int[] teeth = {random.nextInt(17, 36), random.nextInt(40, 97), random.nextInt(15, 28), random.nextInt(40, 83)};
        double second = (double) teeth[0] / teeth[1];
        rotor("input", 1, 1, 1, false, -0.3 * casing.height());
        rotor(twoStages ? "middle" : "output", 1, second, -1, false, 0.3 * casing.height());
        meshes.add(new Mesh("stage 1", 1, 2, teeth[0], teeth[1], -0.3 * casing.halfLength()));
        if (twoStages) {
            rotor("output", 1, second * teeth[2] / teeth[3], 1, false, 0.8 * casing.height());
            meshes.add(new Mesh("stage 2", 2, 3, teeth[2], teeth[3], 0.3 * casing.halfLength()));
        }
        for (Mesh mesh : meshes) {
            structure.spring("mesh", action(mesh), 1e8 * Math.pow(scale / 50, 0.5) * random.nextDouble(0.3, 2));
        }
        couple();
    }

    /** Motion of two wheels towards each other along their line of action. */
    Tap action(Mesh mesh) {
        Rotor one = rotors.get(mesh.driving());
        Rotor other = rotors.get(mesh.driven());
        double lean = Math.toRadians(20);
        Tap across = one.x(mesh.z()).minus(other.x(mesh.z())).times(Math.sin(lean));
        return across.plus(Math.cos(lean), one.y(mesh.z()).minus(other.y(mesh.z())));
    }

    private void casing(String name, double mass) {
        double half = height * random.nextDouble(1.1, 2.2);
        parts.add(name);
        casings.add(Casing.of(structure, mass, half, height, random));
    }

    private void rotor(String id, int part, double ratio, double sense, boolean overhung, double offset) {
        Casing casing = casings.get(part);
        double half = casing.halfLength();
        double drivenEnd = part == 0 ? 1 : -1;
        double[] bearings = {0.8 * half * drivenEnd, -0.8 * half * drivenEnd * random.nextDouble(0.85, 1)};
        boolean wheelAtDriveEnd = part == 0;
        double centre = overhung ? bearings[wheelAtDriveEnd ? 0 : 1] * random.nextDouble(1.25, 1.7)
                : half * random.nextDouble(-0.25, 0.25);
        double share = random.nextDouble(0.2, 0.45) * (offset == 0 ? 1 : 0.4);
        double fastest = motorHertz() * Math.max(1, ratio);
        Rotor rotor = Rotor.in(structure, casing, new Rotor.Layout(id, part, ratio, sense, bearings, centre, offset),
                share * casing.mass(), Draw.logarithmic(random, 2.2, 8) * fastest, random.nextDouble(0.6, 1));
        rotors.add(rotor);
        boolean inner = id.equals("middle");
        String letter = part == 0 ? "M" : id.equals("input") || id.equals("output") ? "G" : id.substring(0, 1).toUpperCase();
        for (int end = 0; end < 2 && !inner; end++) {
            boolean outside = id.equals("input") && end == 1 || id.equals("output") && end == 0;
            if (!outside) {
                String place = id.equals("input") ? "IN" : id.equals("output") ? "OUT" : end == 0 ? "DE" : "NDE";
                housings.add(housing(letter + "-" + place, rotors.size() - 1, end));
            }
        }
    }

    private Housing housing(String name, int index, int end) {
        Rotor rotor = rotors.get(index);
        Casing casing = casings.get(rotor.part());
        double z = rotor.bearing(end);
        double light = casing.mass() * random.nextDouble(0.02, 0.05);
        int shield = structure.mass(light);
        Tap bends = Tap.of(shield).minus(casing.z(rotor.offset(), 0.3 * height));
        structure.spring("shield", bends, light * Math.pow(2 * Math.PI * Draw.logarithmic(random, 120, 600), 2));
        Tap[] taps = {casing.x(0, z), casing.y(rotor.offset(), z), Tap.of(shield)};
        Tap alone = Tap.of(shield);
        Tap knock = taps[1].times(0.8).plus(0.6, taps[0]);
        for (int i = 0; i < 2; i++) {
            double hertz = Draw.logarithmic(random, 1000, 3300);
            double local = casing.mass() * 0.01;
            int degree = structure.mass(local);
            structure.spring("housing", Tap.of(degree), local * Math.pow(2 * Math.PI * hertz, 2));
            for (int direction = 0; direction < 3; direction++) {
                taps[direction] = taps[direction].plus(random.nextDouble(-1, 1), Tap.of(degree));
            }
            knock = knock.plus(random.nextDouble(0.3, 1), Tap.of(degree));
        }
        return new Housing(name, index, end, taps, knock, alone);
    }

    private void couple() {
        coupled = true;
        double stiffness = rotors.get(0).bearingStiffness() * Draw.logarithmic(random, 0.003, 0.08);
        structure.spring("coupling", coupling(0), stiffness);
        structure.spring("coupling", coupling(1), stiffness);
        structure.spring("coupling", coupling(2), stiffness * random.nextDouble(0.1, 1));
    }

    /** Motion of the two halves of the coupling against each other: level, upright, along. */
    Tap coupling(int direction) {
        return half(0, direction).minus(half(1, direction));
    }

    /** Motion of one half of the coupling. */
    Tap half(int side, int direction) {
        Rotor rotor = rotors.get(side == 0 ? 0 : firstRotorOf(1));
        double z = rotor.bearing(0) * 1.3;
        return direction == 0 ? rotor.x(z) : direction == 1 ? rotor.y(z) : rotor.z();
    }

    /** Feet stand on a base that gives way, or on the ground; casings bounce at one to five times the speed. */
    private void base() {
        boolean floating = random.nextDouble() < 0.6 && parts.size() > 1;
        double total = casings.stream().mapToDouble(Casing::mass).sum();
        Casing base = floating ? Casing.of(structure, total * random.nextDouble(0.5, 2), 3 * height, 0.3 * height, random)
                : null;
        if (floating) {
            mount("base", base, null, 0, Draw.logarithmic(random, 0.35, 2.5) * motorHertz());
        }
        double place = 0;
        for (int part = 0; part < casings.size(); part++) {
            double slowest = part == 0 || rotors.size() < 2 ? motorHertz() : hertz(firstRotorOf(part));
            double shift = casings.size() == 1 ? 0 : (part == 0 ? -1.5 : 1.5) * height;
            place = floating ? shift : 0;
            mount("foot " + parts.get(part), casings.get(part), base, place,
                    Draw.logarithmic(random, 1.25, 5) * slowest);
        }
    }

    private void mount(String name, Casing casing, Casing base, double shift, double bounceHertz) {
        double stiffness = casing.mass() * 1.3 * Math.pow(2 * Math.PI * bounceHertz, 2) / 4;
        double level = random.nextDouble(0.3, 0.9);
        double along = random.nextDouble(0.3, 1);
        for (int corner = 0; corner < 4; corner++) {
            double x = (corner % 2 == 0 ? 1 : -1) * 0.9 * height;
            double z = (corner < 2 ? 1 : -1) * 0.75 * casing.halfLength();
            double spread = random.nextDouble(0.75, 1.25);
            Tap[] feet = foot(casing, x, z);
            if (base != null) {
                feet[0] = feet[0].minus(base.x(0, z + shift));
                feet[1] = feet[1].minus(base.y(x, z + shift));
                feet[2] = feet[2].minus(base.z(x, 0));
            }
            structure.spring(name + " " + corner, feet[1], stiffness * spread);
            structure.spring(name + " " + corner + " level", feet[0], stiffness * spread * level);
            structure.spring(name + " " + corner + " level", feet[2], stiffness * spread * along);
        }
    }

    private Tap[] foot(Casing casing, double x, double z) {
        double below = -casing.height();
        return new Tap[] {casing.x(below, z), casing.y(x, z), casing.z(x, below)};
    }
}
