package dev.vibra.spectrum;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.LevelMethod;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.AbstractList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.RandomAccess;
import java.util.stream.IntStream;

/** Peaks of a spectrum, the largest first, unmodifiable; prints as a small table. */
public final class PeakList extends AbstractList<SpectralPeak> implements RandomAccess, Serializable {
    private static final long serialVersionUID = 1;

    private final List<SpectralPeak> peaks;

    PeakList(List<SpectralPeak> peaks) {
        this.peaks = List.copyOf(peaks);
    }

    /** Takes peaks as frequencies and rms values in the SI unit, the largest first. */
    static PeakList of(Quantity quantity, double[] hertz, double[] rms) {
        return new PeakList(IntStream.range(0, hertz.length).mapToObj(i -> new SpectralPeak(hertz[i],
                Level.ofSi(rms[i], quantity, Detector.RMS).by(LevelMethod.SPECTRUM_LINE))).toList());
    }

    private Object readResolve() {
        return new PeakList(peaks);
    }

    /**
     * Returns a peak.
     *
     * @throws IndexOutOfBoundsException if there is no such peak
     */
    @Override
    public SpectralPeak get(int index) {
        return peaks.get(Objects.checkIndex(index, peaks.size()));
    }

    /** Returns the number of peaks. */
    @Override
    public int size() {
        return peaks.size();
    }

    /** Returns a table with one peak a line. */
    @Override
    public String toString() {
        StringBuilder table = new StringBuilder();
        for (SpectralPeak peak : peaks) {
            Unit unit = peak.level().quantity().customaryUnit();
            table.append(table.isEmpty() ? "" : "\n").append(String.format(Locale.ROOT, "%9.2f Hz %9s %s %s",
                    peak.frequencyHertz(), Digits.significant(peak.level().in(unit), 3), unit,
                    peak.level().detector()));
        }
        return table.isEmpty() ? "no peaks" : table.toString();
    }
}
