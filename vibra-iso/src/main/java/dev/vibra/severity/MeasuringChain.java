package dev.vibra.severity;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What a recording can show: sample rate, duration, and the usable bands of sensor, mounting and whatever else lies
 * between.
 *
 * <p>A criterion holds in its band only; {@link #refusals(Band)} says what keeps a recording from covering it. Hard
 * rules: the band ends at or below half the sample rate, the record holds one period of its lower end, and no part is
 * narrower than it. Cautions: less than 2.56 samples a period of the upper end, less than ten periods of the lower end
 * (common practice, no source). Immutable.
 *
 * @see "ISO 20816-3:2022, 4.3; ISO 10816-3:2009, 3.2 (flat response over the band of the criterion)"
 */
public final class MeasuringChain implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double SAMPLES_PER_PERIOD = 2.56;
    private static final double PERIODS = 10;

    private final double sampleRateHertz;
    private final double durationSeconds;
    private final LinkedHashMap<String, Band> parts;

    private MeasuringChain(double sampleRateHertz, double durationSeconds, Map<String, Band> parts) {
        this.sampleRateHertz = Require.positive("sample rate", sampleRateHertz, "Hz");
        this.durationSeconds = Require.positive("duration", durationSeconds, "s");
        this.parts = new LinkedHashMap<>(parts);
    }

    /**
     * Starts with the recording alone.
     *
     * @param sampleRateHertz samples per second, finite, above zero
     * @param durationSeconds length of the recording in s, finite, above zero
     * @return the chain
     * @throws IllegalArgumentException if a number is out of range
     */
    public static MeasuringChain of(double sampleRateHertz, double durationSeconds) {
        return new MeasuringChain(sampleRateHertz, durationSeconds, Map.of());
    }

    /**
     * Adds a part with the band in which it is flat.
     *
     * @param name what it is, as in {@code sensor} or {@code magnet}
     * @param usable band in which its response is flat
     * @return the longer chain
     * @throws IllegalArgumentException if the name is blank
     */
    public MeasuringChain withPart(String name, Band usable) {
        if (Objects.requireNonNull(name, "name").isBlank()) {
            throw new IllegalArgumentException("name must not be blank");
        }
        Map<String, Band> longer = new LinkedHashMap<>(parts);
        longer.put(name, Objects.requireNonNull(usable, "usable"));
        return new MeasuringChain(sampleRateHertz, durationSeconds, longer);
    }

    /**
     * Returns the parts with their usable bands, in the order of their adding.
     *
     * @return unmodifiable map
     */
    public Map<String, Band> parts() {
        return Collections.unmodifiableMap(parts);
    }

    /**
     * Says what keeps the recording from covering a band.
     *
     * @param band band of a criterion
     * @return unmodifiable list of reasons; empty if the band is covered
     */
    public List<String> refusals(Band band) {
        List<String> reasons = new ArrayList<>();
        if (!(band.highestHertz() <= sampleRateHertz / 2)) {
            reasons.add("sample rate " + hertz(sampleRateHertz) + " reaches up to " + hertz(sampleRateHertz / 2));
        }
        if (!(band.lowestHertz() * durationSeconds >= 1)) {
            reasons.add("duration " + Digits.compact(durationSeconds, 4) + " s is less than one period of "
                    + hertz(band.lowestHertz()));
        }
        parts.forEach((name, usable) -> {
            if (!(usable.contains(band.lowestHertz()) && usable.contains(band.highestHertz()))) {
                reasons.add(name + " is usable at " + Printed.band(usable, band) + " only");
            }
        });
        return List.copyOf(reasons);
    }

    /**
     * Says what makes a covered band doubtful.
     *
     * @param band band of a criterion
     * @return unmodifiable list of cautions; empty if there is none
     */
    public List<String> cautions(Band band) {
        List<String> cautions = new ArrayList<>();
        if (!(band.highestHertz() * SAMPLES_PER_PERIOD <= sampleRateHertz)) {
            cautions.add("less than 2.56 samples a period of " + hertz(band.highestHertz())
                    + ": make sure of the filter against aliasing");
        }
        if (!(band.lowestHertz() * durationSeconds >= PERIODS)) {
            cautions.add("less than ten periods of " + hertz(band.lowestHertz()) + " recorded");
        }
        return List.copyOf(cautions);
    }

    private static String hertz(double value) {
        return Digits.compact(value, 9) + " Hz";
    }

    /** Two chains are equal if recording and parts are. */
    @Override
    public boolean equals(Object other) {
        return other instanceof MeasuringChain chain
                && Double.compare(sampleRateHertz, chain.sampleRateHertz) == 0
                && Double.compare(durationSeconds, chain.durationSeconds) == 0
                && parts.equals(chain.parts);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(sampleRateHertz, durationSeconds, parts);
    }

    /** Returns the chain in one line, as in {@code 4 s at 25600 Hz, magnet 0.5–2000 Hz}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(Digits.compact(durationSeconds, 4) + " s at " + hertz(sampleRateHertz));
        parts.forEach((name, usable) -> text.append(", ").append(name).append(' ').append(usable));
        return text.toString();
    }
}
