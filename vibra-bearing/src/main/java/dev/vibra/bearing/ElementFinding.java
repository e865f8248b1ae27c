package dev.vibra.bearing;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Verdict on one element of a bearing, with all that it rests on. */
public final class ElementFinding implements Serializable {
    private static final long serialVersionUID = 2;

    private final BearingElement element;
    private final ElementVerdict verdict;
    private final double expectedHertz;
    private final Pulsation pulsation;
    private final double bandRms;
    private final Double detectableDepth;
    private final String reason;

    /** An infinite detectable depth means that there is none; the pulsation may be null, its band then has no level. */
    ElementFinding(BearingElement element, ElementVerdict verdict, double expectedHertz, Pulsation pulsation,
            double bandRms, double detectableDepth, String reason) {
        this.element = Objects.requireNonNull(element, "element");
        this.verdict = Objects.requireNonNull(verdict, "verdict");
        this.expectedHertz = Require.notNegative("expectedHertz", expectedHertz, "Hz");
        this.pulsation = pulsation;
        this.bandRms = Require.notNegative("bandRms", bandRms, "m/s²");
        if (verdict == ElementVerdict.PRESENT) {
            DefectExtent.of(Objects.requireNonNull(pulsation, "pulsation"), bandRms);
        }
        if (!(detectableDepth >= 0)) {
            throw Require.failure("detectableDepth", "zero or more", detectableDepth);
        }
        this.detectableDepth = detectableDepth < Double.POSITIVE_INFINITY ? detectableDepth : null;
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    private Object readResolve() {
        return new ElementFinding(element, verdict, expectedHertz, pulsation, bandRms,
                detectableDepth == null ? Double.POSITIVE_INFINITY : Require.finite("detectableDepth", detectableDepth),
                reason);
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
     * Returns the pulsation that was found at the rate, whatever it was taken for in the end.
     *
     * @return the deepest significant one; empty if nothing significant was found
     */
    public Optional<Pulsation> pulsation() {
        return Optional.ofNullable(pulsation);
    }

    /**
     * Returns what the recording says of the extent of the defect, where one is present.
     *
     * @return extent; empty unless {@link ElementVerdict#PRESENT}
     */
    public Optional<DefectExtent> extent() {
        return verdict == ElementVerdict.PRESENT ? Optional.of(DefectExtent.of(pulsation, bandRms)) : Optional.empty();
    }

    /**
     * Returns the rate that was found, fitted to all harmonics seen.
     *
     * @return rate in Hz; empty if nothing significant was found
     */
    public OptionalDouble foundHertz() {
        return pulsation == null ? OptionalDouble.empty() : OptionalDouble.of(pulsation.hertz());
    }

    /**
     * Returns the lines that carry the evidence, harmonics first, then sidebands.
     *
     * @return the lines, unmodifiable; empty if nothing significant was found
     */
    public List<EnvelopeLine> lines() {
        return pulsation == null ? List.of() : pulsation.lines();
    }

    /**
     * Returns the depth of pulsation that two harmonics of this element would have needed to be found in every band
     * tried: the sensitivity of the recording.
     *
     * @return depth above zero; empty if some band has no room for two harmonics
     */
    public OptionalDouble detectableDepth() {
        return detectableDepth == null ? OptionalDouble.empty() : OptionalDouble.of(detectableDepth);
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
        if (pulsation == null) {
            return reason;
        }
        return reason + extent().map(extent -> "; " + extent).orElse("") + "; "
                + Digits.significant(pulsation.hertz(), 5) + " Hz found, " + deviation()
                + " % off the kinematic rate; envelope of " + pulsation.band() + "; chance in noise "
                + chance(pulsation.log10Probability()) + "; " + lines().stream().map(EnvelopeLine::toString)
                .collect(Collectors.joining(", "));
    }

    private String deviation() {
        double percent = 100 * (pulsation.hertz() / expectedHertz - 1);
        return (percent < 0 ? "" : "+") + Digits.significant(percent, 2);
    }

    /** Below 1e-12 the law of the noise is an extrapolation: no more is claimed. */
    private static String chance(double log10) {
        return log10 < -12 ? "below 1e-12" : Digits.significant(Math.pow(10, log10), 2);
    }

    /**
     * Returns element, verdict and where it was found, as in {@code outer race present (107.6 Hz)}; {@code (no sign)}
     * where nothing stands at the rate, but it couldn't be called absent.
     */
    @Override
    public String toString() {
        String sign = pulsation != null ? " (" + Digits.significant(pulsation.hertz(), 4) + " Hz)"
                : verdict == ElementVerdict.NOT_DETERMINED && detectableDepth != null ? " (no sign)" : "";
        return element + " " + verdict + sign;
    }
}
