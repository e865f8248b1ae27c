package dev.vibra.symptom;

import dev.vibra.machine.MeasuringPoint;
import dev.vibra.point.PointSurvey;
import java.util.List;
import java.util.Locale;

/** Directions that a question takes. */
enum Way {
    RADIAL,
    AXIAL,
    ANY;

    static final List<Way> ALL = List.of(values());
    static final List<Way> ONE = List.of(RADIAL, AXIAL);

    boolean takes(MeasuringPoint point) {
        return switch (this) {
            case RADIAL -> point.isRadial();
            case AXIAL -> point.isAxial();
            case ANY -> true;
        };
    }

    List<PointSurvey> of(List<PointSurvey> points) {
        return points.stream().filter(point -> takes(point.point())).toList();
    }

    /** What is missing where there is no such point. */
    String noPoint() {
        return this == ANY ? "no point here has a recording that is good for it"
                : "no " + this + " point here has a recording that is good for it";
    }

    /** Returns the word in the table. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
