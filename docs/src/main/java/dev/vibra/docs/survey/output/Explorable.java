package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.PlotData;
import java.util.Objects;
import java.util.Optional;

/** A figure as a still picture, and the values by which a browser explores it, if there are any. */
final class Explorable {
    private final Figure still;
    private final PlotData data;

    Explorable(Figure still, PlotData data) {
        this.still = Objects.requireNonNull(still, "still");
        this.data = data;
    }

    /** A figure that is only looked at. */
    static Explorable still(Figure still) {
        return new Explorable(still, null);
    }

    Figure still() {
        return still;
    }

    Optional<PlotData> data() {
        return Optional.ofNullable(data);
    }
}
