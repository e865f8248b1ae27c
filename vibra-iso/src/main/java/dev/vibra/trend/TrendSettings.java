package dev.vibra.trend;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;

/**
 * How a trend is fitted and when a prognosis is refused.
 *
 * <p>Defaults: straight line, robust, 95 % confidence, at least 8 readings (common practice, no source), and no further
 * ahead than the readings reach back (from memory, unverified: ISO 13381-1 warns of long extrapolation). Immutable.
 *
 * @param model form of the trend
 * @param method how the line is laid
 * @param confidence level of confidence of all intervals, from 0.5 to below 1
 * @param minimumReadings readings below which nothing is fitted, at least 5
 * @param horizon how far ahead a limit may be reached, as a multiple of the time the readings span, above zero
 */
public record TrendSettings(TrendModel model, TrendMethod method, double confidence, int minimumReadings,
        double horizon) implements Serializable {
    /**
     * Checks the values.
     *
     * @param model form of the trend
     * @param method how the line is laid
     * @param confidence from 0.5 to below 1
     * @param minimumReadings at least 5
     * @param horizon finite, above zero
     * @throws IllegalArgumentException if a value is out of range
     */
    public TrendSettings {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(method, "method");
        if (!(confidence >= 0.5 && confidence < 1)) {
            throw Require.failure("confidence", "from 0.5 to below 1", confidence);
        }
        Require.atLeast("minimumReadings", minimumReadings, 5);
        Require.positive("horizon", horizon, "");
    }

    /**
     * Starts with the defaults.
     *
     * @return the settings
     */
    public static TrendSettings withDefaults() {
        return new TrendSettings(TrendModel.LINEAR, TrendMethod.ROBUST, 0.95, 8, 1);
    }

    /**
     * Sets the form of the trend.
     *
     * @param newModel the form
     * @return the settings with it
     */
    public TrendSettings withModel(TrendModel newModel) {
        return new TrendSettings(newModel, method, confidence, minimumReadings, horizon);
    }

    /**
     * Sets how the line is laid.
     *
     * @param newMethod the method
     * @return the settings with it
     */
    public TrendSettings withMethod(TrendMethod newMethod) {
        return new TrendSettings(model, newMethod, confidence, minimumReadings, horizon);
    }

    /**
     * Sets the level of confidence.
     *
     * @param level from 0.5 to below 1
     * @return the settings with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public TrendSettings withConfidence(double level) {
        return new TrendSettings(model, method, level, minimumReadings, horizon);
    }

    /**
     * Sets how many readings a fit takes.
     *
     * @param readings at least 5
     * @return the settings with it
     * @throws IllegalArgumentException if the number is out of range
     */
    public TrendSettings withMinimumReadings(int readings) {
        return new TrendSettings(model, method, confidence, readings, horizon);
    }

    /**
     * Sets how far ahead a limit may be reached.
     *
     * @param spans multiple of the time the readings span, above zero
     * @return the settings with it
     * @throws IllegalArgumentException if the value is out of range
     */
    public TrendSettings withHorizon(double spans) {
        return new TrendSettings(model, method, confidence, minimumReadings, spans);
    }

    /** Returns model, method and confidence, as in {@code linear, robust, 95 %}. */
    @Override
    public String toString() {
        return (model == TrendModel.LINEAR ? "linear" : "exponential") + ", "
                + (method == TrendMethod.ROBUST ? "robust" : "least squares") + ", "
                + Digits.compact(100 * confidence, 8) + " %";
    }
}
