package dev.vibra.simulation;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A machine at work: the causes of its vibration, those that belong to it and those of its faults, and how it stands.
 * Fault models add causes and change how it stands; sizes are fixed at the end, by what the points then feel.
 */
final class Scene {
    private static final double ABOVE = 4;

    private final MachinePlan plan;
    private final Map<String, Cause> sound = new LinkedHashMap<>();
    private final List<Cause> faulty = new ArrayList<>();
    private final Map<Cause, Double> factors = new IdentityHashMap<>();
    private Structure structure;

    Scene(MachinePlan plan) {
        this.plan = plan;
        this.structure = plan.parts().structure();
    }

    MachinePlan plan() {
        return plan;
    }

    PlanParts parts() {
        return plan.parts();
    }

    double mainHertz() {
        return plan.parts().supply().mainHertz();
    }

    double hertz(PlanParts.Rotor rotor) {
        return rotor.ratio() * mainHertz();
    }

    /** Begins forces at a multiple of the main speed and an offset. */
    Excitation forces(double order, double offsetHertz) {
        return Excitation.of(order, offsetHertz, plan.housings());
    }

    Structure structure() {
        return structure;
    }

    void change(Structure other) {
        structure = other;
    }

    /** Names a cause, so that a fault can build on it. */
    void addSound(String name, Cause cause) {
        sound.put(name, cause);
    }

    Optional<Cause> sound(String name) {
        return Optional.ofNullable(sound.get(name));
    }

    void addFault(Cause cause) {
        faulty.add(cause);
    }

    List<Cause> sound() {
        return List.copyOf(sound.values());
    }

    List<Cause> faulty() {
        return faulty;
    }

    /**
     * Rms velocity at a point of what turns with a shaft, if its speed were another one and forces grew with its
     * square.
     *
     * @param order order of the shaft
     * @param part speed over the usual one
     */
    double velocityAtSpeed(double order, double part, int point) {
        double re = 0;
        double im = 0;
        List<Cause> all = new ArrayList<>(sound());
        all.addAll(faulty);
        for (Cause cause : all) {
            double factor = faulty.contains(cause) ? factorOfFault(cause) : factorOfSound(cause);
            for (Excitation excitation : cause.excitations()) {
                if (excitation.offsetHertz() == 0 && Math.abs(excitation.order() / order - 1) < 1e-9) {
                    double[][] motion = structure.respond(excitation, order * mainHertz() * part);
                    PlanParts.Point at = parts().points().get(point);
                    int place = Excitation.DIRECTIONS * at.housing() + at.direction();
                    re += factor * motion[0][place];
                    im += factor * motion[1][place];
                }
            }
        }
        return Math.sqrt(2) * Math.PI * order * mainHertz() * part * part * part * Math.hypot(re, im);
    }

    /** Factor of the forces of a sound cause, which the reference has too; it is worked out once. */
    double factorOfSound(Cause cause) {
        return factors.computeIfAbsent(cause, one -> factor(one, lines(one, plan.parts().structure())));
    }

    /** The same of a fault, once all faults have changed how the machine stands. */
    private double factorOfFault(Cause cause) {
        return factors.computeIfAbsent(cause, one -> factor(one, lines(one, structure)));
    }

    /** Lines of the causes of the sound machine, as a structure shows them. */
    List<Line> soundLines(Structure seen, List<Double> scatter) {
        List<Line> all = new ArrayList<>();
        List<Cause> causes = sound();
        for (int i = 0; i < causes.size(); i++) {
            double factor = scatter.get(i) * factorOfSound(causes.get(i));
            lines(causes.get(i), seen).forEach(line -> all.add(line.scaled(factor)));
        }
        return all;
    }

    List<Line> faultLines() {
        List<Line> all = new ArrayList<>();
        for (Cause cause : faulty) {
            double factor = factorOfFault(cause);
            lines(cause, structure).forEach(line -> all.add(line.scaled(factor)));
        }
        return all;
    }

    /** Above the recording's band nothing is recorded; below a tenth of a hertz nothing vibrates. */
    private List<Line> lines(Cause cause, Structure seen) {
        List<Line> lines = new ArrayList<>();
        for (Excitation excitation : cause.excitations()) {
            double hertz = excitation.hertz(mainHertz());
            if (hertz > 0.1 && hertz < 0.42 * parts().sampling().hertz()) {
                lines.add(line(excitation, hertz, seen, cause));
            }
        }
        return lines;
    }

    private Line line(Excitation excitation, double hertz, Structure seen, Cause cause) {
        double[][] motion = seen.respond(excitation, hertz);
        List<PlanParts.Point> points = parts().points();
        double[] re = new double[points.size()];
        double[] im = new double[points.size()];
        double omega = 2 * Math.PI * hertz;
        for (int p = 0; p < re.length; p++) {
            PlanParts.Point point = points.get(p);
            int at = Excitation.DIRECTIONS * point.housing() + point.direction();
            double r = hertz / point.resonanceHertz();
            double factor = -omega * omega * point.factor() / (1 - r * r);
            re[p] = factor * motion[0][at];
            im[p] = factor * motion[1][at];
        }
        return new Line(excitation.order(), excitation.offsetHertz(), re, im, cause.wander(), cause.origin(),
                actsAtMotor(excitation));
    }

    /** More than three quarters of the squared forces act at the motor's two housings. */
    private static boolean actsAtMotor(Excitation excitation) {
        double motor = 0;
        double all = 0;
        for (int at = 0; at < excitation.size(); at++) {
            double square = excitation.re(at) * excitation.re(at) + excitation.im(at) * excitation.im(at);
            motor += at < 2 * Excitation.DIRECTIONS ? square : 0;
            all += square;
        }
        return motor > 0.75 * all;
    }

    /**
     * The strongest point decides. What lies between 2 Hz and 1000 Hz counts; lines above, as of a fast mesh, don't make
     * it more than {@value #ABOVE} times as large.
     */
    private double factor(Cause cause, List<Line> lines) {
        if (!cause.isRelative()) {
            return cause.level();
        }
        double most = most(lines, 2, 1000);
        most = Math.max(most, most(lines, 0, Double.POSITIVE_INFINITY) / ABOVE);
        return most > 0 ? cause.level() / most : 0;
    }

    private double most(List<Line> lines, double lowest, double highest) {
        double most = 0;
        for (int p = 0; p < parts().points().size(); p++) {
            double square = 0;
            for (Line line : lines) {
                double hertz = line.hertz(mainHertz());
                double velocity = hertz >= lowest && hertz <= highest ? line.velocity(p, mainHertz()) : 0;
                square += velocity * velocity;
            }
            most = Math.max(most, Math.sqrt(square) / parts().points().get(p).limit());
        }
        return most;
    }
}
