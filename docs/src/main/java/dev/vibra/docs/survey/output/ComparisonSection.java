package dev.vibra.docs.survey.output;

import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.Pulsation;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.point.BearingSurvey;
import dev.vibra.point.LinePhasor;
import dev.vibra.point.PointSurvey;
import dev.vibra.severity.Zone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** All points side by side, by bearing and direction, as they are compared. */
final class ComparisonSection {
    private final Html html;
    private final MachineDescription machine;
    private final List<PointSurvey> points;

    private ComparisonSection(Html html, MachineDescription machine, List<PointSurvey> points) {
        this.html = html;
        this.machine = machine;
        this.points = points;
    }

    static void write(Html html, SurveyRecord record) {
        new ComparisonSection(html, record.survey().machine(), record.survey().points().stream().sorted(Comparator
                .comparing((PointSurvey one) -> firstOf(record.survey().points(), one))
                .thenComparing(one -> one.point().direction().map(Direction::ordinal).orElse(Direction.values().length)))
                .toList()).write();
    }

    /** Points of one place stand together, in the order in which the places were described. */
    private static int firstOf(List<PointSurvey> points, PointSurvey one) {
        for (int i = 0; i < points.size(); i++) {
            if (place(points.get(i).point()).equals(place(one.point()))) {
                return i;
            }
        }
        return points.size();
    }

    /** Where a point lies: its housing or bearing, with its part, if anything is told of it. */
    private static String place(MeasuringPoint point) {
        return Stream.of(point.part(), point.housing().or(point::bearing)).flatMap(Optional::stream).distinct()
                .reduce((part, place) -> part + ", " + place).orElse("");
    }

    private void write() {
        boolean phases = points.stream().filter(one -> ahead(one).isPresent()).count() > 1;
        html.element("h2", html.say("comparison.title")).open("table", "figures");
        List<String> head = new ArrayList<>(List.of(html.say("table.place"), html.say("table.point"),
                html.say("table.direction"), html.say("comparison.velocity"), html.say("comparison.zone"),
                html.say("comparison.acceleration"), html.say("comparison.peak"), html.say("comparison.1x"),
                html.say("comparison.2x"), html.say("comparison.envelope")));
        if (phases) {
            head.add(html.say("comparison.phase"));
        }
        html.row("th", head.toArray(String[]::new));
        String before = "";
        for (PointSurvey point : points) {
            String place = place(point.point());
            html.row("td", row(point, place.equals(before) ? "" : place, phases).toArray(String[]::new));
            before = place;
        }
        html.close("table").element("p", "quiet", html.say("comparison.note")
                + (phases ? " " + html.say("comparison.note-phase") : ""));
    }

    private List<String> row(PointSurvey point, String place, boolean phases) {
        List<String> cells = new ArrayList<>(List.of(place, point.point().id(),
                point.point().direction().map(Object::toString).orElse(""),
                value(point, Words.VELOCITY),
                point.zone().map(Zone::name).orElse(""), value(point, "acceleration-rms"),
                value(point, "acceleration-peak"), value(point, "velocity-rms-1x"), value(point, "velocity-rms-2x"),
                envelope(point)));
        if (phases) {
            OptionalDouble ahead = ahead(point);
            cells.add(ahead.isPresent() ? String.format(Locale.ROOT, "%+.0f\u00b0", ahead.getAsDouble()) : "");
        }
        return cells;
    }

    private String value(PointSurvey point, String name) {
        return point.description().numbers().stream().filter(one -> one.name().equals(name)).findFirst()
                .map(html.units()::number).orElse("");
    }

    /** The deepest pulsation at a rate of the bearing, and whose it is. */
    private static String envelope(PointSurvey point) {
        Stream<ElementFinding> elements = point.bearings().stream().map(BearingSurvey::diagnosis)
                .flatMap(one -> one.findings().stream());
        return elements.filter(one -> one.pulsation().isPresent())
                .max(Comparator.comparingDouble(one -> one.pulsation().map(Pulsation::depth).orElse(0.0)))
                .map(one -> PlainNumber.forPeople(one.pulsation().get().depth()) + " " + one.element()).orElse("");
    }

    /** The first point of the same shaft whose vector is known; vectors of shafts of different speeds say nothing. */
    private Optional<PointSurvey> reference(PointSurvey point) {
        return points.stream().filter(one -> one.pattern().phasor(1).isPresent()
                && machine.ratioAt(one.point()) == machine.ratioAt(point.point())).findFirst();
    }

    private OptionalDouble ahead(PointSurvey point) {
        Optional<PointSurvey> first = reference(point);
        Optional<LinePhasor> here = point.pattern().phasor(1);
        boolean comparable = first.isPresent() && here.isPresent() && (here.get().tie() == LinePhasor.Tie.TACHOMETER
                || point.point().recordingSet().isPresent()
                && point.point().recordingSet().equals(first.get().point().recordingSet()));
        return comparable ? here.get().degreesAheadOf(first.get().pattern().phasor(1).orElseThrow())
                : OptionalDouble.empty();
    }
}
