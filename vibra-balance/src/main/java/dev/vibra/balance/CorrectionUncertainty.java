package dev.vibra.balance;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.uncertainty.Ellipse;
import dev.vibra.balance.uncertainty.VectorCovariance;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How far corrections may be off because readings scatter, and what that does to what remains.
 *
 * <p>Linear propagation of the scatter of every reading, and of stored coefficients where their scatter was told; normal
 * errors assumed. Errors of masses and angles are not in it.
 *
 * @see "JCGM 102:2011, propagation of uncertainty to several output quantities"
 */
@SuppressWarnings("serial") // the collections are unmodifiable copies, which are serializable
public final class CorrectionUncertainty implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<String> planes;
    private final List<Ellipse> masses;
    private final List<Ellipse> residuals;
    private final GradeProbability gradeProbability; // null without tolerance or radius

    private CorrectionUncertainty(List<String> planes, List<Ellipse> masses, List<Ellipse> residuals,
            GradeProbability gradeProbability) {
        this.planes = planes;
        this.masses = List.copyOf(masses);
        this.residuals = List.copyOf(residuals);
        this.gradeProbability = gradeProbability;
    }

    static CorrectionUncertainty of(Setup setup, InfluenceCoefficients alpha, ErrorPropagation errors, Phasor[] masses,
            Phasor[] predicted) {
        Layout layout = setup.layout();
        VectorCovariance covariance = errors.covariance();
        List<Ellipse> ofMasses = new ArrayList<>();
        boolean radiiKnown = true;
        for (int j = 0; j < masses.length; j++) {
            // Unbalance at the lever of the plane, told as grams there.
            double perGram = 1000 / layout.lever(j);
            ofMasses.add(covariance.times(perGram * perGram).ellipse(j, masses[j].times(perGram), 0.95));
            radiiKnown &= layout.radiusKnown(j);
        }
        Phasor[] nothing = new Phasor[masses.length];
        Arrays.fill(nothing, Phasor.ZERO);
        GradeProbability probability = radiiKnown && setup.tolerance().isPresent()
                ? GradeProbability.of(setup, errors, nothing) : null;
        return new CorrectionUncertainty(layout.planes(), ofMasses, ofResiduals(setup, alpha, covariance, predicted),
                probability);
    }

    /** Errors of the corrections seen at the sensors, in the unit and detector of each. */
    private static List<Ellipse> ofResiduals(Setup setup, InfluenceCoefficients alpha, VectorCovariance covariance,
            Phasor[] predicted) {
        Layout layout = setup.layout();
        VectorCovariance atSensors = covariance.mapped(predicted.length, alpha::response);
        List<Ellipse> out = new ArrayList<>();
        for (int i = 0; i < predicted.length; i++) {
            double shown = layout.sensorOfRow(i).detector().ofUnitSine() / layout.sensorOfRow(i).unit().toSi();
            out.add(atSensors.times(shown * shown).ellipse(i, predicted[i].times(shown), 0.95));
        }
        return out;
    }

    /**
     * Returns the ellipse that holds the right correction of a plane with 95 %.
     *
     * @param plane name of the plane
     * @return ellipse in g at the radius of the plane, arguments with rotation
     * @throws IllegalArgumentException if there is no such plane
     */
    public Ellipse ofCorrection(String plane) {
        int index = planes.indexOf(plane);
        if (index < 0) {
            throw new IllegalArgumentException("plane must be one of " + String.join(", ", planes) + ": " + plane);
        }
        return masses.get(index);
    }

    /**
     * Returns the ellipses that hold the vibration left after the corrections with 95 % each.
     *
     * @return one ellipse per reading of a run, in the unit and detector of its sensor, arguments as leads
     */
    public List<Ellipse> ofPredicted() {
        return residuals;
    }

    /**
     * Returns the probability that the grade will be reached by these corrections.
     *
     * @return the probability; empty without a tolerance or if the radius of a plane was left open
     */
    public Optional<GradeProbability> gradeProbability() {
        return Optional.ofNullable(gradeProbability);
    }

    /** Returns the half axes of the corrections and the probability in one line. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        for (int j = 0; j < planes.size(); j++) {
            parts.add(planes.get(j) + " ± " + Digits.significant(masses.get(j).major(), 2) + " g and ± "
                    + Digits.significant(masses.get(j).minor(), 2) + " g across");
        }
        String text = String.join("; ", parts) + " (95 % ellipses)";
        return gradeProbability == null ? text : text + "; then " + gradeProbability;
    }
}
