package dev.vibra.point;

import dev.vibra.envelope.Envelope;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.lines.LineNoise;
import dev.vibra.lines.NoiseFloor;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How far knocks come once in each turn of a shaft: squared envelope of the most impulsive octave above ten times the
 * fastest shaft and 1 kHz.
 *
 * @see "R. B. Randall, J. Antoni, Mech. Syst. Signal Process. 25 (2011) 485-520, on squared envelopes and spectral
 *     kurtosis"
 */
final class KnockReading {
    private static final double LOWEST_HERTZ = 1000;
    private static final double ABOVE_SHAFT = 10;
    private static final double HIGHEST_SHARE = 0.45;
    private static final int FEWEST_TURNS = 20;
    private static final int MULTIPLES = 60;
    /** Half the width of a line under a Hann window, in lines. */
    private static final int HALF_LINE = 2;
    private static final double HANN_BANDWIDTH = 1.5;
    private static final int FLOOR_REACH = 20;
    /** A power that swings by less than a hundredth holds no knocks. */
    private static final double LEAST_VARIANCE = 1e-4;
    private static final double LOG_FALSE_ALARM = Math.log(1e-4);

    private final Waveform wave;
    private final List<Rate> shafts;

    KnockReading(Waveform wave, ShaftRates rates) {
        this.wave = wave;
        shafts = rates.shafts().stream().filter(rate -> rate.hertz() * wave.durationSeconds() >= FEWEST_TURNS).toList();
    }

    List<LinePattern.TurnKnocks> all() {
        double fastest = shafts.stream().mapToDouble(Rate::hertz).max().orElse(0);
        double from = Math.max(LOWEST_HERTZ, ABOVE_SHAFT * fastest);
        double to = HIGHEST_SHARE * wave.sampleRateHertz();
        if (shafts.isEmpty() || wave.quantity() != Quantity.ACCELERATION || 2 * from > to) {
            return List.of();
        }
        return mostImpulsive(from, to).map(spectrum -> shafts.stream().map(shaft -> of(spectrum, shaft)).toList())
                .orElse(List.of());
    }

    private Optional<EnvelopeSpectrum> mostImpulsive(double from, double to) {
        List<Band> octaves = new ArrayList<>();
        for (double low = from; 2 * low <= to; low *= 2) {
            octaves.add(Band.of(low, 4 * low > to ? to : 2 * low));
        }
        return EnvelopeSpectrum.unlessSilent(Envelope.squared(wave, octaves), 2 / wave.durationSeconds()).stream()
                .flatMap(Optional::stream).max(Comparator.comparingDouble(EnvelopeSpectrum::spectralKurtosis));
    }

    private static LinePattern.TurnKnocks of(EnvelopeSpectrum spectrum, Rate shaft) {
        // Over the squared mean power a pulsation of depth m has the variance m²/2, all have the kurtosis plus 1.
        double variance = spectrum.spectralKurtosis() + 1;
        if (!(variance > LEAST_VARIANCE)) {
            return new LinePattern.TurnKnocks(shaft, 0, 0);
        }
        double[] squares = spectrum.depths();
        for (int k = 0; k < squares.length; k++) {
            squares[k] *= squares[k];
        }
        NoiseFloor floor = NoiseFloor.of(squares, spectrum.resolutionHertz(),
                LineNoise.of(spectrum.equivalentAverages()), HALF_LINE, FLOOR_REACH);
        double sum = 0;
        int multiples = 0;
        boolean row = true;
        for (int multiple = 1; multiple <= MULTIPLES; multiple++) {
            int line = (int) Math.rint(multiple * shaft.hertz() / spectrum.resolutionHertz());
            if (line + HALF_LINE >= squares.length) {
                break;
            }
            boolean stands = stands(squares, floor, line);
            row &= stands;
            multiples += row ? 1 : 0;
            sum += stands ? energy(squares, floor, line) : 0;
        }
        return new LinePattern.TurnKnocks(shaft, Math.min(1, 0.5 * sum / variance), multiples);
    }

    /** Of three neighbours the largest; it must be a peak, or the skirt of another line would count. */
    private static boolean stands(double[] squares, NoiseFloor floor, int line) {
        int top = line;
        for (int k = line - 1; k <= line + 1; k++) {
            top = squares[k] > squares[top] ? k : top;
        }
        boolean peak = squares[top] >= squares[top - 1] && squares[top] >= squares[top + 1];
        double ratio = squares[top] / Math.max(floor.meanSquare(top), Double.MIN_NORMAL);
        return peak && floor.noise().logExceedance(ratio) + Math.log(HALF_LINE + 1) < LOG_FALSE_ALARM;
    }

    private static double energy(double[] squares, NoiseFloor floor, int line) {
        double sum = 0;
        for (int k = line - HALF_LINE; k <= line + HALF_LINE; k++) {
            sum += Math.max(0, squares[k] - floor.meanSquare(k));
        }
        return sum / HANN_BANDWIDTH;
    }
}
