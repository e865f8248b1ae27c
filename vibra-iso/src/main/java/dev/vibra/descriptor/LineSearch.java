package dev.vibra.descriptor;

import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Looks for the multiples of the rates of a machine, and for the largest lines. */
final class LineSearch {
    private static final int SHAFT_ORDERS = 10;
    private static final int OTHER_ORDERS = 4;
    /** How far a multiple may lie beside where the line at the speed puts it; common practice, no source. */
    private static final double MULTIPLE_TOLERANCE = 0.003;
    private static final double HALF_TOLERANCE = 0.01;
    /** How far the line frequency strays, over it; common practice, no source. */
    static final double MAINS_DRIFT = 0.002;
    private static final int LINES_TOLD = 8;
    /** Lines below this share of the largest one are not told; common practice, no source. */
    private static final double WORTH_TELLING = 0.05;

    private final Signals signals;
    private final Spectrum velocity;
    private final LineReader reader;
    private final double resolution;

    LineSearch(Signals signals) {
        this.signals = signals;
        this.velocity = signals.velocitySpectrum();
        this.reader = signals.reader();
        this.resolution = velocity.resolutionHertz();
    }

    /**
     * The line at the speed is looked for as wide as the speed is uncertain, its multiples close to where they must
     * be: a wide search at each would take any neighbour for it.
     */
    List<NamedLine> shaftLines() {
        double given = signals.speed().map(RotationSpeed::hertz).orElseThrow();
        Rate rate = new Rate(Rate.Kind.SHAFT, Rate.Kind.SHAFT.toString(), given);
        if (given < 4 * resolution) {
            return List.of(); // Neighbouring multiples are one line.
        }
        double reach = Math.max(signals.speedTolerance() * given, resolution);
        if (given + reach >= end()) {
            return List.of();
        }
        NamedLine once = reader.line(rate, 1, given, reach);
        double hertz = once.stands() ? once.hertz() : given;
        List<NamedLine> lines = new ArrayList<>(List.of(once));
        addMultiples(lines, new Rate(rate.kind(), rate.owner(), hertz), 2, SHAFT_ORDERS);
        return lines;
    }

    List<NamedLine> lines(List<Rate> rates) {
        List<NamedLine> lines = new ArrayList<>(signals.shaftLines());
        double given = signals.speed().map(RotationSpeed::hertz).orElseThrow();
        double off = lines.get(0).stands() ? lines.get(0).hertz() / given : 1;
        for (Rate rate : rates) {
            double hertz = rate.kind().isMechanical() ? rate.hertz() * off : rate.hertz();
            boolean ownShaft = rate.kind() == Rate.Kind.SHAFT && Math.abs(rate.hertz() / given - 1) < 1e-3;
            if (!ownShaft) {
                addMultiples(lines, new Rate(rate.kind(), rate.owner(), hertz), 1,
                        rate.kind().isMechanical() ? OTHER_ORDERS : 1);
            }
        }
        lines.stream().filter(line -> line.rate().kind() == Rate.Kind.TWICE_LINE).findFirst()
                .ifPresent(mains -> partFrom(mains, lines));
        return lines;
    }

    /** Twice the line frequency lies beside a multiple of a motor's speed: the whole recording may part the two. */
    private void partFrom(NamedLine mains, List<NamedLine> lines) {
        double twice = mains.rate().hertz();
        double closest = lines.stream().mapToDouble(line -> apart(line, twice)).filter(this::needsFiner).min()
                .orElse(0);
        if (closest > 0) {
            lines.replaceAll(line -> line == mains
                    ? finer(line, twice, Math.min(MAINS_DRIFT * twice, narrow(closest)))
                    : needsFiner(apart(line, twice)) ? finer(line, expected(line), narrow(apart(line, twice))) : line);
        }
    }

    private static double expected(NamedLine line) {
        return line.order() * line.rate().hertz();
    }

    private static double apart(NamedLine line, double twice) {
        return line.rate().kind().isMechanical() ? Math.abs(expected(line) - twice) : Double.MAX_VALUE;
    }

    private boolean needsFiner(double apart) {
        return apart < reader.partedHertz() && apart >= signals.fineReader().partedHertz();
    }

    private NamedLine finer(NamedLine line, double hertz, double reach) {
        return signals.fineReader().line(line.rate(), line.order(), hertz, reach);
    }

    /** As far as the middle between two lines, but for the half width of a line. */
    private double narrow(double apart) {
        return apart / 2 - signals.fineReader().resolutionHertz();
    }

    private void addMultiples(List<NamedLine> lines, Rate rate, int from, int to) {
        for (int order = from; order <= to; order++) {
            double hertz = order * rate.hertz();
            double reach = Math.max(MULTIPLE_TOLERANCE * hertz, resolution);
            if (reader.covers(hertz, reach)) {
                lines.add(reader.line(rate, order, hertz, reach));
            }
        }
    }

    private double end() {
        return velocity.frequencyHertz(velocity.lines() - 2);
    }

    /** Below the usual band, and half the shaft speed, a velocity made of acceleration is mostly noise of the chain. */
    List<DominantLine> dominant(List<NamedLine> known) {
        double usual = Descriptors.USUAL_BAND.lowestHertz();
        Band band = Band.of(signals.speed().map(speed -> Math.min(speed.hertz() / 2, usual)).orElse(usual),
                Descriptors.USUAL_BAND.highestHertz());
        List<SpectralPeak> lines = velocity.peaks(LINES_TOLD, band).stream()
                .filter(peak -> reader.logChance(peak.frequencyHertz(), peak.level(), velocity.lines())
                        < LineReader.LOG_FALSE_ALARM)
                .toList();
        double least = lines.stream().mapToDouble(peak -> peak.level().si()).max().orElse(0) * WORTH_TELLING;
        return lines.stream().filter(peak -> peak.level().si() >= least)
                .map(peak -> named(peak, known)).toList();
    }

    private DominantLine named(SpectralPeak peak, List<NamedLine> known) {
        double hertz = peak.frequencyHertz();
        Double order = signals.speed().map(speed -> hertz / shaftHertz(speed)).orElse(null);
        return DominantLine.of(hertz, peak.level(), order, known.stream().filter(NamedLine::stands)
                .filter(line -> Math.abs(line.hertz() - hertz) < 0.5 * resolution).min(BY_MEANING)
                .map(NamedLine::name).orElseGet(() -> halfOrder(order)));
    }

    /** Lines between the multiples of a shaft belong to it too: a loose or rubbing part answers every second turn. */
    private static String halfOrder(Double order) {
        return order != null && order < SHAFT_ORDERS && Math.abs(order - Math.floor(order) - 0.5) < HALF_TOLERANCE
                ? "half order of the shaft speed" : null;
    }

    /** Blades, gears and belts tell more than the multiple of the shaft that they coincide with. */
    private static final Comparator<NamedLine> BY_MEANING = Comparator
            .comparing((NamedLine line) -> line.rate().kind() == Rate.Kind.SHAFT && line.order() > 1)
            .thenComparing(NamedLine::order);

    /** A tachometer knows better than a line, which a neighbour may pull aside. */
    private double shaftHertz(RotationSpeed given) {
        return signals.angle().isPresent() ? given.hertz() : signals.shaftLines().stream().filter(NamedLine::stands)
                .mapToDouble(line -> line.hertz() / line.order()).findFirst().orElse(given.hertz());
    }
}
