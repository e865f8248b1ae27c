package dev.vibra.docs.survey.output;

import dev.vibra.docs.survey.chart.SpeedNames;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.SpeedPoint;
import dev.vibra.speedrun.FollowedOrder;
import dev.vibra.speedrun.OrbitAt;
import dev.vibra.speedrun.PointRun;
import dev.vibra.speedrun.ProbePairRun;
import dev.vibra.speedrun.SpeedResonance;
import dev.vibra.speedrun.SpeedRun;
import dev.vibra.speedrun.SpeedSweep;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What is said of run-ups and coast-downs: velocity as rms, displacement of a probe from peak to peak. */
final class RunWords {
    /** A slower passage by this ratio tells the damping well. */
    private static final double GOOD_RATIO = 0.2;
    private static final double HIDDEN = 0.5;
    /** Resonances of several points that lie so close are told as one in the summary; common practice, no source. */
    private static final double SAME = 0.02;

    private final Phrases phrases;
    private final ShownUnits units;

    RunWords(Phrases phrases, ShownUnits units) {
        this.phrases = phrases;
        this.units = units;
    }

    static Unit unit(Quantity quantity) {
        return quantity == Quantity.DISPLACEMENT ? Unit.UM : Unit.MM_PER_S;
    }

    static Detector detector(Quantity quantity) {
        return quantity == Quantity.DISPLACEMENT ? Detector.PEAK_TO_PEAK : Detector.RMS;
    }

    /** Level in the library's unit of an amplitude in SI. */
    static double level(Quantity quantity, double amplitude) {
        return amplitude * detector(quantity).ofUnitSine() / unit(quantity).toSi();
    }

    String levelWords(Quantity quantity, double amplitude) {
        return units.number(level(quantity, amplitude), unit(quantity)) + " " + units.of(unit(quantity)) + " "
                + detector(quantity);
    }

    String levelTitle(Quantity quantity) {
        return phrases.say("run.axis-level", Words.capital(quantity.toString()), units.of(unit(quantity)),
                detector(quantity));
    }

    static String rpm(double hertz) {
        return Long.toString(Math.round(60 * hertz));
    }

    /** The speed and how far it may be off, in r/min. */
    String speed(SpeedResonance one) {
        double off = 0.01 * one.speedUncertaintyPercent() * one.speed().revolutionsPerMinute();
        return about(one, phrases.say("run.speed", rpm(one.speed().hertz()), Digits.significant(off, off < 10 ? 1
                : 2)));
    }

    /** The words, with a doubt where two resonances may lie close together. */
    String about(SpeedResonance one, String words) {
        return one.isSingle() ? words : phrases.say("run.about", words);
    }

    String factor(SpeedResonance one) {
        if (one.amplification().isEmpty()) {
            return phrases.say("not-determined");
        }
        if (!one.isSingle()) {
            return phrases.say("run.uncertain"); // both figures stand in the notes
        }
        double factor = one.amplification().getAsDouble();
        return phrases.say("run.factor", PlainNumber.forPeople(factor), PlainNumber.withPlacesOf(
                one.amplificationUncertainty().orElseThrow(), factor));
    }

    String service(SpeedRun run, SpeedResonance one) {
        return run.service().map(speed -> {
            double apart = one.separationPercent(speed);
            return phrases.say(apart > 0 ? "run.below-service" : "run.above-service", rpm(speed.hertz()),
                    Digits.significant(Math.abs(apart), 2));
        }).orElse("");
    }

    String peak(PointRun point, SpeedResonance one) {
        SpeedPoint shown = point.order(one.order()).orElseThrow().track().points().stream()
                .filter(each -> each.seconds() == one.peak().seconds()).findFirst().orElse(one.peak());
        Quantity quantity = point.order(one.order()).orElseThrow().quantity();
        return phrases.say("run.at-speed", levelWords(quantity, shown.vector().amplitude()),
                rpm(shown.speed().hertz()));
    }

    String rate(SpeedSweep sweep) {
        return phrases.say("run.rate", Digits.significant(60 * sweep.meanRateHertzPerSecond(), 2));
    }

    String heading(SpeedRun run) {
        return run.sweep().map(sweep -> {
            String[] ends = ends(sweep);
            return phrases.say("run.heading", run.id(), sweep.direction(), ends[0], ends[1], seconds(sweep));
        }).orElse(phrases.say("run.heading-none", run.id()));
    }

    private static String[] ends(SpeedSweep sweep) {
        return new String[] {rpm(sweep.speedAt(sweep.beginSeconds()).hertz()),
            rpm(sweep.speedAt(sweep.endSeconds()).hertz())};
    }

    private static String seconds(SpeedSweep sweep) {
        return Digits.significant(sweep.endSeconds() - sweep.beginSeconds(), 3);
    }

