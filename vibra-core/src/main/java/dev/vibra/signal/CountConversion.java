package dev.vibra.signal;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.Objects;

/**
 * How the numbers of a converter become samples in SI units, for meters and waveforms:
 * {@code CountConversion.of(Unit.G, 0.00305).withChannel(2, 4).toSi(block, 0, samples, 0, 1024)}.
 *
 * <p>One count of a converter of n bits with a full scale of ±F volts is F/2<sup>n-1</sup> volts; divided by the
 * sensitivity of the sensor in volts per unit it is the scale. Several channels follow each other within a frame.
 * Immutable.
 *
 * @param unit unit of the values after scaling
 * @param scale value in the unit that 1 stands for, finite, not zero
 * @param channel number of the channel within a frame, from 1
 * @param channels number of channels of a frame
 */
public record CountConversion(Unit unit, double scale, int channel, int channels) implements Serializable {
    /**
     * Checks what is given.
     *
     * @param unit unit of the values after scaling
     * @param scale value in the unit that 1 stands for
     * @param channel number of the channel within a frame
     * @param channels number of channels of a frame
     * @throws IllegalArgumentException if the scale is out of range or there is no such channel
     */
    public CountConversion {
        Objects.requireNonNull(unit, "unit");
        if (!(Math.abs(scale) > 0 && Math.abs(scale) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("scale", "finite and not zero", scale);
        }
        Require.atLeast("channels", channels, 1);
        if (channel < 1 || channel > channels) {
            throw new IllegalArgumentException("channel must be from 1 to " + channels + ": " + channel);
        }
    }

    /**
     * Converts samples of one channel.
     *
     * @param unit unit of the values after scaling
     * @param scale value in the unit that 1 stands for, finite, not zero
     * @return the conversion
     * @throws IllegalArgumentException if the scale is out of range
     */
    public static CountConversion of(Unit unit, double scale) {
        return new CountConversion(unit, scale, 1, 1);
    }

    /**
     * Picks one channel of several that follow each other within a frame.
     *
     * @param newChannel number of the channel, from 1
     * @param newChannels number of channels of a frame
     * @return the changed conversion
     * @throws IllegalArgumentException if there is no such channel
     */
    public CountConversion withChannel(int newChannel, int newChannels) {
        return new CountConversion(unit, scale, newChannel, newChannels);
    }

    /**
     * Converts samples of one channel; allocates nothing.
     *
     * @param samples whole numbers of up to 16 bits, frame after frame; left alone
     * @param firstFrame number of the first frame to convert, from 0
     * @param out receives the samples in the SI unit
     * @param offset index of the first one
     * @param length number of frames to convert
     * @return the array given
     * @throws IllegalArgumentException if a range leaves its array or a sample isn't within ±1e70 in SI units; nothing
     *     is converted
     */
    public double[] toSi(short[] samples, int firstFrame, double[] out, int offset, int length) {
        int first = first(Objects.requireNonNull(samples, "samples").length, firstFrame, out, offset, length);
        for (int i = 0; !isWithin(Short.MIN_VALUE) && i < length; i++) {
            require(samples[first + i * channels], first + i * channels);
        }
        if (channels == 1) {
            convert(samples, first, 1, out, offset, length);
        } else {
            convert(samples, first, channels, out, offset, length);
        }
        return out;
    }

    private void convert(short[] samples, int first, int step, double[] out, int offset, int length) {
        double toSi = unit.toSi();
        for (int i = 0; i < length; i++) {
            out[offset + i] = samples[first + i * step] * scale * toSi;
        }
    }

    /**
     * Makes a waveform of one channel.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples whole numbers of up to 16 bits, whole frames, at least one
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there are no whole frames, or a sample isn't
     *     within ±1e70 in SI units
     */
    public Waveform waveform(double sampleRateHertz, short[] samples) {
        int frames = frames(Objects.requireNonNull(samples, "samples").length);
        return Waveform.ofChecked(unit.quantity(), sampleRateHertz, 0,
                toSi(samples, 0, new double[frames], 0, frames));
    }

    /**
     * Converts samples of one channel; allocates nothing.
     *
     * @param samples whole numbers of up to 32 bits, frame after frame; left alone
     * @param firstFrame number of the first frame to convert, from 0
     * @param out receives the samples in the SI unit
     * @param offset index of the first one
     * @param length number of frames to convert
     * @return the array given
     * @throws IllegalArgumentException if a range leaves its array or a sample isn't within ±1e70 in SI units; nothing
     *     is converted
     */
    public double[] toSi(int[] samples, int firstFrame, double[] out, int offset, int length) {
        int first = first(Objects.requireNonNull(samples, "samples").length, firstFrame, out, offset, length);
        for (int i = 0; !isWithin(Integer.MIN_VALUE) && i < length; i++) {
            require(samples[first + i * channels], first + i * channels);
        }
        if (channels == 1) {
            convert(samples, first, 1, out, offset, length);
        } else {
            convert(samples, first, channels, out, offset, length);
        }
        return out;
    }

    private void convert(int[] samples, int first, int step, double[] out, int offset, int length) {
        double toSi = unit.toSi();
        for (int i = 0; i < length; i++) {
            out[offset + i] = samples[first + i * step] * scale * toSi;
        }
    }

    /**
     * Makes a waveform of one channel.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples whole numbers of up to 32 bits, whole frames, at least one
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there are no whole frames, or a sample isn't
     *     within ±1e70 in SI units
     */
    public Waveform waveform(double sampleRateHertz, int[] samples) {
        int frames = frames(Objects.requireNonNull(samples, "samples").length);
        return Waveform.ofChecked(unit.quantity(), sampleRateHertz, 0,
                toSi(samples, 0, new double[frames], 0, frames));
    }

    /**
     * Converts samples of one channel; allocates nothing.
     *
     * @param samples numbers of single precision, frame after frame; left alone
     * @param firstFrame number of the first frame to convert, from 0
     * @param out receives the samples in the SI unit
     * @param offset index of the first one
     * @param length number of frames to convert
     * @return the array given
     * @throws IllegalArgumentException if a range leaves its array or a sample isn't within ±1e70 in SI units; what
     *     stands before it is converted
     */
    public double[] toSi(float[] samples, int firstFrame, double[] out, int offset, int length) {
        int first = first(Objects.requireNonNull(samples, "samples").length, firstFrame, out, offset, length);
        if (channels == 1) {
            convert(samples, first, 1, out, offset, length);
        } else {
            convert(samples, first, channels, out, offset, length);
        }
        return out;
    }

    private void convert(float[] samples, int first, int step, double[] out, int offset, int length) {
        double toSi = unit.toSi();
        for (int i = 0; i < length; i++) {
            double stored = samples[first + i * step];
            double si = stored * scale * toSi;
            if (!(Math.abs(si) <= Require.LARGEST_SAMPLE)) {
                throw failure(stored, first + i * step);
            }
            out[offset + i] = si;
        }
    }

    /**
     * Makes a waveform of one channel.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples numbers of single precision, whole frames, at least one
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there are no whole frames, or a sample isn't
     *     within ±1e70 in SI units
     */
    public Waveform waveform(double sampleRateHertz, float[] samples) {
        int frames = frames(Objects.requireNonNull(samples, "samples").length);
        return Waveform.ofChecked(unit.quantity(), sampleRateHertz, 0,
                toSi(samples, 0, new double[frames], 0, frames));
    }

    /**
     * Converts samples of one channel; allocates nothing.
     *
     * @param samples numbers of double precision, frame after frame; left alone
     * @param firstFrame number of the first frame to convert, from 0
     * @param out receives the samples in the SI unit
     * @param offset index of the first one
     * @param length number of frames to convert
     * @return the array given
     * @throws IllegalArgumentException if a range leaves its array or a sample isn't within ±1e70 in SI units; what
     *     stands before it is converted
     */
    public double[] toSi(double[] samples, int firstFrame, double[] out, int offset, int length) {
        int first = first(Objects.requireNonNull(samples, "samples").length, firstFrame, out, offset, length);
        if (channels == 1) {
            convert(samples, first, 1, out, offset, length);
        } else {
            convert(samples, first, channels, out, offset, length);
        }
        return out;
    }

    private void convert(double[] samples, int first, int step, double[] out, int offset, int length) {
        double toSi = unit.toSi();
        for (int i = 0; i < length; i++) {
            double stored = samples[first + i * step];
            double si = stored * scale * toSi;
            if (!(Math.abs(si) <= Require.LARGEST_SAMPLE)) {
                throw failure(stored, first + i * step);
            }
            out[offset + i] = si;
        }
    }

    /**
     * Makes a waveform of one channel.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param samples numbers of double precision, whole frames, at least one
     * @return the waveform
     * @throws IllegalArgumentException if the sample rate is out of range, there are no whole frames, or a sample isn't
     *     within ±1e70 in SI units
     */
    public Waveform waveform(double sampleRateHertz, double[] samples) {
        int frames = frames(Objects.requireNonNull(samples, "samples").length);
        return Waveform.ofChecked(unit.quantity(), sampleRateHertz, 0,
                toSi(samples, 0, new double[frames], 0, frames));
    }

    /** Checks the ranges and finds the first sample; loops are called twice as one of step 1 is made for vectors. */
    private int first(int available, int firstFrame, double[] out, int offset, int length) {
        Require.range("frames of samples", firstFrame, length, available / channels);
        Require.range("out", out, offset, length);
        return firstFrame * channels + channel - 1;
    }

    private int frames(int samples) {
        if (samples % channels != 0) {
            throw new IllegalArgumentException("samples must be whole frames of " + channels + " channels: "
                    + samples);
        }
        return samples / channels;
    }

    private boolean isWithin(double stored) {
        return Math.abs(stored * scale * unit.toSi()) <= Require.LARGEST_SAMPLE;
    }

    private void require(double stored, int index) {
        if (!isWithin(stored)) {
            throw failure(stored, index);
        }
    }

    private IllegalArgumentException failure(double stored, int index) {
        return new IllegalArgumentException("samples[" + index + "] must be within ±1e70 in SI units: " + stored
                + " times " + scale + " " + unit);
    }

    /** Returns scale, unit and channel, as in {@code 1 is 0.00305 g, channel 2 of 4}. */
    @Override
    public String toString() {
        return "1 is " + scale + " " + unit + (channels == 1 ? "" : ", channel " + channel + " of " + channels);
    }
}
