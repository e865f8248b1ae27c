package dev.vibra.rotation;

/** What the lines of a recording say for and against one speed, clue by clue, and how much that is worth. */
final class SpeedEvidence {
    private static final double ENOUGH = 10;
    static final double TELLING_SPACINGS = 1.5;
    private static final double REACH = 4;
    private static final double BESIDE = 0.06;
    /** Gears, vanes and bearings have rates from here on, in multiples of the speed. */
    private static final double FASTER_RATES = 2.4;
    private static final double LEAST_SHARE = 1e-3;
    private static final double MOST_SHARES = 3;
    /** A cage moves the housing less than its shaft does. */
    private static final double CAGE_SHARE = 0.3;

    /** As a shaft beside the one that is measured hardly shows; common practice, no source. */
    private static final double MOST = 4;

    private static final SpeedClue[] CLUES = SpeedClue.values();

    private final LineSet lines;
    private final ShaftLines shaft;
    private final double[] clues = new double[CLUES.length];
    private int strongestLeft = -1;

    SpeedEvidence(LineSet lines, LineSpacings spacings, SpeedKnowledge known, ShaftLines shaft) {
        this.lines = lines;
        this.shaft = shaft;
        weighMultiples();
        weighSpacings(spacings);
        weighOthers(known);
        set(SpeedClue.LONE, isLone() && !known.isNarrow() ? 1 : 0);
    }

    private void weighMultiples() {
        double all = 0;
        double odd = 0;
        double notThird = 0;
        for (int n = 1; n <= ShaftLines.MULTIPLES; n++) {
            double evidence = shaft.evidence(n);
            all += evidence;
            odd += n % 2 == 0 ? 0 : evidence;
            notThird += n % 3 == 0 ? 0 : evidence;
        }
        set(SpeedClue.MULTIPLES, Math.max(0, Math.min(ENOUGH, all)));
        set(SpeedClue.MANY_MULTIPLES, Math.log1p(Math.max(0, all - ENOUGH)));
        set(SpeedClue.MISSING, Math.min(0, all));
        set(SpeedClue.OF_MULTIPLE, Math.min(0, Math.min(odd, notThird)));
        set(SpeedClue.ALTERNATION, shaft.alternation());
        set(SpeedClue.HALVES, shaft.halfOrders());
        int first = shaft.line(1);
        // Hum is no sign of a shaft.
        if (first < 0 || shaft.mayBeHum(first)) {
            set(SpeedClue.NO_FIRST, 1);
        } else {
            set(SpeedClue.FIRST, Math.min(5, Math.log(lines.over(first))));
        }
    }

    private void weighSpacings(LineSpacings spacings) {
        double tolerance = shaft.tolerance(1);
        int pairs = spacings.count(shaft.hertz(), tolerance);
        double expected = 2 * tolerance * spacings.density(shaft.hertz(), tolerance);
        set(SpeedClue.SPACINGS, pairs <= expected ? 0
                : Math.log1p(pairs * Math.log(pairs / expected) - (pairs - expected)));
    }

    /** Lines beside the multiples: slower or little faster ones need another shaft, faster ones may be of this one. */
    private void weighOthers(SpeedKnowledge known) {
        double own = shaft.largest();
        double above = LEAST_SHARE * own;
        double strongest = 0;
        int last = lines.from(REACH * shaft.hertz());
        for (int i = lines.from(Math.max(2, 0.1 * shaft.hertz())); i < last; i++) {
            double ratio = lines.hertz(i) / shaft.hertz();
            if (Math.abs(ratio - 1) < BESIDE || shaft.explain(i)) {
                continue;
            }
            if (ratio > FASTER_RATES) {
                above = Math.max(above, lines.size(i));
            } else if (known.allows(lines.hertz(i))) {
                double share = lines.size(i) / (lines.size(i) + own);
                SpeedClue clue = share < CAGE_SHARE && mayBeCage(ratio) ? SpeedClue.CAGE
                        : ratio < 1 ? SpeedClue.SLOWER : SpeedClue.LITTLE_FASTER;
                set(clue, Math.min(MOST_SHARES, clue(clue) + share));
            }
            if (lines.size(i) > strongest) {
                strongest = lines.size(i);
                strongestLeft = i;
            }
        }
        set(SpeedClue.FASTER_ONE, own == 0 ? 3 : Math.max(-3, Math.min(3, Math.log(above / own))));
    }

    /** A cage turns at 0.33 to 0.48 of the shaft on it (bearing kinematics), and beats with the shaft. */
    private static boolean mayBeCage(double ratio) {
        double beat = Math.abs(ratio - Math.rint(ratio));
        return beat > 0.33 && beat < 0.48;
    }

    private void set(SpeedClue clue, double value) {
        clues[clue.ordinal()] = value;
    }

    ShaftLines shaft() {
        return shaft;
    }

    /** Tells whether a single line is all that speaks for the speed. */
    boolean isLone() {
        long lines = shaft.multiples().stream().filter(n -> !shaft.mayBeHum(shaft.line(n))).count();
        return lines <= 1 && clue(SpeedClue.SPACINGS) < TELLING_SPACINGS && clue(SpeedClue.HALVES) == 0;
    }

    /** Tells whether a line is left unexplained that dwarfs all multiples: it has a speed of its own to be found. */
    boolean leavesMost() {
        return strongestLeft >= 0 && !shaft.mayBeHum(strongestLeft)
                && lines.size(strongestLeft) > MOST * shaft.largest();
    }

    /** Values of all clues, in their order. */
    double[] clues() {
        return clues.clone();
    }

    double clue(SpeedClue clue) {
        return clues[clue.ordinal()];
    }

    /** Index of the largest line up to four times the speed that it doesn't explain, or -1. */
    int strongestLeft() {
        return strongestLeft;
    }

    /** Logarithm of the odds against "none of the speeds", but for a constant that all speeds share. */
    double worth() {
        double sum = 0;
        for (SpeedClue clue : CLUES) {
            sum += clue.weight() * clues[clue.ordinal()];
        }
        return sum;
    }
}
