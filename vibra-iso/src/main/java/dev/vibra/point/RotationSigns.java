package dev.vibra.point;

import dev.vibra.descriptor.DominantLine;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Whether a recording shows that the machine turned. Lines at multiples of the line frequency may come from hum or
 * from a machine that is switched on and stands; where the line frequency isn't told both usual ones count as such. A
 * rate that can't be told from the line frequency, as that of a motor with two poles, has the benefit of the doubt.
 */
final class RotationSigns {
    private static final List<Double> USUAL_MAINS = List.of(50.0, 60.0);

    private final Signals signals;
    private final List<Double> mains;

    RotationSigns(Signals signals, OptionalDouble lineHertz) {
        this.signals = signals;
        this.mains = lineHertz.isPresent() ? List.of(lineHertz.getAsDouble()) : USUAL_MAINS;
    }

    /** With a known speed a line of the machine's own rates must stand; without one any line that isn't the mains'. */
    boolean show(List<NamedLine> lines, List<DominantLine> dominant) {
        if (signals.angle().isPresent()) {
            return true;
        }
        return lines.isEmpty() ? dominant.stream().anyMatch(line -> !isMains(line.hertz()))
                : lines.stream().filter(line -> line.stands() && line.rate().kind().isMechanical())
                .anyMatch(line -> !isMains(line.hertz()) || isMains(line.rate().hertz()));
    }

    private boolean isMains(double hertz) {
        double near = 0.6 * signals.spectrum().resolutionHertz();
        return mains.stream().anyMatch(base -> hertz > 0.5 * base
                && Math.abs(hertz - base * Math.rint(hertz / base)) < near);
    }
}
