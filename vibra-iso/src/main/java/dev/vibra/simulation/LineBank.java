package dev.vibra.simulation;

import java.util.List;

/**
 * Adds lines to the recordings of all points at once. The cosine and sine of a line over a block are made once for all
 * points, by doubling: {@code e^(i(n+j)w) = e^(inw)·e^(ijw)}; each point then adds its own vector times them. The
 * speed of the shaft sways slowly, so each block has its own frequency and begins where the one before it ended.
 */
final class LineBank {
    private static final int BLOCK = 256;
    private static final int SWAYS = 2;

    private final double mainHertz;
    private final double sampleRate;
    private final double[] swayHertz = new double[SWAYS];
    private final double[] swayTurns = new double[SWAYS];
    private final double[] swayPhase = new double[SWAYS];
    private final double[] cos = new double[BLOCK];
    private final double[] sin = new double[BLOCK];

    LineBank(double mainHertz, double sampleRate, Draws draws) {
        this.mainHertz = mainHertz;
        this.sampleRate = sampleRate;
        for (int i = 0; i < SWAYS; i++) {
            swayHertz[i] = draws.logUniform(0.03, 0.4);
            // The speed of machines at the line sways by a hundredth to some hundredths of a percent (an assumption).
            swayTurns[i] = mainHertz * draws.logUniform(1e-5, 2.5e-4) / (2 * Math.PI * swayHertz[i]);
            swayPhase[i] = draws.angle();
        }
    }

    /** Turns of the main shaft since the first sample. */
    double turns(double seconds) {
        double turns = mainHertz * seconds;
        for (int i = 0; i < SWAYS; i++) {
            turns += swayTurns[i] * (StrictMath.sin(2 * Math.PI * swayHertz[i] * seconds + swayPhase[i])
                    - StrictMath.sin(swayPhase[i]));
        }
        return turns;
    }

    /**
     * Adds lines.
     *
     * @param lines lines
     * @param starts instant at which the recording of each point begins in s; steady vectors turn until then
     * @param samples acceleration of each point so far
     */
    void add(List<Line> lines, double[] starts, double[][] samples) {
        int length = samples[0].length;
        double before = turns(0);
        for (int first = 0; first < length; first += BLOCK) {
            int count = Math.min(BLOCK, length - first);
            double begin = first / sampleRate;
            double end = (first + BLOCK) / sampleRate;
            double after = turns(end);
            for (Line line : lines) {
                double from = line.order() * before + line.offsetHertz() * begin;
                double to = line.order() * after + line.offsetHertz() * end;
                fill(2 * Math.PI * (from - Math.rint(from)), 2 * Math.PI * (to - from) / BLOCK);
                if (!line.wander().isSteady()) {
                    sway(line.wander(), begin, end);
                }
                addTo(samples, line, starts, first, count);
            }
            before = after;
        }
    }

    private void addTo(double[][] samples, Line line, double[] starts, int first, int count) {
        double hertz = line.hertz(mainHertz);
        for (int p = 0; p < samples.length; p++) {
            double re = line.re()[p];
            double im = line.im()[p];
            if (starts[p] != starts[0]) {
                double turned = hertz * (starts[p] - starts[0]);
                double c = StrictMath.cos(2 * Math.PI * (turned - Math.rint(turned)));
                double s = StrictMath.sin(2 * Math.PI * (turned - Math.rint(turned)));
                double kept = re;
                re = kept * c - im * s;
                im = kept * s + im * c;
            }
            mix(samples[p], first, count, re, im);
        }
    }

    private void mix(double[] out, int first, int count, double re, double im) {
        for (int j = 0; j < count; j++) {
            out[first + j] += re * cos[j] - im * sin[j];
        }
    }

    private void fill(double phase, double step) {
        cos[0] = StrictMath.cos(phase);
        sin[0] = StrictMath.sin(phase);
        double c = StrictMath.cos(step);
        double s = StrictMath.sin(step);
        for (int done = 1; done < BLOCK; done *= 2) {
            for (int j = 0; j < done; j++) {
                cos[done + j] = cos[j] * c - sin[j] * s;
                sin[done + j] = cos[j] * s + sin[j] * c;
            }
            double square = c * c - s * s;
            s = 2 * c * s;
            c = square;
        }
    }

    /** Multiplies by the wandering vector, drawn straight from block to block. */
    private void sway(Wander wander, double begin, double end) {
        double re = wander.re(begin);
        double im = wander.im(begin);
        double stepRe = (wander.re(end) - re) / BLOCK;
        double stepIm = (wander.im(end) - im) / BLOCK;
        for (int j = 0; j < BLOCK; j++) {
            double a = re + j * stepRe;
            double b = im + j * stepIm;
            double kept = cos[j];
            cos[j] = kept * a - sin[j] * b;
            sin[j] = kept * b + sin[j] * a;
        }
    }
}
