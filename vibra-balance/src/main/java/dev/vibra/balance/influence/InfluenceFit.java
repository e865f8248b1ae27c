package dev.vibra.balance.influence;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Influence coefficients from runs: {@code V = V₀ + α·U} fitted to all of them by least squares, so that trial masses
 * may stay on or come off, and runs may be repeated.
 *
 * <p>With one initial run and one run per plane this is the textbook formula {@code α = (V₁ − V₀)/U}.
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class InfluenceFit implements Serializable {
    private static final long serialVersionUID = 1;

    private final InfluenceCoefficients coefficients;
    private final List<Phasor> initial;
    private final int runs;

    private InfluenceFit(InfluenceCoefficients coefficients, List<Phasor> initial, int runs) {
        this.coefficients = Objects.requireNonNull(coefficients, "coefficients");
        this.initial = Require.copy("initial", initial);
        this.runs = Require.atLeast("runs", runs, 2);
        if (this.initial.size() != coefficients.layout().rows()) {
            throw new IllegalArgumentException("initial must be one per reading, " + coefficients.layout().rows() + ": "
                    + this.initial.size());
        }
    }

    private Object readResolve() {
        return new InfluenceFit(coefficients, initial, runs);
    }

    /**
     * Fits coefficients to runs.
     *
     * @param layout what rows and columns stand for
     * @param runs runs, at least one more than there are planes, with masses that tell the planes apart
     * @return the fit
     * @throws IllegalArgumentException if runs are too few, of the wrong shape, or don't tell the planes apart
     */
    public static InfluenceFit of(Layout layout, List<Run> runs) {
        Objects.requireNonNull(layout, "layout");
        Require.copy("runs", runs);
        tooFew(layout, runs).ifPresent(InfluenceFit::refuse);
        int planes = layout.planes().size();
        ComplexLeastSquares system = system(planes, runs);
        alike(system).ifPresent(InfluenceFit::refuse);
        Phasor[][] alpha = new Phasor[layout.rows()][planes];
        Phasor[] initial = new Phasor[layout.rows()];
        for (int i = 0; i < layout.rows(); i++) {
            int row = i;
            Phasor[] x = system.solve(runs.stream().map(run -> run.readings().get(row)).toArray(Phasor[]::new), 0);
            initial[i] = x[0];
            System.arraycopy(x, 1, alpha[i], 0, planes);
        }
        return new InfluenceFit(InfluenceCoefficients.of(layout, alpha), List.of(initial), runs.size());
    }

    /**
     * Says why coefficients can't be fitted to runs.
     *
     * @param layout what rows and columns stand for
     * @param runs runs with a mass for each plane and a reading for each row
     * @return what is missing, as a sentence; empty if they can
     * @throws IllegalArgumentException if a run is of the wrong shape
     */
    public static Optional<String> obstacle(Layout layout, List<Run> runs) {
        Objects.requireNonNull(layout, "layout");
        Require.copy("runs", runs);
        return tooFew(layout, runs).or(() -> alike(system(layout.planes().size(), runs)));
    }

    private static void refuse(String reason) {
        throw new IllegalArgumentException(reason);
    }

    private static Optional<String> tooFew(Layout layout, List<Run> runs) {
        requireShape(layout, runs);
        int needed = layout.planes().size() + 1;
        return runs.size() >= needed ? Optional.empty()
                : Optional.of("runs must be at least one initial run and one trial run per plane, " + needed + ": "
                        + runs.size());
    }

    private static Optional<String> alike(ComplexLeastSquares system) {
        return system.columnConflict() < 1e10 ? Optional.empty()
                : Optional.of("trial masses must tell the planes apart: each plane needs a run in which its mass alone"
                        + " changed, or runs that differ in its mass");
    }

    private static ComplexLeastSquares system(int planes, List<Run> runs) {
        Phasor[][] design = new Phasor[runs.size()][planes + 1];
        for (int r = 0; r < runs.size(); r++) {
            design[r][0] = Phasor.ONE;
            for (int j = 0; j < planes; j++) {
                design[r][j + 1] = runs.get(r).added().get(j);
            }
        }
        return new ComplexLeastSquares(design);
    }

    private static void requireShape(Layout layout, List<Run> runs) {
        for (Run run : runs) {
            if (run.added().size() != layout.planes().size() || run.readings().size() != layout.rows()) {
                throw new IllegalArgumentException(run.name() + " must have " + layout.planes().size()
                        + " masses and " + layout.rows() + " readings: " + run.added().size() + " and "
                        + run.readings().size());
            }
        }
    }

    /**
     * Returns the coefficients.
     *
     * @return the fitted coefficients
     */
    public InfluenceCoefficients coefficients() {
        return coefficients;
    }

    /**
     * Returns the vibration of the rotor with nothing added, as fitted.
     *
     * @return one element per reading, zero-to-peak SI
     */
    public List<Phasor> initial() {
        return initial;
    }

    /**
     * Counts the runs that went in.
     *
     * @return number of runs
     */
    public int runs() {
        return runs;
    }

    /** Returns the coefficients and the count of runs in one line. */
    @Override
    public String toString() {
        return coefficients + ", from " + runs + " runs";
    }
}
