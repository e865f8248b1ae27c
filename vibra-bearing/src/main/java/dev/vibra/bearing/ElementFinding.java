package dev.vibra.bearing;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Verdict on one element of a bearing, with all that it rests on. */
public final class ElementFinding implements Serializable {
    private static final long serialVersionUID = 1;

    private final BearingElement element;
    private final ElementVerdict verdict;
    private final double expectedHertz;
    private final Symptom symptom;
    private final double detectableDepth;
    private final String reason;

    ElementFinding(BearingElement element, ElementVerdict verdict, double expectedHertz, Symptom symptom,
            double detectableDepth, String reason) {
        this.element = Objects.requireNonNull(element);
        this.verdict = Objects.requireNonNull(verdict);
        this.expectedHertz = expectedHertz;
        this.symptom = symptom;
        this.detectableDepth = detectableDepth;
        this.reason = Objects.requireNonNull(reason);
    }

    /** What was seen in one band at the rate of an element. */
    record Symptom(Band band, double hertz, double depth, double log10Probability, List<EnvelopeLine> lines)
            implements Serializable {
        private static final long serialVersionUID = 1;
    }

    /**
     * Returns the element.
     *
     * @return the element
     */
    public BearingElement element() {
        return element;
    }

    /**
     * Returns the verdict.
     *
     * @return the verdict
     */
    public ElementVerdict verdict() {
        return verdict;
    }

    /**
     * Returns the kinematic rate at the given speed.
     *
     * @return rate in Hz
     */
    public double expectedHertz() {
        return expectedHertz;
    }

    /**
     * Returns the rate that was found, fitted to all harmonics seen.
     *
     * @return rate in Hz; empty if nothing significant was found
     */
    public OptionalDouble foundHertz() {
        return symptom == null ? OptionalDouble.empty() : OptionalDouble.of(symptom.hertz());
    }

    /**
     * Returns the depth of pulsation that the fundamental and at least one other harmonic reach.
     *
     * @return depth, 0 to 2; 0 if nothing significant was found
     */
    public double depth() {
        return symptom == null ? 0 : symptom.depth();
    }

    /**
     * Returns the depth of pulsation that two harmonics of this element would have needed to be found in every band
     * tried: the sensitivity of the recording.
     *
     * @return depth above zero; infinite if some band has no room for two harmonics
     */
    public double detectableDepth() {
        return detectableDepth;
    }

    /**
     * Returns the probability that stationary noise makes such a family of harmonics at any place searched, as decimal
     * logarithm: corrected for all rates, elements and bands tried.
     *
     * @return decimal logarithm, 0 (certain) or less; 0 if nothing significant was found
     */
    public double log10Probability() {
        return symptom == null ? 0 : symptom.log10Probability();
    }

    /**
     * Returns the band whose envelope shows what was found.
     *
     * @return the band; empty if nothing significant was found
     */
    public Optional<Band> band() {
        return symptom == null ? Optional.empty() : Optional.of(symptom.band());
    }

    /**
     * Returns the lines that carry the evidence, harmonics first, then sidebands.
     *
     * @return the lines, unmodifiable; empty if nothing significant was found
     */
    public List<EnvelopeLine> lines() {
        return symptom == null ? List.of() : symptom.lines();
    }

    /**
     * Returns why the verdict is what it is, in words and figures.
     *
     * @return one sentence
     */
    public String reason() {
        return reason;
    }

    /**
     * Returns the evidence in one line for a report: reason, rates, probability, lines.
     *
     * @return the evidence
     */
    public String evidence() {
        if (symptom == null) {
            return reason;
        }
        return reason + "; " + Digits.significant(symptom.hertz(), 5) + " Hz found, " + deviation()
                + " % off the kinematic rate; envelope of " + symptom.band() + "; chance in noise "
                + chance(symptom.log10Probability()) + "; " + lines().stream().map(EnvelopeLine::toString)
                .collect(Collectors.joining(", "));
    }

    private String deviation() {
        double percent = 100 * (symptom.hertz() / expectedHertz - 1);
        return (percent < 0 ? "" : "+") + Digits.significant(percent, 2);
    }

    /** Below 1e-12 the law of the noise is an extrapolation: no more is claimed. */
    private static String chance(double log10) {
        return log10 < -12 ? "below 1e-12" : Digits.significant(Math.pow(10, log10), 2);
    }

    /** Returns element, verdict and, unless absent, where it was found, as in {@code outer race present (107.6 Hz)}. */
    @Override
    public String toString() {
        boolean placed = symptom != null && verdict != ElementVerdict.ABSENT;
        return element + " " + verdict + (placed ? " (" + Digits.significant(symptom.hertz(), 4) + " Hz)" : "");
    }
}
