package dev.vibra.diagnosis.study;

import java.util.ArrayList;
import java.util.List;

/**
 * Magnetic pull in an induction motor: the waves of the field times the permeance of an uneven gap, squared and summed
 * round the gap, at a grid of angles of line and rotor; their Fourier coefficients are the lines of the force.
 *
 * @param polePairs pairs of poles
 * @param still eccentricity of the bore over the gap, towards x
 * @param turning eccentricity that turns with the rotor over the gap
 * @param bars backward wave of a broken cage over the main one, in the rotor's frame
 */
record AirGap(int polePairs, double still, double turning, double bars) {
    private static final int LINE_STEPS = 16;
    private static final int SHAFT_STEPS = 32;
    private static final int PLACES = 64;

    /** A line of the force: its multiples of the line and of the shaft, amplitude and turns. */
    record Pull(int line, int shaft, double amplitude, double turns) {}

    /** What is summed round the gap. */
    enum Sum { LEVEL, UPRIGHT, OVAL }

    /** Field over its largest value at a place of the gap. */
    private double field(double place, double line, double shaft) {
        double wave = Math.cos(polePairs * place - line);
        double backward = bars == 0 ? 0 : bars * Math.cos(polePairs * place - (2 * polePairs * shaft - line));
        double gap = 1 - still * Math.cos(place) - turning * Math.cos(place - shaft);
        return (wave + backward) / gap;
    }

    /** Stress times its share, summed round the gap: for a stress of b²/2 and a bore of radius and length 1. */
    double sum(Sum what, double line, double shaft) {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            double place = 2 * Math.PI * i / PLACES;
            double b = field(place, line, shaft);
            double share = switch (what) {
                case LEVEL -> Math.cos(place);
                case UPRIGHT -> Math.sin(place);
                case OVAL -> Math.cos(2 * place);
            };
            sum += b * b / 2 * share * 2 * Math.PI / PLACES;
        }
        return sum;
    }

    /** Lines beyond a hundredth of the largest, the steady pull left out. */
    List<Pull> pulls(Sum what) {
        double[][] values = new double[LINE_STEPS][SHAFT_STEPS];
        for (int k = 0; k < LINE_STEPS; k++) {
            for (int m = 0; m < SHAFT_STEPS; m++) {
                values[k][m] = sum(what, 2 * Math.PI * k / LINE_STEPS, 2 * Math.PI * m / SHAFT_STEPS);
            }
        }
        List<Pull> pulls = new ArrayList<>();
        for (int k = 0; k <= 4; k++) {
            double[][] row = new double[SHAFT_STEPS][];
            for (int m = 0; m < SHAFT_STEPS; m++) {
                row[m] = overLine(values, k, m);
            }
            for (int m = -SHAFT_STEPS / 2 + 1; m < SHAFT_STEPS / 2; m++) {
                if (k > 0 || m > 0) {
                    pulls.add(overShaft(row, k, m));
                }
            }
        }
        double most = pulls.stream().mapToDouble(Pull::amplitude).max().orElse(0);
        return pulls.stream().filter(one -> one.amplitude() > 1e-2 * most && one.amplitude() > 1e-9).toList();
    }

    private static double[] overLine(double[][] values, int line, int place) {
        double[] sum = new double[2];
        for (int k = 0; k < LINE_STEPS; k++) {
            double turns = (double) line * k / LINE_STEPS;
            sum[0] += values[k][place] * Math.cos(2 * Math.PI * turns);
            sum[1] -= values[k][place] * Math.sin(2 * Math.PI * turns);
        }
        return sum;
    }

    private static Pull overShaft(double[][] row, int line, int shaft) {
        double real = 0;
        double imaginary = 0;
        for (int m = 0; m < SHAFT_STEPS; m++) {
            double c = Math.cos(2 * Math.PI * shaft * m / SHAFT_STEPS);
            double s = -Math.sin(2 * Math.PI * shaft * m / SHAFT_STEPS);
            real += row[m][0] * c - row[m][1] * s;
            imaginary += row[m][0] * s + row[m][1] * c;
        }
        double scale = 2.0 / (LINE_STEPS * SHAFT_STEPS);
        return new Pull(line, shaft, scale * Math.hypot(real, imaginary), Math.atan2(imaginary, real) / (2 * Math.PI));
    }
}
