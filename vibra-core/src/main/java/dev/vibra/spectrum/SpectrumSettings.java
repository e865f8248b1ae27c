package dev.vibra.spectrum;

import dev.vibra.internal.Require;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.Objects;

/**
 * What a {@link Spectrum} is made with: window, resolution, overlap and averaging.
 *
 * <p>Defaults: Hann window; lines 1 Hz apart, or as close as a shorter recording allows; overlap 0.5, at which blocks
 * under a Hann window are nearly independent (correlation 1/6 by F. J. Harris 1978, Table 1); rms averaging.
 *
 * @param window window function
 * @param resolutionHertz distance of lines in Hz, finite, above zero
 * @param overlap fraction of a block that the next block shares, 0 to 0.95
 * @param averaging how blocks become one spectrum
 */
public record SpectrumSettings(Window window, double resolutionHertz, double overlap, Averaging averaging)
        implements Serializable {
    /**
     * Checks the settings.
     *
     * @param window see the record
     * @param resolutionHertz see the record
     * @param overlap see the record
     * @param averaging see the record
     */
    public SpectrumSettings {
        Objects.requireNonNull(averaging, "averaging");
        Objects.requireNonNull(window, "window");
        Require.positive("resolutionHertz", resolutionHertz, "Hz");
        Require.within("overlap", overlap, 0, 0.95, "");
    }

    /**
     * Returns the defaults: Hann, 1 Hz, overlap 0.5, rms averaging.
     *
     * @return the default settings
     */
    public static SpectrumSettings withDefaults() {
        return new SpectrumSettings(Window.hann(), 1, 0.5, Averaging.rms());
    }

    /**
     * Returns these settings with another window.
     *
     * @param newWindow window function
     * @return the new settings
     */
    public SpectrumSettings withWindow(Window newWindow) {
        Objects.requireNonNull(newWindow, "newWindow");
        return new SpectrumSettings(newWindow, resolutionHertz, overlap, averaging);
    }

    /**
     * Returns these settings with another distance of lines.
     *
     * @param newResolutionHertz distance in Hz, finite, above zero
     * @return the new settings
     * @throws IllegalArgumentException if the distance is out of range
     */
    public SpectrumSettings withResolution(double newResolutionHertz) {
        return new SpectrumSettings(window, newResolutionHertz, overlap, averaging);
    }

    /**
     * Returns these settings with another overlap.
     *
     * @param newOverlap fraction of a block that the next block shares, 0 to 0.95
     * @return the new settings
     * @throws IllegalArgumentException if the overlap is out of range
     */
    public SpectrumSettings withOverlap(double newOverlap) {
        return new SpectrumSettings(window, resolutionHertz, newOverlap, averaging);
    }

    /**
     * Returns these settings with so many lines up to a frequency.
     *
     * @param lines number of lines, at least 1
     * @param highestHertz frequency of the last of them in Hz, finite, above zero
     * @return the new settings
     * @throws IllegalArgumentException if an argument is out of range
     */
    public SpectrumSettings withLines(int lines, double highestHertz) {
        Require.atLeast("lines", lines, 1);
        return withResolution(Require.positive("highestHertz", highestHertz, "Hz") / lines);
    }

    /**
     * Returns these settings with lines at a fraction of the speed of rotation.
     *
     * @param orders distance of lines in orders, finite, above zero
     * @param speed speed of rotation
     * @return the new settings
     * @throws IllegalArgumentException if the distance is out of range
     */
    public SpectrumSettings withOrders(double orders, RotationSpeed speed) {
        return withResolution(Require.positive("orders", orders, "") * Objects.requireNonNull(speed, "speed").hertz());
    }

    /**
     * Returns these settings with another way of averaging.
     *
     * @param newAveraging how blocks become one spectrum
     * @return the new settings
     */
    public SpectrumSettings withAveraging(Averaging newAveraging) {
        Objects.requireNonNull(newAveraging, "newAveraging");
        return new SpectrumSettings(window, resolutionHertz, overlap, newAveraging);
    }

    /**
     * Returns the length of the blocks that a recording is cut into: {@link #blockLength(double, int)} at its sample
     * rate, at most the whole recording.
     *
     * @param wave recording
     * @return number of samples of a block, at least 2 if the recording has as many
     * @throws IllegalArgumentException if the resolution is above half the sample rate
     */
    public int blockLength(Waveform wave) {
        return blockLength(Objects.requireNonNull(wave, "wave").sampleRateHertz(), wave.length());
    }

    /**
     * Returns the length of a block: sample rate over resolution, rounded to a whole number of samples.
     *
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @param longest number of samples that a block may have at most, at least 1; it counts where the resolution asks
     *     for more
     * @return number of samples of a block, at least 2 unless the longest is 1
     * @throws IllegalArgumentException if an argument is out of range or the resolution above half the sample rate
     */
    public int blockLength(double sampleRateHertz, int longest) {
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        Require.atLeast("longest", longest, 1);
        if (!(resolutionHertz <= sampleRateHertz / 2)) {
            throw Require.failure("resolutionHertz", "at most half the sample rate, " + sampleRateHertz / 2 + " Hz",
                    resolutionHertz);
        }
        return (int) Math.min(Math.rint(sampleRateHertz / resolutionHertz), longest);
    }

    /**
     * Returns the number of samples from the start of one block to that of the next: the block less what it shares, the
     * shared part rounded down.
     *
     * @param blockLength number of samples of a block, at least 1
     * @return number of samples, 1 to the block length
     * @throws IllegalArgumentException if the block is empty
     */
    public int step(int blockLength) {
        return Math.max(1, Require.atLeast("blockLength", blockLength, 1) - (int) (overlap * blockLength));
    }

    /** Returns the settings in words. */
    @Override
    public String toString() {
        return window + ", " + resolutionHertz + " Hz, overlap " + overlap + ", " + averaging;
    }
}