    /** All that is to be said of a point beside the table. */
    List<String> notes(SpeedRun run, PointRun point) {
        List<String> notes = new ArrayList<>();
        String id = point.id();
        if (point.resonances().isEmpty() && point.otherPeaks().isEmpty()) {
            notes.add(phrases.say("run.none", id, rpm(point.sweep().lowest().hertz()),
                    rpm(point.sweep().highest().hertz())));
        }
        point.order(1).map(FollowedOrder::standingShare).filter(share -> share < HIDDEN).ifPresent(share ->
                notes.add(phrases.say("run.hidden", id, Math.round(100 * share))));
        point.resonances().forEach(one -> notes.addAll(doubts(run, id, one)));
        point.otherPeaks().forEach(peak -> notes.add(phrases.say("run.other-peak", id, rpm(peak.speed().hertz()))));
        point.slowRoll().ifPresent(vector -> notes.add(phrases.say("run.slow-roll", id,
                levelWords(Quantity.DISPLACEMENT, vector.amplitude()), Math.round(vector.lagDegrees()))));
        point.remarks().forEach(remark -> notes.add(phrases.say("run.remark", id, remark.text())));
        return notes;
    }

    private List<String> doubts(SpeedRun run, String id, SpeedResonance one) {
        List<String> doubts = new ArrayList<>();
        String order = SpeedNames.order(one.order());
        String speed = rpm(one.speed().hertz());
        double width = one.speed().hertz() / one.amplification().orElse(one.amplificationByPhase());
        run.service().filter(service -> one.slowEnough()
                && Math.abs(service.hertz() - one.speed().hertz()) < width / 2).ifPresent(service ->
                doubts.add(phrases.say("run.within", id, order, speed, rpm(service.hertz()))));
        if (!one.slowEnough()) {
            doubts.add(phrases.say("run.too-fast", id, order, speed, Digits.significant(60 * GOOD_RATIO * one.order()
                    * width * width, 1)));
        } else if (one.amplificationByHalfPower().isEmpty()) {
            doubts.add(phrases.say("run.phase-alone", id, order, speed));
        } else if (!one.isSingle()) {
            doubts.add(phrases.say("run.not-single", id, order, speed, PlainNumber.forPeople(
                    one.amplificationByHalfPower().getAsDouble()), PlainNumber.forPeople(one.amplificationByPhase())));
        }
        return doubts;
    }

    String orbit(ProbePairRun pair, OrbitAt orbit) {
        return phrases.say("run.orbit", pair.id(), rpm(orbit.speed().hertz()),
                units.number(1e6 * orbit.ellipse().longHalfAxis(), Unit.UM),
                units.number(1e6 * orbit.ellipse().shortHalfAxis(), Unit.UM), units.of(Unit.UM),
                phrases.say(orbit.ellipse().isForward() ? "run.forward" : "run.backward"));
    }

    /** One line on the run and one on its resonances. */
    List<String> summary(SpeedRun run) {
        if (run.sweep().isEmpty()) {
            return List.of(run.id() + ": " + phrases.say("not-determined"), run.leftOut().get(0).reason());
        }
        SpeedSweep sweep = run.sweep().get();
        String[] ends = ends(sweep);
        List<Found> all = new ArrayList<>();
        run.points().forEach(point -> point.resonances().forEach(one -> all.add(new Found(point.id(), one))));
        all.sort(Comparator.comparing((Found one) -> one.resonance.order()).thenComparing(one ->
                one.resonance.speed().hertz()));
        List<String> told = new ArrayList<>(grouped(all).stream().map(this::told).toList());
        run.points().forEach(point -> point.otherPeaks().forEach(peak -> told.add(phrases.say("run.summary-peak",
                rpm(peak.speed().hertz()), point.id()))));
        return List.of(run.id() + ": " + phrases.say("run.summary", sweep.direction(), ends[0], ends[1],
                seconds(sweep), phrases.counted("run.summary-points", run.points().size())),
                told.isEmpty() ? phrases.say("run.summary-none") : String.join("; ", told));
    }

    private record Found(String point, SpeedResonance resonance) {}

    private static List<List<Found>> grouped(List<Found> all) {
        List<List<Found>> groups = new ArrayList<>();
        for (Found one : all) {
            List<Found> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            boolean same = !last.isEmpty() && last.get(0).resonance.order() == one.resonance.order()
                    && one.resonance.speed().hertz() < (1 + SAME) * last.get(0).resonance.speed().hertz();
            if (same) {
                last.add(one);
            } else {
                groups.add(new ArrayList<>(List.of(one)));
            }
        }
        return groups;
    }

    private String told(List<Found> group) {
        String speeds = range(group.stream().map(one -> rpm(one.resonance.speed().hertz())).toList());
        String points = group.stream().map(Found::point).distinct().collect(Collectors.joining(", "));
        List<String> factors = group.stream().filter(one -> one.resonance.slowEnough() && one.resonance.isSingle())
                .sorted(Comparator.comparing(one -> one.resonance.amplification().orElseThrow()))
                .map(one -> String.format(Locale.ROOT, "%.3g", one.resonance.amplification().orElseThrow())).toList();
        return phrases.say("run.summary-resonance", SpeedNames.order(group.get(0).resonance.order()), speeds, points,
                group.size() == 1 || factors.isEmpty() ? factor(group.get(0).resonance) : range(factors));
    }

    private String range(List<String> sorted) {
        String first = sorted.get(0);
        String last = sorted.get(sorted.size() - 1);
        return first.equals(last) ? first : phrases.say("run.summary-range", first, last);
    }
}
