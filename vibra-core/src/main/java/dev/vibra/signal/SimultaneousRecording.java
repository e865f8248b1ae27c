package dev.vibra.signal;

import dev.vibra.internal.Digits;
import dev.vibra.internal.Printable;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Channels that were sampled together: one rate, one start, one length, so that phases and delays between them mean
 * something. A multiplexed converter samples its channels one after the other; that delay isn't known here.
 *
 * @param names what the channels are called, all different
 * @param channels the channels, in the same order, at least one
 */
public record SimultaneousRecording(List<String> names, List<Waveform> channels) implements Serializable {
    /**
     * Checks that the channels belong together.
     *
     * @param names what the channels are called
     * @param channels the channels, in the same order
     * @throws IllegalArgumentException if there is no channel, rates, starts or lengths differ, or names are blank,
     *     double or not one for each channel
     */
    public SimultaneousRecording {
        names = Require.copy("names", names);
        channels = Require.copy("channels", channels);
        Require.atLeast("number of channels", channels.size(), 1);
        if (names.size() != channels.size()) {
            throw new IllegalArgumentException("names must be one for each of " + channels.size() + " channels: "
                    + names.size());
        }
        names.forEach(name -> Require.notBlank("name", name));
        if (new HashSet<>(names).size() < names.size()) {
            throw new IllegalArgumentException("names must differ: " + Printable.quoted(String.join(", ", names)));
        }
        for (Waveform channel : channels) {
            requireTogether(channels.get(0), channel);
        }
    }

    private static void requireTogether(Waveform first, Waveform other) {
        requireSame("sample rates", first.sampleRateHertz(), other.sampleRateHertz(), "Hz");
        requireSame("starts", first.startSeconds(), other.startSeconds(), "s");
        requireSame("lengths", first.length(), other.length(), "samples");
    }

    private static void requireSame(String what, Number first, Number other, String unit) {
        if (!first.equals(other)) {
            throw new IllegalArgumentException(what + " of channels must be the same: " + first + " and " + other + " "
                    + unit);
        }
    }

    /**
     * Puts channels together that are called {@code channel 1} and so on.
     *
     * @param channels the channels, at least one, of the same rate, start and length
     * @return the channels together
     * @throws IllegalArgumentException if there is no channel, or rates, starts or lengths differ
     */
    public static SimultaneousRecording of(List<Waveform> channels) {
        Objects.requireNonNull(channels, "channels");
        return new SimultaneousRecording(IntStream.rangeClosed(1, channels.size()).mapToObj(i -> "channel " + i)
                .toList(), channels);
    }

    /**
     * Names the channels.
     *
     * @param newNames one name for each channel, all different
     * @return the named channels
     * @throws IllegalArgumentException if names are blank, double or not one for each channel
     */
    public SimultaneousRecording withNames(List<String> newNames) {
        return new SimultaneousRecording(Objects.requireNonNull(newNames, "newNames"), channels);
    }

    /**
     * Returns one channel.
     *
     * @param number number of the channel, from 1
     * @return the channel
     * @throws IllegalArgumentException if there is no such channel
     */
    public Waveform channel(int number) {
        if (number < 1 || number > channels.size()) {
            throw new IllegalArgumentException("number must be from 1 to " + channels.size() + ": " + number);
        }
        return channels.get(number - 1);
    }

    /**
     * Returns one channel.
     *
     * @param name name of the channel
     * @return the channel
     * @throws IllegalArgumentException if there is no such channel
     */
    public Waveform channel(String name) {
        int index = names.indexOf(Objects.requireNonNull(name, "name"));
        if (index < 0) {
            throw new IllegalArgumentException("name must be one of " + Printable.shortened(names.toString(), 200)
                    + ": " + Printable.quoted(name));
        }
        return channels.get(index);
    }

    /**
     * Returns the sample rate of all channels.
     *
     * @return samples per second
     */
    public double sampleRateHertz() {
        return channels.get(0).sampleRateHertz();
    }

    /**
     * Returns the time of the first sample of all channels.
     *
     * @return start in s
     */
    public double startSeconds() {
        return channels.get(0).startSeconds();
    }

    /**
     * Returns the number of samples of each channel.
     *
     * @return number of samples, at least 1
     */
    public int length() {
        return channels.get(0).length();
    }

    /**
     * Cuts the same part out of all channels.
     *
     * @param from index of the first sample
     * @param length number of samples, at least 1
     * @return the parts, with their start time
     * @throws IllegalArgumentException if the part leaves the recording or is empty
     */
    public SimultaneousRecording part(int from, int length) {
        return new SimultaneousRecording(names, channels.stream().map(channel -> channel.part(from, length)).toList());
    }

    /** Returns names and size, as in {@code 2 channels (DE-H, DE-V) of 51,200 samples at 12800 Hz, 4.000 s}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%d channel%s (%s) of %,d samples at %s Hz, %s s", channels.size(),
                channels.size() == 1 ? "" : "s", Printable.shortened(String.join(", ", names), 200), length(),
                Digits.compact(sampleRateHertz(), 6), Digits.significant(channels.get(0).durationSeconds(), 4));
    }
}
