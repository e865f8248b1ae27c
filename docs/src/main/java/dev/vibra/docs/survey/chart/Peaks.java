package dev.vibra.docs.survey.chart;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How high the spectrum is at marks: as high as the line that the analysis found there, or else the highest near. */
final class Peaks {
    private final Map<Double, Double> levels = new HashMap<>();

    Peaks(double[] values, double spacing, List<SnapLine> lines, List<Lane> lanes) {
        lanes.forEach(lane -> lane.marks().stream().filter(Lane.Mark::found).forEach(mark ->
                levels.put(mark.hertz(), level(values, spacing, lines, mark.hertz()))));
    }

    /** A found line lies between two lines of the spectrum, so the highest of the neighbours counts. */
    private static double level(double[] values, double spacing, List<SnapLine> lines, double hertz) {
        double level = lines.stream().filter(line -> Math.abs(line.hertz() - hertz) <= spacing)
                .mapToDouble(SnapLine::level).max().orElse(0);
        int centre = (int) Math.min(values.length, Math.max(0, Math.rint(hertz / spacing)));
        for (int i = Math.max(0, centre - 1); i <= Math.min(values.length - 1, centre + 1); i++) {
            level = Math.max(level, values[i]);
        }
        return level;
    }

    double level(double hertz) {
        return levels.getOrDefault(hertz, 0.0);
    }
}
