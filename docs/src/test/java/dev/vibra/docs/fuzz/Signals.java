package dev.vibra.docs.fuzz;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Short recordings of machines and of faults of the measurement, as WAV files. */
final class Signals {
    private Signals() {}

    /** Sixteen bits or floating point, one channel. */
    static byte[] recording(Dice dice) {
        double rate = dice.pick(1000, 2560, 5120, 10240, dice.between(1, 50000));
        int length = dice.oneIn(6) ? dice.between(1, 40) : dice.between(256, 4096);
        return wav(samples(dice, rate, length), rate, dice.oneIn(2));
    }

    static byte[] tachometer(Dice dice) {
        double rate = dice.pick(1000, 2560, 5120);
        double[] samples = new double[dice.between(100, 5000)];
        double turning = dice.between(1, 80);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = i * turning / rate % 1 < 0.1 ? 0.9 : 0;
        }
        return wav(samples, rate, dice.oneIn(2));
    }

    private static double[] samples(Dice dice, double rate, int length) {
        double[] samples = new double[length];
        double size = Math.pow(10, dice.oneIn(6) ? dice.between(-12, 12) : dice.between(-2, 0));
        switch (dice.below(9)) {
            case 0 -> { } // nothing was connected
            case 1 -> java.util.Arrays.fill(samples, size);
            case 2 -> noise(dice, samples, size);
            case 3 -> tone(samples, size, dice.between(0, 0.5));
            case 4 -> {
                machine(dice, samples, size, rate);
                clip(samples, size);
            }
            case 5 -> samples[dice.below(length)] = size;
            case 6 -> {
                machine(dice, samples, size, rate);
                java.util.Arrays.fill(samples, length / 2, Math.min(length, length / 2 + length / 8 + 1),
                        samples[length / 2]);
            }
            default -> machine(dice, samples, size, rate);
        }
        return samples;
    }

    private static void machine(Dice dice, double[] samples, double size, double rate) {
        double turning = dice.between(5, 60) / rate;
        for (int order = 1; order <= 3; order++) {
            tone(samples, size * dice.real() / order, order * turning);
        }
        noise(dice, samples, 0.1 * size);
        if (dice.oneIn(2)) {
            impacts(dice, samples, size, rate / dice.between(20, 200));
        }
    }

    private static void tone(double[] samples, double size, double cyclesPerSample) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] += size * Math.sin(2 * Math.PI * cyclesPerSample * i);
        }
    }

    private static void noise(Dice dice, double[] samples, double size) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] += size * (dice.real() + dice.real() + dice.real() - 1.5);
        }
    }

    private static void impacts(Dice dice, double[] samples, double size, double period) {
        double ringing = dice.between(0.1, 0.4);
        for (double at = 0; at < samples.length; at += Math.max(1, period)) {
            for (int i = (int) at; i < Math.min(samples.length, at + 60); i++) {
                samples[i] += size * Math.exp(-(i - at) / 10) * Math.sin(2 * Math.PI * ringing * (i - at));
            }
        }
    }

    private static void clip(double[] samples, double size) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.max(-0.4 * size, Math.min(0.4 * size, samples[i]));
        }
    }

    private static byte[] wav(double[] samples, double rate, boolean real) {
        int bytes = real ? 4 : 2;
        ByteBuffer out = ByteBuffer.allocate(44 + bytes * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + bytes * samples.length)
                .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16).putShort((short) (real ? 3 : 1))
                .putShort((short) 1).putInt((int) rate).putInt((int) rate * bytes).putShort((short) bytes)
                .putShort((short) (8 * bytes)).put("data".getBytes(StandardCharsets.US_ASCII))
                        .putInt(bytes * samples.length);
        for (double sample : samples) {
            if (real) {
                out.putFloat((float) sample);
            } else {
                out.putShort((short) Math.max(-32768, Math.min(32767, Math.round(32000 * sample))));
            }
        }
        return out.array();
    }
}
