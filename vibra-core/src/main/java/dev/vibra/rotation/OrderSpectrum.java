package dev.vibra.rotation;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.window.Window;
import java.io.Serializable;
import java.util.Locale;
import java.util.Objects;

/** Averaged spectrum over orders, the multiples of the speed of rotation. Scaling as in {@link Spectrum}. */
public final class OrderSpectrum implements Serializable {
    private static final long serialVersionUID = 1;

    private final Quantity quantity;
    private final Spectrum spectrum;

    private OrderSpectrum(AngularWaveform wave, int revolutions, Window window) {
        quantity = wave.quantity();
        // A revolution takes the place of a second: "hertz" of this inner spectrum are orders.
        Waveform angular = Waveform.ofSi(quantity, wave.samplesPerRevolution(), wave.samples());
        spectrum = Spectrum.of(angular, SpectrumSettings.withDefaults().withWindow(window)
                .withResolution(1.0 / revolutions));
    }

    private OrderSpectrum(Quantity quantity, Spectrum spectrum) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.spectrum = Objects.requireNonNull(spectrum, "spectrum");
    }

    private Object readResolve() {
        return new OrderSpectrum(quantity, spectrum);
    }

    /**
     * Makes the order spectrum of an angular waveform, in blocks that overlap by half.
     *
     * @param wave angular waveform
     * @param revolutions revolutions of a block, at least 1, at most those of the waveform; lines lie 1/revolutions
     *     apart
     * @param window window; rectangular is right for what repeats each revolution
     * @return the spectrum
     * @throws IllegalArgumentException if the waveform is shorter than a block
     */
    public static OrderSpectrum of(AngularWaveform wave, int revolutions, Window window) {
        Require.within("revolutions", revolutions, 1, Objects.requireNonNull(wave, "wave").revolutions(), "");
        return new OrderSpectrum(wave, revolutions, Objects.requireNonNull(window, "window"));
    }

    /**
     * Returns the number of lines.
     *
     * @return lines from order 0 to half the samples per revolution
     */
    public int lines() {
        return spectrum.lines();
    }

    /**
     * Returns the order of a line.
     *
     * @param line number of the line from 0
     * @return order
     * @throws IllegalArgumentException if the number is negative
     */
    public double order(int line) {
        return spectrum.frequencyHertz(line);
    }

    /**
     * Returns the amplitude of a line.
     *
     * @param line number of the line from 0
     * @param detector rms, zero-to-peak or peak-to-peak of the sine that the line stands for
     * @return amplitude in the SI unit of the quantity
     * @throws IndexOutOfBoundsException if there is no such line
     */
    public double amplitude(int line, Detector detector) {
        return spectrum.amplitude(line, Objects.requireNonNull(detector, "detector"));
    }

    /**
     * Returns the rms level of the line nearest to an order.
     *
     * @param order order, zero or more
     * @return the level
     * @throws IllegalArgumentException if the order lies outside the spectrum
     */
    public Level level(double order) {
        Require.within("order", order, 0, order(lines() - 1), "");
        int line = (int) Math.rint(order / order(1));
        return Level.ofSi(amplitude(line, Detector.RMS), quantity, Detector.RMS).by(LevelMethod.SPECTRUM_LINE);
    }

    /** Returns lines and resolution. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s order spectrum, %,d lines to order %.0f", quantity, lines(),
                order(lines() - 1));
    }
}
