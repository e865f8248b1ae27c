package dev.vibra.rotation;

import dev.vibra.internal.Sorted;
import dev.vibra.transform.RealTransform;
import dev.vibra.window.Window;
import java.util.Arrays;

/** Complex amplitudes of orders in overlapping blocks of angle, each under a Hann window. */
final class AngleBlocks {
    /** Distance from a multiple, in orders, up to which the noise is looked at; lines take less than half of it. */
    private static final double AROUND = 1.2;

    private final double[] samples;
    /** Angle at each sample; beyond the ends of the course at the speed of its end. */
    private final double[] angles;
    private final double[] once;
    /** Number of the first sample of each block, and in weights of its first weight. */
    private final int[] first;
    private final int[] at;
    private final double[] weights;
    private final double[] power;
    private final double linesPerOrder;

    AngleBlocks(ShaftAngle angle, LowRate low, double[] middles) {
        samples = low.samples;
        angles = angles(angle, low);
        once = turning();
        first = new int[middles.length];
        at = new int[middles.length + 1];
        int from = 0;
        int to = 0;
        for (int j = 0; j < middles.length; j++) {
            while (from < angles.length && angles[from] <= middles[j] - 0.5 * TrackedAngle.BLOCK) {
                from++;
            }
            while (to < angles.length && angles[to] < middles[j] + 0.5 * TrackedAngle.BLOCK) {
                to++;
            }
            first[j] = from;
            at[j + 1] = at[j] + to - from;
        }
        weights = weights(middles);
        EvenTurning even = EvenTurning.of(angle, low.startSeconds, low.rateHertz, low.samples.length);
        power = power(even.resample(low.samples));
        linesPerOrder = 2.0 * (power.length - 1) * angle.meanSpeed().hertz() / low.rateHertz;
    }

    /** Power over the whole course by order, as noise gives it in one block. */
    private double[] power(double[] evenly) {
        RealTransform transform = RealTransform.of(Integer.highestOneBit(2 * evenly.length - 1));
        double[] shape = Window.hann().samples(evenly.length);
        double[] padded = new double[transform.length()];
        double squares = 0;
        for (int i = 0; i < evenly.length; i++) {
            padded[i] = shape[i] * evenly[i];
            squares += shape[i] * shape[i];
        }
        double[] spectrum = transform.forward(padded, 0, new double[2 * transform.lines()]);
        double scale = 0;
        for (double weight : weights) {
            scale += weight * weight / first.length / squares;
        }
        double[] out = new double[transform.lines()];
        for (int k = 0; k < out.length; k++) {
            out[k] = scale * (spectrum[2 * k] * spectrum[2 * k] + spectrum[2 * k + 1] * spectrum[2 * k + 1]);
        }
        return out;
    }

    /** Mean power that noise alone would have in a block at a multiple: from the median of the lines around it. */
    double noise(int multiple) {
        int from = (int) Math.max(1, (multiple - AROUND) * linesPerOrder);
        int to = (int) Math.min(power.length, (multiple + AROUND) * linesPerOrder);
        return Sorted.percentile(Arrays.copyOfRange(power, from, to), 50) / Math.log(2);
    }

    private static double[] angles(ShaftAngle angle, LowRate low) {
        double[] angles = angle.revolutionsAt(low.startSeconds, low.rateHertz, 0, low.samples.length);
        double before = angle.speedAt(0).hertz();
        double after = angle.speedAt(angle.revolutions()).hertz();
        for (int i = 0; i < angles.length; i++) {
            double time = low.startSeconds + i / low.rateHertz;
            angles[i] = time < angle.firstSeconds() ? before * (time - angle.firstSeconds())
                    : time > angle.lastSeconds() ? angle.revolutions() + after * (time - angle.lastSeconds())
                    : angles[i];
        }
        return angles;
    }

    private double[] weights(double[] middles) {
        double[] all = new double[at[middles.length]];
        for (int j = 0; j < middles.length; j++) {
            for (int i = at[j]; i < at[j + 1]; i++) {
                double away = angles[first[j] + i - at[j]] - middles[j];
                all[i] = 1 + Math.cos(2 * Math.PI * away / TrackedAngle.BLOCK);
            }
        }
        return all;
    }

    /** {@code exp(-2πi·θ)} at each sample. */
    private double[] turning() {
        double[] turning = new double[2 * angles.length];
        for (int i = 0; i < angles.length; i++) {
            turning[2 * i] = Math.cos(2 * Math.PI * angles[i]);
            turning[2 * i + 1] = -Math.sin(2 * Math.PI * angles[i]);
        }
        return turning;
    }

    /** The samples turned back by a multiple. */
    double[] turnedBack(int multiple) {
        double[] back = new double[once.length];
        for (int i = 0; i < samples.length; i++) {
            double re = samples[i];
            double im = 0;
            double powerRe = once[2 * i];
            double powerIm = once[2 * i + 1];
            for (int rest = multiple; rest > 0; rest >>= 1) {
                if ((rest & 1) == 1) {
                    double next = re * powerRe - im * powerIm;
                    im = re * powerIm + im * powerRe;
                    re = next;
                }
                double squared = powerRe * powerRe - powerIm * powerIm;
                powerIm = 2 * powerRe * powerIm;
                powerRe = squared;
            }
            back[2 * i] = re;
            back[2 * i + 1] = im;
        }
        return back;
    }

    /** Real and imaginary part of the mean in each block, to a common scale. */
    double[] means(double[] turnedBack) {
        double[] out = new double[2 * first.length];
        for (int j = 0; j < first.length; j++) {
            double re = 0;
            double im = 0;
            for (int i = at[j], sample = 2 * first[j]; i < at[j + 1]; i++, sample += 2) {
                re += weights[i] * turnedBack[sample];
                im += weights[i] * turnedBack[sample + 1];
            }
            out[2 * j] = re;
            out[2 * j + 1] = im;
        }
        return out;
    }
}
