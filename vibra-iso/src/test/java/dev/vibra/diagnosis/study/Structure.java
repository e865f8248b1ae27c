package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/** Masses with springs between them. */
final class Structure {
    private final List<Double> masses = new ArrayList<>();
    private final List<Spring> springs = new ArrayList<>();

    /** A spring along a motion; its name tells which may come loose. */
    record Spring(String name, Tap along, double stiffness) {}

    /** Adds a mass, or an inertia, and returns its degree of freedom. */
    int mass(double mass) {
        masses.add(mass);
        return masses.size() - 1;
    }

    void spring(String name, Tap along, double stiffness) {
        springs.add(new Spring(name, along, stiffness));
    }

    List<Spring> springs() {
        return springs;
    }

    /** The same structure with other stiffness of some of its springs. */
    Structure with(Predicate<Spring> which, double factor) {
        Structure changed = new Structure();
        changed.masses.addAll(masses);
        springs.forEach(one -> changed.spring(one.name(), one.along(),
                which.test(one) ? factor * one.stiffness() : one.stiffness()));
        return changed;
    }

    /** Solves for the modes; damping ratio by natural frequency in Hz. */
    Modes modes(ToDoubleFunction<Double> damping) {
        int size = masses.size();
        double[][] stiffness = new double[size][size];
        for (Spring spring : springs) {
            var weights = spring.along().weights();
            weights.forEach((i, wi) -> weights.forEach((j, wj) -> stiffness[i][j] += spring.stiffness() * wi * wj
                    / Math.sqrt(masses.get(i) * masses.get(j))));
        }
        // Rounded products differ by their order; a matrix that isn't symmetric gets vectors that aren't orthogonal.
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                stiffness[i][j] = stiffness[j][i];
            }
        }
        EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(stiffness, false));
        double[] omegas = new double[size];
        double[] ratios = new double[size];
        double[][] shapes = new double[size][];
        for (int mode = 0; mode < size; mode++) {
            omegas[mode] = Math.sqrt(Math.max(eigen.getRealEigenvalue(mode), 1));
            ratios[mode] = damping.applyAsDouble(omegas[mode] / (2 * Math.PI));
            shapes[mode] = eigen.getEigenvector(mode).toArray();
            for (int i = 0; i < size; i++) {
                shapes[mode][i] /= Math.sqrt(masses.get(i));
            }
        }
        return new Modes(omegas, ratios, shapes);
    }
}
