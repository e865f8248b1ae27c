package dev.vibra.docs.survey.chart;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Band;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a browser needs to explore a curve: values at equal steps, and what the still figure shows with them. Spectra
 * are kept to 24 bits of the largest value and their outlines to 0.02 %, waveforms are written to 16 bits of it.
 */
public final class PlotData {
    private static final double UNKNOWN = 0;

    private final Curve curve;
    private final Shown shown;

    private PlotData(Curve curve, Shown shown) {
        this.curve = curve;
        this.shown = shown;
    }

    /** Values as shares of the largest one, so that neither huge nor tiny levels leave the range of a float. */
    record Curve(boolean spectrum, AxisTitle x, AxisTitle y, double first, double step, int group, double largest,
            Shares shares) {}

    /** Keeps an array out of a record's equals. */
    static final class Shares {
        final float[] of;

        Shares(float[] shares) {
            this.of = shares;
        }
    }

    /** What is drawn with the curve; the speed and the reference level are 0 if there is none. */
    record Shown(double low, double high, double speed, List<SnapLine> lines, List<Lane> lanes, double reference,
            String referenceName) {}

    /**
     * Takes a spectrum.
     *
     * @param values level of each line from 0 Hz on, two lines or more, finite; not kept
     * @param spacingHertz distance of two lines in Hz, above zero
     * @param x title of the frequency axis, its unit Hz
     * @param y title of the axis of the levels
     * @return data that show the whole of it
     * @throws IllegalArgumentException if there are fewer than two lines, or a number is out of range
     */
    public static PlotData spectrum(double[] values, double spacingHertz, AxisTitle x, AxisTitle y) {
        return of(true, values, Require.positive("spacingHertz", spacingHertz, "Hz"), x, y);
    }

    /**
     * Takes a waveform.
     *
     * @param values samples, two or more, finite; not kept
     * @param sampleRateHertz sample rate in Hz, above zero
     * @param x title of the time axis, its unit s
     * @param y title of the axis of the samples
     * @return data that show the whole of it
     * @throws IllegalArgumentException if there are fewer than two samples, or a number is out of range
     */
    public static PlotData waveform(double[] values, double sampleRateHertz, AxisTitle x, AxisTitle y) {
        return of(false, values, 1 / Require.positive("sampleRateHertz", sampleRateHertz, "Hz"), x, y);
    }

    private static PlotData of(boolean spectrum, double[] values, double step, AxisTitle x, AxisTitle y) {
        Require.atLeast("values", values.length, 2);
        Require.allFinite("values", values);
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        float[] shares = new float[values.length];
        for (int i = 0; largest > 0 && i < values.length; i++) {
            shares[i] = (float) (values[i] / largest);
        }
        return new PlotData(new Curve(spectrum, Objects.requireNonNull(x, "x"), Objects.requireNonNull(y, "y"), 0,
                step, 1, largest, new Shares(shares)),
                new Shown(0, (values.length - (spectrum ? 1 : 0)) * step, UNKNOWN, List.of(), List.of(), UNKNOWN, ""));
    }

    /**
     * Leaves out what lies below a frequency, or before a time.
     *
     * @param lowest first place of the axis that is kept, in its unit, before the last value but one
     * @return changed data
     * @throws IllegalArgumentException if less than two values would be left
     */
    public PlotData from(double lowest) {
        float[] all = curve.shares.of;
        Require.within("lowest", lowest, 0, curve.first + (all.length - 2) * curve.step, curve.x.unit());
        int begin = (int) Math.max(0, Math.ceil((lowest - curve.first) / curve.step));
        float[] kept = Arrays.copyOfRange(all, Math.min(begin, all.length - 2), all.length);
        return new PlotData(new Curve(curve.spectrum, curve.x, curve.y,
                curve.first + (all.length - kept.length) * curve.step, curve.step, curve.group, curve.largest,
                new Shares(kept)), shown);
    }

    /**
     * Says what is seen first; the whole range stays within reach.
     *
     * @param low lower end of the axis in its unit, zero or more
     * @param high upper end of the axis
     * @return changed data
     * @throws IllegalArgumentException if the ends are out of range
     */
    public PlotData shown(double low, double high) {
        Band range = Band.of(low, high);
        return with(new Shown(range.lowestHertz(), range.highestHertz(), shown.speed, shown.lines, shown.lanes,
                shown.reference, shown.referenceName));
    }

