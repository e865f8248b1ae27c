package dev.vibra.uncertainty;

import dev.vibra.filter.FilterDesign;
import dev.vibra.filter.SectionCascade;
import dev.vibra.integration.BandLimitingChain;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.util.Random;

/**
 * A stationary machine: lines of 1x, 2x, ... and white acceleration through a band-pass. What its level is in the long
 * run follows from its parameters alone: the nominal response of ISO 2954:2012 and the response of the band-pass. The
 * lines are given by their rms in the SI unit of the quantity judged, the noise by its rms behind the chain relative to
 * that of the lines (or to 1 without lines).
 */
final class MachineSimulation {
    static final double RATE = 2560;
    static final Band BAND = Band.of(10, 1000);

    private final Quantity quantity;
    private final double[] lines;
    private final double noise;
    private final double seconds;
    private final SectionCascade bandPass;
    private final int settling;
    private final double whiteNoiseGain;

    MachineSimulation(Quantity quantity, double[] lines, double noise, Band noiseBand, double seconds) {
        this.quantity = quantity;
        this.lines = lines;
        this.noise = noise;
        this.seconds = seconds;
        bandPass = FilterDesign.butterworth(2).bandPass(noiseBand, RATE);
        settling = (int) (RATE * 10 / noiseBand.widthHertz());
        whiteNoiseGain = whiteNoiseGain();
    }

    private int integrations() {
        return Quantity.ACCELERATION.integrationsTo(quantity);
    }

    /** Mean square behind the nominal chain of white noise with a standard deviation of 1, by the midpoint rule. */
    private double whiteNoiseGain() {
        double step = 0.05;
        double sum = 0;
        for (double hertz = 1 + step / 2; hertz < RATE / 2; hertz += step) {
            double gain = bandPass.gain(hertz, RATE) * BandLimitingChain.nominalGain(BAND, hertz)
                    * Math.pow(2 * Math.PI * hertz, -integrations());
            sum += gain * gain * step * 2 / RATE;
        }
        return sum;
    }

    /** One machine of the kind: its speed is drawn once, its recordings differ. */
    Run newRun(Random random) {
        double hertz = 15 + 35 * random.nextDouble();
        double square = 0;
        for (int k = 0; k < lines.length; k++) {
            square += Math.pow(lines[k] * BandLimitingChain.nominalGain(BAND, (k + 1) * hertz), 2);
        }
        double noiseRms = noise * (square > 0 ? Math.sqrt(square) : 1);
        return new Run(hertz, Math.sqrt(square + noiseRms * noiseRms), noiseRms / Math.sqrt(whiteNoiseGain), random);
    }

    /** The machine at one speed. */
    final class Run {
        private final double hertz;
        private final double truth;
        private final double white;
        private final Random random;

        private Run(double hertz, double truth, double white, Random random) {
            this.hertz = hertz;
            this.truth = truth;
            this.white = white;
            this.random = random;
        }

        /** Long-term rms through the nominal chain with a perfect sensor. */
        double truth() {
            return truth;
        }

        /** A recording behind the sampled chain. */
        Waveform judged() {
            int length = (int) (seconds * RATE);
            double[] samples = new double[length + settling];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = white * random.nextGaussian();
            }
            bandPass.newFilter().process(samples, 0, samples, 0, samples.length);
            double[] acceleration = new double[length];
            System.arraycopy(samples, settling, acceleration, 0, length);
            for (int k = 0; k < lines.length; k++) {
                double omega = 2 * Math.PI * (k + 1) * hertz;
                double amplitude = Math.sqrt(2) * lines[k] * Math.pow(omega, integrations());
                double phase = 2 * Math.PI * random.nextDouble();
                for (int i = 0; i < length; i++) {
                    acceleration[i] += amplitude * Math.cos(omega * i / RATE + phase);
                }
            }
            return Waveform.ofSi(Quantity.ACCELERATION, RATE, acceleration).throughSeverityChain(quantity, BAND);
        }
    }
}
