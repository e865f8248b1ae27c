package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Require;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Values along one side of a plot, linear, logarithmic or by date, and the ticks at them: 1, 2 or 5 times a power of
 * ten, or the begins of hours, days, months and years. Every tick has its number.
 */
final class Axis {
    private static final int[] LEADS = {1, 2, 5};
    private static final int[] ANGLES = {15, 30, 45, 90, 180};
    /** Numbers with more zeros than this are written with a power of ten. */
    private static final int MOST_ZEROS = 5;
    /** Ends that lie closer together have no numbers between them that differ in print. */
    private static final double LEAST_RANGE = 1e-12;
    private static final String RAISED = "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079";

    private enum Kind { LINEAR, LOGARITHMIC, DATE, DEGREES }

    /**
     * A place on the axis that has a number.
     *
     * @param value value there
     * @param label its number
     */
    record Tick(double value, String label) {}

    private final Kind kind;
    private final double from;
    private final double to;

    private Axis(Kind kind, double from, double to) {
        this.kind = kind;
        this.from = from;
        this.to = to;
    }

    /** Makes a linear axis; ends that are the same are drawn apart. */
    static Axis linear(double from, double to) {
        return wide(Kind.LINEAR, from, to);
    }

    /** Makes an axis of days since the begin of 1970 in Greenwich. */
    static Axis dates(double fromDay, double toDay) {
        double middle = (fromDay + toDay) / 2;
        return toDay - fromDay < 1.0 / 24 ? wide(Kind.DATE, middle - 0.5, middle + 0.5)
                : wide(Kind.DATE, fromDay, toDay);
    }

    /** Makes an axis of angles, with ticks at parts of a turn. */
    static Axis degrees(double from, double to) {
        return wide(Kind.DEGREES, from, to);
    }

    private static Axis wide(Kind kind, double from, double to) {
        Require.finite("from", from);
        Require.finite("to", to);
        double size = Math.max(Math.abs(from), Math.abs(to));
        if (to - from > size * LEAST_RANGE) {
            return new Axis(kind, from, to);
        }
        double more = size > 0 ? size * 0.1 : 1;
        return new Axis(kind, from - more, to + more);
    }

    /** Makes a logarithmic axis; it covers a factor of two or more. */
    static Axis logarithmic(double from, double to) {
        Require.positive("from", from, "");
        Require.positive("to", to, "");
        return new Axis(Kind.LOGARITHMIC, from, Math.max(to, 2 * from));
    }

    double from() {
        return from;
    }

    double to() {
        return to;
    }

    /** Returns where a value lies: 0 at the begin of the axis, 1 at its end, outside of them beyond. */
    double share(double value) {
        if (kind == Kind.LOGARITHMIC) {
            return value <= 0 ? -1 : Math.max(-1, Math.log(value / from) / Math.log(to / from));
        }
        return (value - from) / (to - from);
    }

    /** Returns ticks from the lower end to the upper one, as many as there is room for. */
    List<Tick> ticks(int most) {
        return switch (kind) {
            case LINEAR -> linearTicks(most);
            case LOGARITHMIC -> logarithmicTicks(most);
            case DATE -> DateTicks.of(from, to, most);
            case DEGREES -> angleTicks(most);
        };
    }

    /** Angles apart by a part of a turn, if that makes two or more; else round numbers. */
    private List<Tick> angleTicks(int most) {
        for (int step : ANGLES) {
            long first = (long) Math.ceil(from / step - 1e-9);
            long last = (long) Math.floor(to / step + 1e-9);
            if (last - first < most && last > first) {
                return multiples(BigDecimal.valueOf(step), first, last);
            }
        }
        return linearTicks(most);
    }

    private List<Tick> linearTicks(int most) {
        double least = (to - from) / Math.max(1, most);
        int power = (int) Math.floor(Math.log10(least)) - 1;
        for (int i = 0; ; i++) {
            BigDecimal step = new BigDecimal(BigInteger.valueOf(LEADS[i % 3]), -(power + i / 3));
            double size = step.doubleValue();
            long first = (long) Math.ceil(from / size - 1e-9);
            long last = (long) Math.floor(to / size + 1e-9);
            if (last - first < most) {
                return multiples(step, first, last);
            }
        }
    }

    private static List<Tick> multiples(BigDecimal step, long first, long last) {
        BigDecimal largest = step.multiply(BigDecimal.valueOf(Math.max(Math.abs(first), Math.abs(last))));
        boolean raised = step.scale() > MOST_ZEROS || largest.precision() - largest.scale() > MOST_ZEROS + 1;
        List<Tick> ticks = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            BigDecimal value = step.multiply(BigDecimal.valueOf(i));
            ticks.add(new Tick(value.doubleValue(), raised ? raised(value)
                    : plain(value.setScale(Math.max(0, step.scale()), RoundingMode.UNNECESSARY))));
        }
        return ticks;
    }

    private List<Tick> logarithmicTicks(int most) {
        int first = (int) Math.ceil(Math.log10(from) - 1e-9);
        int last = (int) Math.floor(Math.log10(to) + 1e-9);
        List<Tick> fine = new ArrayList<>();
        for (int power = first - 1; power <= last; power++) {
            for (int lead : LEADS) {
                addLogarithmic(fine, lead, power);
            }
        }
        if (fine.size() <= most) {
            return fine.size() > 1 ? fine : linearTicks(most);
        }
        int every = (last - first) / Math.max(1, most) + 1;
        List<Tick> coarse = new ArrayList<>();
        for (int power = -Math.floorDiv(-first, every) * every; power <= last; power += every) {
            addLogarithmic(coarse, 1, power);
        }
        return coarse;
    }

    private void addLogarithmic(List<Tick> ticks, int lead, int power) {
        BigDecimal value = new BigDecimal(BigInteger.valueOf(lead), -power);
        double size = value.doubleValue();
        if (size >= from * (1 - 1e-9) && size <= to * (1 + 1e-9)) {
            ticks.add(new Tick(size, power < -4 || power > MOST_ZEROS ? raised(value) : plain(value)));
        }
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.toPlainString().replace('-', '\u2212');
    }

    private static String raised(BigDecimal value) {
        if (value.signum() == 0) {
            return "0";
        }
        BigDecimal brief = value.stripTrailingZeros();
        int power = brief.precision() - brief.scale() - 1;
        StringBuilder exponent = new StringBuilder(power < 0 ? "\u207b" : "");
        Integer.toString(Math.abs(power)).chars().forEach(digit -> exponent.append(RAISED.charAt(digit - '0')));
        BigDecimal lead = brief.movePointLeft(power);
        return lead.compareTo(BigDecimal.ONE) == 0 ? "10" + exponent : plain(lead) + "\u00b710" + exponent;
    }
}
