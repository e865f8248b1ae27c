package dev.vibra.channel;

import dev.vibra.alarm.AlarmRule;
import dev.vibra.internal.Require;
import dev.vibra.meter.LevelMeter;
import dev.vibra.meter.Measurand;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.transform.PlanCache;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What a {@link Channel} does with its blocks.
 *
 * <p>Defaults: the levels of {@link LevelMeter#withDefaults()}, a reading each second, no rule, no spectrum, spectra
 * every ten seconds once there are any, full scale not known (common practice, no source).
 *
 * @param name name of the channel, as it prints
 * @param levels levels that are measured
 * @param readingSeconds interval of the readings in s, finite, above zero
 * @param rules alarm rules; each is of a level that is measured
 * @param spectraSeconds interval of the spectra in s, finite, above zero; long enough for a block of each
 * @param spectra averaged spectra
 * @param envelopes averaged envelope spectra
 * @param fullScale largest acceleration that the input can tell in m/s², above zero; 1e70 if not known
 */
public record ChannelSettings(String name, LevelMeter.Settings levels, double readingSeconds, List<AlarmRule> rules,
        double spectraSeconds, List<SpectrumSettings> spectra, List<EnvelopeRequest> envelopes, double fullScale)
        implements Serializable {
    /** No block holds more. */
    private static final double NOT_KNOWN = 1e70;

    /**
     * Checks and copies.
     *
     * @param name see the record
     * @param levels see the record
     * @param readingSeconds see the record
     * @param rules see the record
     * @param spectraSeconds see the record
     * @param spectra see the record
     * @param envelopes see the record
     * @param fullScale see the record
     */
    public ChannelSettings {
        name = Require.notBlank("name", Objects.requireNonNull(name, "name"));
        Objects.requireNonNull(levels, "levels");
        Require.positive("readingSeconds", readingSeconds, "s");
        Require.positive("spectraSeconds", spectraSeconds, "s");
        rules = Require.copy("rules", rules);
        spectra = Require.copy("spectra", spectra);
        envelopes = Require.copy("envelopes", envelopes);
        Require.within("fullScale", fullScale, Double.MIN_NORMAL, NOT_KNOWN, "m/s²");
        for (AlarmRule rule : rules) {
            if (!isMeasured(levels, rule.alarm())) {
                throw new IllegalArgumentException("rule must be of a level that is measured, acceleration or one of "
                        + levels.measurands() + ": " + rule.alarm());
            }
        }
    }

    private static boolean isMeasured(LevelMeter.Settings levels, Level limit) {
        return limit.band().map(band -> levels.measurands().contains(new Measurand(limit.quantity(), band)))
                .orElse(limit.quantity() == Quantity.ACCELERATION);
    }

    /**
     * Returns settings with the defaults.
     *
     * @param name name of the channel, not blank
     * @return settings, to be finished with {@link #at}
     */
    public static ChannelSettings named(String name) {
        return new ChannelSettings(name, LevelMeter.withDefaults(), 1, List.of(), 10, List.of(), List.of(),
                NOT_KNOWN);
    }

    /**
     * Returns these settings with other levels.
     *
     * @param newLevels levels that are measured
     * @return the new settings
     * @throws IllegalArgumentException if a rule is of none of them
     */
    public ChannelSettings withLevels(LevelMeter.Settings newLevels) {
        return new ChannelSettings(name, newLevels, readingSeconds, rules, spectraSeconds, spectra, envelopes,
                fullScale);
    }

    /**
     * Returns these settings with another interval of readings.
     *
     * @param seconds interval in s, finite, above zero
     * @return the new settings
     */
    public ChannelSettings withReadingsEvery(double seconds) {
        return new ChannelSettings(name, levels, seconds, rules, spectraSeconds, spectra, envelopes, fullScale);
    }

    /**
     * Returns these settings with one rule more; what it watches is measured from now on.
     *
     * @param rule rule of a level with a band, or of the whole acceleration
     * @return the new settings
     * @throws IllegalArgumentException if its limit is a velocity or displacement without a band
     */
    public ChannelSettings withRule(AlarmRule rule) {
        Objects.requireNonNull(rule, "rule");
        LevelMeter.Settings measured = rule.alarm().band().filter(band -> !isMeasured(levels, rule.alarm()))
                .map(band -> levels.and(rule.alarm().quantity(), band)).orElse(levels);
        return new ChannelSettings(name, measured, readingSeconds, plus(rules, rule), spectraSeconds, spectra, envelopes,
                fullScale);
    }

    /**
     * Returns these settings with one spectrum more.
     *
     * @param settings window, resolution, overlap, averaging
     * @return the new settings
     */
    public ChannelSettings withSpectrum(SpectrumSettings settings) {
        return new ChannelSettings(name, levels, readingSeconds, rules, spectraSeconds, plus(spectra, settings),
                envelopes, fullScale);
    }

    /**
     * Returns these settings with one envelope spectrum more.
     *
     * @param band band that is demodulated, up to half the sample rate
     * @param resolutionHertz distance of its lines in Hz
     * @return the new settings
     */
    public ChannelSettings withEnvelope(Band band, double resolutionHertz) {
        return new ChannelSettings(name, levels, readingSeconds, rules, spectraSeconds, spectra,
                plus(envelopes, new EnvelopeRequest(band, resolutionHertz)), fullScale);
    }

    /**
     * Returns these settings with another interval of spectra.
     *
     * @param seconds interval in s, finite, above zero
     * @return the new settings
     */
    public ChannelSettings withSpectraEvery(double seconds) {
        return new ChannelSettings(name, levels, readingSeconds, rules, seconds, spectra, envelopes, fullScale);
    }

    /**
     * Returns these settings with the full scale of the input, so that overloads are found.
     *
     * @param metresPerSecondSquared largest acceleration that the input can tell, above zero
     * @return the new settings
     */
    public ChannelSettings withFullScale(double metresPerSecondSquared) {
        return new ChannelSettings(name, levels, readingSeconds, rules, spectraSeconds, spectra, envelopes,
                metresPerSecondSquared);
    }

    private static <T> List<T> plus(List<T> list, T one) {
        List<T> more = new ArrayList<>(list);
        more.add(Objects.requireNonNull(one, "settings"));
        return more;
    }

    /**
     * Makes the channel.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return a channel that has seen nothing
     * @throws IllegalArgumentException if a band, a resolution or an interval doesn't fit the sample rate
     */
    public Channel at(double sampleRateHertz) {
        return at(sampleRateHertz, PlanCache.ofSize(2 * spectra.size() + 3 * envelopes.size() + 1));
    }

    /**
     * Makes a channel that shares plans and their workspace with others: of 64 channels each needs little more memory
     * than what it holds of its own stream. All that share them must run in one thread. A channel that is resumed by
     * {@code StreamState.resume} has plans of its own; {@link Channel#resumeFrom} keeps them shared.
     *
     * @param sampleRateHertz sample rate in Hz
     * @param plans plans of the thread, two for each kind of spectrum and three for each kind of envelope
     * @return a channel that has seen nothing
     * @throws IllegalArgumentException if a band, a resolution or an interval doesn't fit the sample rate
     */
    public Channel at(double sampleRateHertz, PlanCache plans) {
        return new Channel(this, sampleRateHertz, Objects.requireNonNull(plans, "plans"));
    }

    boolean knowsFullScale() {
        return fullScale < NOT_KNOWN;
    }

    /** Returns what is done, in one line. */
    @Override
    public String toString() {
        return name + ": " + levels.measurands() + " each " + readingSeconds + " s, " + rules.size() + " rule(s), "
                + spectra.size() + " spectrum(s), " + envelopes.size() + " envelope(s)";
    }
}
