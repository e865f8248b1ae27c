package dev.vibra.simulation;

import dev.vibra.severity.Support;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws how a machine stands: for each rotor's casing translation, rocking and pitching, for each housing and
 * direction a mode of its own, some modes of the base; all of them leak into other directions and housings. Ranges
 * are assumptions.
 */
final class StructureDraft {
    /** A sound machine does not run within this of a mode of its casing. */
    private static final double CLEAR = 0.2;
    /** Parts of sound machines that do. */
    private static final double UNLUCKY = 0.03;

    private final Draws draws;
    private final int housings;
    private final List<PlanParts.Housing> all;
    private final List<PlanParts.Rotor> rotors;
    private final double mainHertz;
    private final boolean rigid;
    /** How far motion in one direction moves the others: a stiff box or a weldment of sheets. */
    private final double leak;
    private final List<Structure.Mode> modes = new ArrayList<>();

    StructureDraft(Draws draws, List<PlanParts.Housing> housings, List<PlanParts.Rotor> rotors, double mainHertz,
            Support support) {
        this.draws = draws;
        this.housings = housings.size();
        this.all = housings;
        this.rotors = rotors;
        this.mainHertz = mainHertz;
        this.rigid = support == Support.RIGID;
        this.leak = draws.logUniform(0.1, 0.5);
    }

    Structure structure() {
        double fastest = rotors.stream().mapToDouble(rotor -> rotor.ratio() * mainHertz).max().orElseThrow();
        for (PlanParts.Rotor rotor : rotors) {
            addCasing(rotor, fastest);
        }
        for (int at = 0; at < Excitation.DIRECTIONS * housings; at++) {
            addLocal(at, 150, 900);
            addLocal(at, 700, 3000);
        }
        for (int i = 0; i < 2; i++) {
            double[] shape = new double[Excitation.DIRECTIONS * housings];
            for (int at = 0; at < shape.length; at++) {
                shape[at] = draws.normal(0, 0.5);
            }
            double hertz = fastest * (rigid ? draws.logUniform(1.4, 5) : draws.logUniform(0.3, 4));
            modes.add(mode(hertz, draws.logUniform(0.8, 3), shape));
        }
        return Structure.of(modes);
    }

    private void addCasing(PlanParts.Rotor rotor, double fastest) {
        double level = fastest * (rigid ? draws.logUniform(1.35, 3.2) : draws.logUniform(0.35, 1.6));
        double upright = level * draws.logUniform(1.05, 2);
        addPair(rotor, Excitation.HORIZONTAL, level, 1);
        addPair(rotor, Excitation.HORIZONTAL, level * draws.logUniform(1.15, 2.2), -1);
        addPair(rotor, Excitation.VERTICAL, upright, 1);
        addPair(rotor, Excitation.VERTICAL, upright * draws.logUniform(1.15, 2.2), -1);
        addPair(rotor, Excitation.AXIAL, level * draws.logUniform(0.9, 1.8), 1);
    }

    /** Both ends of a rotor move together or against each other; rocking and pitching move them along the shaft too. */
    private void addPair(PlanParts.Rotor rotor, int direction, double hertz, double sense) {
        double[] shape = leaks(rotor.first());
        shape[Excitation.DIRECTIONS * rotor.first() + direction] += draws.uniform(0.7, 1.3);
        shape[Excitation.DIRECTIONS * rotor.second() + direction] += sense * draws.uniform(0.7, 1.3);
        if (sense < 0) {
            double along = draws.normal(0, 0.35);
            shape[Excitation.DIRECTIONS * rotor.first() + Excitation.AXIAL] += along;
            shape[Excitation.DIRECTIONS * rotor.second() + Excitation.AXIAL] += along * draws.uniform(0.7, 1.3);
        }
        modes.add(mode(hertz, sense > 0 ? 1 : 0.5, shape));
    }

    private double[] leaks(int housing) {
        double[] shape = new double[Excitation.DIRECTIONS * housings];
        for (int at = 0; at < shape.length; at++) {
            boolean same = all.get(at / Excitation.DIRECTIONS).part().equals(all.get(housing).part());
            shape[at] = draws.normal(0, same ? leak : leak / 3);
        }
        return shape;
    }

    private void addLocal(int at, double lowest, double highest) {
        double[] shape = leaks(at / Excitation.DIRECTIONS);
        shape[at] += 1;
        modes.add(mode(draws.logUniform(lowest, highest), draws.logUniform(0.15, 0.6), shape));
    }

    private Structure.Mode mode(double hertz, double mass, double[] shape) {
        double moved = hertz;
        if (!draws.chance(UNLUCKY)) {
            // Moved away from the slowest shaft first, so that it can't be pushed back onto it.
            for (PlanParts.Rotor rotor : rotors.stream().sorted((a, b) -> Double.compare(a.ratio(),
                    b.ratio())).toList()) {
                double ratio = moved / (rotor.ratio() * mainHertz);
                moved = Math.abs(ratio - 1) < CLEAR ? moved * (1 + CLEAR + draws.uniform(0, 0.1)) / ratio : moved;
            }
        }
        return new Structure.Mode(moved, draws.logUniform(0.012, 0.06), mass, shape);
    }
}
