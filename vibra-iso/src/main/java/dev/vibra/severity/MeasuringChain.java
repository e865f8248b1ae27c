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
 * @param sampleRateHertz samples per second, finite, above zero
 * @param durationSeconds length of the recording in s, finite, above zero
 * @param parts what lies between machine and recording, with the band in which it is flat, in the order of their adding
 * @see "ISO 20816-3:2022, 4.3; ISO 10816-3:2009, 3.2 (flat response over the band of the criterion)"
 */
public record MeasuringChain(double sampleRateHertz, double durationSeconds, Map<String, Band> parts)
        implements Serializable {
    private static final double SAMPLES_PER_PERIOD = 2.56;
    private static final double PERIODS = 10;

    /**
     * Checks the values and copies the parts.
     *
     * @param sampleRateHertz finite, above zero
     * @param durationSeconds finite, above zero
     * @param parts names not blank
     * @throws IllegalArgumentException if a number is out of range or a name blank
     */
    public MeasuringChain {
        Objects.requireNonNull(parts, "parts");
        Require.positive("sample rate", sampleRateHertz, "Hz");
        Require.positive("duration", durationSeconds, "s");
        parts = Collections.unmodifiableMap(new LinkedHashMap<>(parts));
        parts.forEach((name, usable) -> {
            Objects.requireNonNull(usable, "usable");
            if (Objects.requireNonNull(name, "name").isBlank()) {
                throw new IllegalArgumentException("name must not be blank");
            }
        });
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
        Map<String, Band> longer = new LinkedHashMap<>(parts);
        longer.put(name, usable);
        return new MeasuringChain(sampleRateHertz, durationSeconds, longer);
    }

    /**
     * Says what keeps the recording from covering a band.
     *
     * @param band band of a criterion
     * @return unmodifiable list of reasons; empty if the band is covered
     */
    public List<String> refusals(Band band) {
        Objects.requireNonNull(band, "band");
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
        Objects.requireNonNull(band, "band");
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

    /** Returns the chain in one line, as in {@code 4 s at 25600 Hz, magnet 0.5–2000 Hz}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(Digits.compact(durationSeconds, 4) + " s at " + hertz(sampleRateHertz));
        parts.forEach((name, usable) -> text.append(", ").append(name).append(' ').append(usable));
        return text.toString();
    }
}
