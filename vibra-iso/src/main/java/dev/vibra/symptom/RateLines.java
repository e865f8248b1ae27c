package dev.vibra.symptom;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.machine.Rate;
import dev.vibra.point.PointSurvey;
import java.util.List;

/** Lines of a rate that a site makes. */
enum RateLines {
    TWICE_LINE("twice-line", Rate.Kind.TWICE_LINE, 1, "twice the line frequency"),
    MESH("mesh", Rate.Kind.GEAR_MESH, 3, "the mesh"),
    BLADES("blades", Rate.Kind.BLADE_PASSING, 3, "blade passing"),
    BELT("belt", Rate.Kind.BELT, 4, "the belt's rate");

    static final List<RateLines> ALL = List.of(values());

    private final String label;
    private final Rate.Kind kind;
    private final int multiples;
    private final String words;

    RateLines(String label, Rate.Kind kind, int multiples, String words) {
        this.label = label;
        this.kind = kind;
        this.multiples = multiples;
        this.words = words;
    }

    int multiples() {
        return multiples;
    }

    String words() {
        return words;
    }

    /** The lines within the spectrum of a point, by their multiples; empty where {@link #missing} says why. */
    List<LineSize> at(PointSurvey point, Site site) {
        if (this == TWICE_LINE) {
            return point.pattern().twiceLine().map(line -> LineSize.of(line, words)).stream().toList();
        }
        return named(point, site).stream().map(line -> sized(point, line)).toList();
    }

    private List<NamedLine> named(PointSurvey point, Site site) {
        return point.lines().stream().filter(line -> isOf(line.rate(), site) && line.order() <= multiples).toList();
    }

    /** A multiple of a belt may fall on one of a shaft: then the line is the shaft's as well as the belt's. */
    private LineSize sized(PointSurvey point, NamedLine line) {
        String name = line.order() == 1 ? words : line.order() + " \u00d7 " + words;
        LineSize size = LineSize.of(line, name);
        boolean mixed = this == BELT && point.lines().stream().anyMatch(other -> other.rate().kind() != Rate.Kind.BELT
                && ShaftLines.standsAt(point, other, line.hertz()));
        return mixed ? size.doubted(name + " isn't parted from another line") : size;
    }

    /** A motor's pull shakes what stands on one base with it, and most where that resonates. */
    List<PointSurvey> pointsOf(Evidence evidence, Site site) {
        return this == TWICE_LINE ? SitePoints.of(evidence, Sites.MACHINE) : SitePoints.of(evidence, site);
    }

    boolean isOf(Rate rate, Site site) {
        return rate.kind() == kind && (this == TWICE_LINE || this == BLADES || rate.owner().equals(site.owner()));
    }

    String missing(PointSurvey point) {
        return this == TWICE_LINE ? point.pattern().twiceLineObstacle()
                : point.speed().speed().isEmpty() ? "the speed isn't known" : words + " lies outside the spectrum";
    }

    /** Returns the word in the table. */
    @Override
    public String toString() {
        return label;
    }
}
