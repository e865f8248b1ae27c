package dev.vibra.rotation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The speeds worth weighing: those that a line, a half or a third of one, or a frequent distance of lines stand for.
 */
final class SpeedCandidates {
    private static final int FEWEST_LINES = 4;
    private static final int MOST = 12;
    private static final int LARGEST_DIVISOR = 3;
    private static final int CLOSE_DISTANCES = 4;

    private final LineSet lines;
    private final SpeedKnowledge known;
    private final LineSpacings spacings;
    private final List<SpeedEvidence> all = new ArrayList<>();

    private SpeedCandidates(LineSet lines, SpeedKnowledge known) {
        this.lines = lines;
        this.known = known;
        double highest = known.possible().stream().mapToDouble(band -> band.highestHertz()).max().orElse(0);
        spacings = new LineSpacings(lines, 1.3 * highest);
    }

    /** Weighs them; the best first, those within a line or 1 % of a better one left out. */
    static List<SpeedEvidence> of(LineSet lines, SpeedKnowledge known) {
        SpeedCandidates candidates = new SpeedCandidates(lines, known);
        candidates.weighLines();
        candidates.weighDistances();
        return candidates.apart();
    }

    private void weighLines() {
        for (int i = 0; i < lines.count(); i++) {
            for (int n = 1; n <= LARGEST_DIVISOR; n++) {
                weigh(lines.hertz(i) / n, 0.2 * lines.resolutionHertz() / n);
            }
        }
    }

    private void weighDistances() {
        for (int i = 0; i + CLOSE_DISTANCES <= spacings.count(); i++) {
            double first = spacings.distance(i);
            double last = spacings.distance(i + CLOSE_DISTANCES - 1);
            if (last - first < 0.2 * lines.resolutionHertz()) {
                weigh(0.5 * (first + last), 0.15 * lines.resolutionHertz());
                i += CLOSE_DISTANCES - 1;
            }
        }
    }

    private void weigh(double hertz, double error) {
        if (hertz >= FEWEST_LINES * lines.resolutionHertz() && known.allows(hertz)) {
            ShaftLines shaft = new ShaftLines(lines, known, hertz, error);
            if (known.allows(shaft.hertz()) && !shaft.isHum()) {
                all.add(new SpeedEvidence(lines, spacings, known, shaft));
            }
        }
    }

    private List<SpeedEvidence> apart() {
        List<SpeedEvidence> apart = new ArrayList<>();
        all.sort(Comparator.comparingDouble((SpeedEvidence one) -> -logOdds(one, known)));
        for (SpeedEvidence one : all) {
            double hertz = one.shaft().hertz();
            double near = Math.max(0.01 * hertz, 0.6 * lines.resolutionHertz());
            if (apart.size() < MOST
                    && apart.stream().noneMatch(better -> Math.abs(better.shaft().hertz() - hertz) <= near)) {
                apart.add(one);
            }
        }
        return apart;
    }

    /** Logarithm of the odds of a speed against none, with what was known before. */
    static double logOdds(SpeedEvidence one, SpeedKnowledge known) {
        return one.worth() + known.logDensity(one.shaft().hertz()) - SpeedClue.NONE;
    }
}