    /**
     * Lets the frequency axis count in orders too.
     *
     * @param hertz speed of the shaft in Hz, above zero
     * @return changed data
     * @throws IllegalArgumentException if the speed is out of range
     */
    public PlotData withSpeed(double hertz) {
        return with(new Shown(shown.low, shown.high, Require.positive("hertz", hertz, "Hz"), shown.lines, shown.lanes,
                shown.reference, shown.referenceName));
    }

    /**
     * Adds the lines of the analysis, which a cursor snaps to.
     *
     * @param lines lines at their interpolated frequencies and levels
     * @return changed data
     */
    public PlotData withLines(List<SnapLine> lines) {
        return with(new Shown(shown.low, shown.high, shown.speed, List.copyOf(lines), shown.lanes, shown.reference,
                shown.referenceName));
    }

    /**
     * Adds rows of marks above the spectrum.
     *
     * @param lanes rows from top to bottom
     * @return changed data
     */
    public PlotData withLanes(List<Lane> lanes) {
        return with(new Shown(shown.low, shown.high, shown.speed, shown.lines, List.copyOf(lanes), shown.reference,
                shown.referenceName));
    }

    /**
     * Adds a level that lines are held against.
     *
     * @param level level in the unit of the values, above zero
     * @param name what it stands for; may be empty
     * @return changed data
     * @throws IllegalArgumentException if the level is out of range
     */
    public PlotData withReference(double level, String name) {
        return with(new Shown(shown.low, shown.high, shown.speed, shown.lines, shown.lanes,
                Require.positive("level", level, ""), Objects.requireNonNull(name, "name")));
    }

    private PlotData with(Shown changed) {
        return new PlotData(curve, changed);
    }

    /**
     * Thins the curve to the smallest and the largest value of each of a number of equal groups, in the order in which
     * they occur; the page says so. Lines of the analysis stay as they are.
     *
     * @param points largest number of values that are left, two or more
     * @return the outline, or the same data if it has no more values than that
     * @throws IllegalArgumentException if points is out of range
     */
    public PlotData outline(int points) {
        float[] all = curve.shares.of;
        Require.atLeast("points", points, 2);
        if (all.length <= points) {
            return this;
        }
        int size = (int) ((all.length + points / 2 - 1L) / (points / 2));
        int groups = (all.length + size - 1) / size;
        float[] thin = new float[2 * groups];
        for (int group = 0; group < groups; group++) {
            addExtremes(all, group * size, Math.min(all.length, (group + 1) * size), thin, 2 * group);
        }
        // The two values of a group stand at a quarter and at three quarters of it.
        return new PlotData(new Curve(curve.spectrum, curve.x, curve.y, curve.first + (size / 4.0 - 0.5) * curve.step,
                curve.step * size / 2, curve.group * size, curve.largest, new Shares(thin)), shown);
    }

    private static void addExtremes(float[] all, int begin, int end, float[] to, int at) {
        int low = begin;
        int high = begin;
        for (int i = begin + 1; i < end; i++) {
            low = all[i] < all[low] ? i : low;
            high = all[i] > all[high] ? i : high;
        }
        to[at] = all[Math.min(low, high)];
        to[at + 1] = all[Math.max(low, high)];
    }

    /** {@return number of values that the browser gets} */
    public int size() {
        return curve.shares.of.length;
    }

    /** {@return how many values of the signal stand behind two of the outline; empty if all of them are there} */
    public OptionalInt valuesPerGroup() {
        return curve.group == 1 ? OptionalInt.empty() : OptionalInt.of(curve.group);
    }

    /** {@return speed of the shaft in Hz, if it is known} */
    public OptionalDouble speedHertz() {
        return shown.speed == UNKNOWN ? OptionalDouble.empty() : OptionalDouble.of(shown.speed);
    }

    /**
     * Writes the data as one JSON object that may stand in a script element of an HTML page as it is. Its size is some
     * 2.7 bytes a sample of a waveform and 5.4 a line of a spectrum,
     * half of that in its outline.
     *
     * @param out what takes the text
     * @throws IOException if it doesn't
     */
    public void writeJson(Appendable out) throws IOException {
        new PlotJson(out).write(curve, shown);
    }

    /** Returns kind and size, as in {@code spectrum, 25601 values, 0.1563 Hz apart}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s, %d values, %.4g %s apart%s", curve.spectrum ? "spectrum" : "waveform",
                size(), curve.step, curve.x.unit(), curve.group == 1 ? "" : ", outline");
    }
}
