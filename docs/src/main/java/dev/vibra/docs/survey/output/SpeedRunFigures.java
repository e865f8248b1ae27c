package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.BodeFigure;
import dev.vibra.docs.survey.chart.CascadeFigure;
import dev.vibra.docs.survey.chart.CentreLineFigure;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.docs.survey.chart.OrbitFigure;
import dev.vibra.docs.survey.chart.SpeedCurve;
import dev.vibra.docs.survey.chart.SpeedNames;
import dev.vibra.docs.survey.chart.SpeedPolarFigure;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.FullSpectrum;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.speedrun.Cascade;
import dev.vibra.speedrun.CentrePoint;
import dev.vibra.speedrun.FollowedOrder;
import dev.vibra.speedrun.OrbitAt;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedRun;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Draws the figures of a run-up or coast-down. */
final class SpeedRunFigures {
    /** Of the spectra every second one is drawn. */
    private static final int EVERY = 2;
    /** An order that stands out at fewer points has no vector to draw. */
    private static final double STANDS = 0.1;
    private static final int WRITTEN_SPEEDS = 8;
    private static final List<Double> CASCADE_ORDERS = List.of(0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0);
    /** The cascade ends where nothing above this share of the largest line follows. */
    private static final double WORTH_SHOWING = 0.03;
    private static final double FEWEST_ORDERS = 3.2;

    private final Phrases phrases;
    private final ShownUnits units;
    private final RunWords words;

    private SpeedRunFigures(Phrases phrases, ShownUnits units) {
        this.phrases = phrases;
        this.units = units;
        this.words = new RunWords(phrases, units);
    }

    /** What the figures of a point or a pair of probes of a run are kept by. */
    static String key(String run, String part) {
        return run + ", " + part;
    }

    static List<Figure> of(SpeedRun run, PointRun point, Phrases phrases, ShownUnits units) {
        SpeedRunFigures figures = new SpeedRunFigures(phrases, units);
        List<Figure> drawn = new ArrayList<>();
        point.order(1).ifPresent(order -> drawn.add(figures.bode(run, point, order)));
        if (point.orders().stream().anyMatch(order -> order.standingShare() >= STANDS)) {
            drawn.add(figures.polar(point));
        }
        point.cascade().ifPresent(cascade -> drawn.add(figures.cascade(point, cascade)));
        return drawn;
    }

    static List<Figure> of(ProbePairRun pair, Phrases phrases, ShownUnits units) {
        SpeedRunFigures figures = new SpeedRunFigures(phrases, units);
        return List.of(figures.orbits(pair), figures.centre(pair));
    }

