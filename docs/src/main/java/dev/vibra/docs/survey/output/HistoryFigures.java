package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.CurveFigure;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.history.DescriptorHistory;
import dev.vibra.history.HistoryLimits;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.trend.Interval;
import dev.vibra.trend.Readings;
import dev.vibra.trend.Trend;
import java.time.Instant;
import java.util.List;

/** Draws numbers over the dates of the visits: readings, alarm and trip, the trend since the change with its band. */
final class HistoryFigures {
    /** A row of many pictures helps nobody; the table has the rest, and displacement goes as velocity does. */
    private static final int MOST = 8;
    private static final double HEADROOM = 1.08;
    private static final int POINTS_OF_TREND = 40;

    private final Phrases phrases;
    private final ShownUnits units;

    private HistoryFigures(Phrases phrases, ShownUnits units) {
        this.phrases = phrases;
        this.units = units;
    }

    static List<Figure> of(List<DescriptorHistory> histories, Phrases phrases, ShownUnits units) {
        HistoryFigures figures = new HistoryFigures(phrases, units);
        return histories.stream().filter(one -> one.readings().size() > 2 && one.readings().unit().quantity()
                != Quantity.DISPLACEMENT).limit(MOST).map(figures::draw).toList();
    }

    private Figure draw(DescriptorHistory history) {
        Readings readings = history.readings();
        double[] days = new double[readings.size()];
        double[] values = new double[readings.size()];
        double highest = history.limits().map(limits -> limits.trip().orElse(limits.alarm())).orElse(0.0);
        for (int i = 0; i < days.length; i++) {
            days[i] = CurveFigure.day(instant(readings, readings.day(i)));
            values[i] = readings.value(i);
            highest = Math.max(highest, values[i]);
        }
        Unit unit = readings.unit();
        CurveFigure figure = CurveFigure.overDates(phrases.say("history.date"), instant(readings, readings.firstDay()),
                instant(readings, readings.lastDay())).panel(phrases.say("history.axis", history.descriptor(),
                units.of(unit)), 0, units.shown(HEADROOM * highest, unit));
        figure = history.trend().isPresent() ? trend(figure, history.trend().get(), unit) : figure;
        figure = figure.points(phrases.say("history.readings"), days, shown(values, unit));
        if (history.limits().isPresent()) {
            figure = limits(figure, history.limits().get(), unit);
        }
        if (history.changedSince().isPresent() && history.rises()) {
            figure = figure.upright(phrases.say("history.change"), CurveFigure.day(history.changedSince().get()));
        }
        return figure.draw(phrases.say("history.figure", history.descriptor(), history.point()));
    }

    private static Instant instant(Readings readings, double day) {
        return readings.instantOf(day).orElseThrow();
    }

    private CurveFigure limits(CurveFigure figure, HistoryLimits limits, Unit unit) {
        CurveFigure changed = figure.limit(phrases.say("history.alarm"), units.shown(limits.alarm(), unit));
        return limits.trip().isPresent()
                ? changed.limit(phrases.say("history.trip"), units.shown(limits.trip().getAsDouble(), unit)) : changed;
    }

    private CurveFigure trend(CurveFigure figure, Trend trend, Unit unit) {
        Readings readings = trend.readings();
        double[] days = new double[POINTS_OF_TREND];
        double[] low = new double[POINTS_OF_TREND];
        double[] best = new double[POINTS_OF_TREND];
        double[] high = new double[POINTS_OF_TREND];
        for (int i = 0; i < days.length; i++) {
            double day = readings.firstDay() + i * (readings.lastDay() - readings.firstDay()) / (POINTS_OF_TREND - 1);
            Interval at = trend.at(day);
            days[i] = CurveFigure.day(instant(readings, day));
            low[i] = Math.max(0, at.lowest());
            best[i] = at.best();
            high[i] = at.highest();
        }
        return figure.band(phrases.say("history.band"), days, shown(low, unit), shown(high, unit))
                .line(phrases.say("history.trend"), days, shown(best, unit));
    }

    private double[] shown(double[] values, Unit unit) {
        double[] shown = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            shown[i] = units.shown(values[i], unit);
        }
        return shown;
    }
}