    private SpeedCurve curve(FollowedOrder order) {
        List<SpeedPoint> points = order.track().points();
        double[] speeds = new double[points.size()];
        double[] levels = new double[points.size()];
        double[] lags = new double[points.size()];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = points.get(i).speed().revolutionsPerMinute();
            levels[i] = units.shown(RunWords.level(order.quantity(), points.get(i).vector().amplitude()),
                    RunWords.unit(order.quantity()));
            lags[i] = order.stands(i) ? points.get(i).vector().lagDegrees() : Double.NaN;
        }
        return new SpeedCurve(SpeedNames.order(order.order()), speeds, levels, lags);
    }

    private Figure bode(SpeedRun run, PointRun point, FollowedOrder order) {
        List<BodeFigure.Mark> marks = new ArrayList<>();
        point.resonances().stream().filter(one -> one.order() == 1).forEach(one -> marks.add(new BodeFigure.Mark(
                one.speed().revolutionsPerMinute(), words.about(one, phrases.say(
                        "run.mark-resonance", RunWords.rpm(one.speed().hertz()))))));
        run.service().map(RotationSpeed::revolutionsPerMinute).ifPresent(speed -> marks.add(new BodeFigure.Mark(speed,
                phrases.say("run.mark-service", Math.round(speed)))));
        return BodeFigure.of(curve(order), marks, new BodeFigure.Titles(phrases.say("run.axis-speed"),
                words.levelTitle(order.quantity()), phrases.say("run.axis-lag")), phrases.say(
                point.slowRoll().isPresent() ? "run.figure-bode-compensated" : "run.figure-bode", point.id()));
    }

    private Figure polar(PointRun point) {
        Quantity quantity = point.orders().get(0).quantity();
        List<SpeedCurve> curves = point.orders().stream().filter(order -> order.standingShare() >= STANDS)
                .map(this::curve).map(SpeedCurve::standing).toList();
        String unit = units.of(RunWords.unit(quantity)) + " " + RunWords.detector(quantity);
        return SpeedPolarFigure.of(curves, speeds(point), new SpeedPolarFigure.Titles(unit,
                phrases.say("run.rotation"), phrases.say("run.axis-speed"), words.levelTitle(quantity)),
                phrases.say("run.figure-polar", point.id()));
    }

    /** Speeds that are written at a curve: both ends, the resonances, and some between where the vector moves far. */
    private static List<Double> speeds(PointRun point) {
        List<SpeedPoint> points = point.orders().get(0).track().points();
        double most = point.orders().get(0).track().largest().vector().amplitude();
        List<Double> speeds = new ArrayList<>(List.of(points.get(0).speed().revolutionsPerMinute(),
                points.get(points.size() - 1).speed().revolutionsPerMinute()));
        double[] last = place(points.get(0));
        for (SpeedPoint one : points) {
            double[] here = place(one);
            if (Math.hypot(here[0] - last[0], here[1] - last[1]) > 0.45 * most && speeds.size() < WRITTEN_SPEEDS) {
                speeds.add(one.speed().revolutionsPerMinute());
                last = here;
            }
        }
        return speeds;
    }

    private static double[] place(SpeedPoint point) {
        return new double[] {point.vector().amplitude() * Math.cos(point.vector().lagRadians()),
            point.vector().amplitude() * Math.sin(point.vector().lagRadians())};
    }

    private Figure cascade(PointRun point, Cascade cascade) {
        double[] speeds = new double[(cascade.spectra() + 1) / EVERY];
        double[][] spectra = new double[speeds.length][];
        double most = 0;
        for (int s = 0; s < speeds.length; s++) {
            speeds[s] = cascade.speed(EVERY * s).revolutionsPerMinute();
            spectra[s] = cascade.rms(EVERY * s);
            most = Math.max(most, Arrays.stream(spectra[s]).max().orElse(0));
        }
        double end = FEWEST_ORDERS * point.sweep().highest().hertz();
        for (double[] spectrum : spectra) {
            for (int k = 0; k < spectrum.length; k++) {
                end = spectrum[k] > WORTH_SHOWING * most ? Math.max(end, 1.05 * k * cascade.spacingHertz()) : end;
            }
        }
        end = Math.min(end, (cascade.lines() - 1) * cascade.spacingHertz());
        Unit unit = RunWords.unit(cascade.quantity());
        String largest = units.number(most / unit.toSi(), unit) + " " + units.of(unit) + " rms";
        return CascadeFigure.of(speeds, spectra, cascade.spacingHertz(), end, CASCADE_ORDERS,
                phrases.say("run.axis-frequency"), phrases.say("run.axis-speed"), phrases.say("run.scale", largest),
                phrases.say("run.figure-cascade", point.id()));
    }

    private double micrometres(double metres) {
        return units.shown(1e6 * metres, Unit.UM);
    }

    private double[] micrometres(double[] metres) {
        return Arrays.stream(metres).map(this::micrometres).toArray();
    }

    private Figure orbits(ProbePairRun pair) {
        List<OrbitFigure.Path> paths = pair.orbits().stream().map(this::path).toList();
        int turns = pair.orbits().get(0).rights().length / pair.orbits().get(0).samplesPerTurn();
        return OrbitFigure.of(paths, phrases.say("run.axis-right", units.of(Unit.UM)),
                phrases.say("run.axis-up", units.of(Unit.UM)), List.of(phrases.say("run.key-path", turns),
                        phrases.say("run.key-ellipse"), phrases.say("run.key-mark")),
                phrases.say("run.figure-orbit", pair.id()));
    }

    private OrbitFigure.Path path(OrbitAt at) {
        return new OrbitFigure.Path(phrases.say("run.mark-resonance", RunWords.rpm(at.speed().hertz())),
                phrases.say(at.ellipse().isForward() ? "run.forward" : "run.backward"), micrometres(at.rights()),
                micrometres(at.ups()), at.samplesPerTurn(), micrometres(at.right().amplitude()),
                at.right().lagDegrees(), micrometres(at.up().amplitude()), at.up().lagDegrees());
    }

    private Figure centre(ProbePairRun pair) {
        List<CentrePoint> line = pair.centreLine();
        double[] speeds = line.stream().mapToDouble(point -> point.speed().revolutionsPerMinute()).toArray();
        List<Double> marked = Stream.of(0.0, 0.25, 0.5, 0.75, 1.0).map(share -> speeds[0] + share
                * (speeds[speeds.length - 1] - speeds[0])).toList();
        double fastest = pair.orbits().get(pair.orbits().size() - 1).speed().hertz();
        return CentreLineFigure.of(new CentreLineFigure.Way(speeds,
                line.stream().mapToDouble(point -> micrometres(point.right())).toArray(),
                line.stream().mapToDouble(point -> micrometres(point.up())).toArray(), marked,
                phrases.say("run.axis-right", units.of(Unit.UM)), phrases.say("run.axis-up", units.of(Unit.UM))),
                twoSided(pair.fullSpectrum(), fastest), phrases.say("run.figure-centre", pair.id(),
                        RunWords.rpm(fastest)));
    }

    private CentreLineFigure.TwoSided twoSided(FullSpectrum spectrum, double fastest) {
        int most = spectrum.highestLine();
        double[] radii = new double[2 * most + 1];
        for (int k = -most; k <= most; k++) {
            radii[k + most] = micrometres(spectrum.radius(k));
        }
        double spacing = spectrum.frequencyHertz(1);
        return new CentreLineFigure.TwoSided(radii, spacing, Math.min(most * spacing, 4 * fastest),
                phrases.say("run.axis-two-sided"), phrases.say("run.axis-radius", units.of(Unit.UM)));
    }
}
