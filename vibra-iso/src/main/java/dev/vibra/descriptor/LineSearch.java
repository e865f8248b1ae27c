package dev.vibra.descriptor;

import dev.vibra.machine.Rate;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Level;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Looks for lines in the velocity spectrum; how sure they are is told by the spectrum as it was recorded. */
final class LineSearch {
    /** A line counts where noise alone makes one that large in a ten-thousandth of all recordings. */
    private static final double LOG_FALSE_ALARM = -4;
    /** A line over no noise at all would be infinitely sure. */
    private static final double LEAST_LOG = -300;
    private static final int SHAFT_ORDERS = 10;
    private static final int OTHER_ORDERS = 4;
    /** How far a multiple may lie beside where the line at the speed puts it; common practice, no source. */
    private static final double MULTIPLE_TOLERANCE = 0.003;
    private static final double HALF_TOLERANCE = 0.01;
    private static final int LINES_TOLD = 8;
    /** Lines below this share of the largest one are not told; common practice, no source. */
    private static final double WORTH_TELLING = 0.05;
    private static final int LOWEST_LINE = 2;

    private final Signals signals;
    private final Spectrum velocity;
    private final double resolution;

    LineSearch(Signals signals) {
        this.signals = signals;
        this.velocity = signals.velocitySpectrum();
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
        NamedLine once = line(rate, 1, given, reach);
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
        return lines;
    }

    private void addMultiples(List<NamedLine> lines, Rate rate, int from, int to) {
        for (int order = from; order <= to; order++) {
            double hertz = order * rate.hertz();
            double reach = Math.max(MULTIPLE_TOLERANCE * hertz, resolution);
            if (hertz - reach < LOWEST_LINE * resolution || hertz + reach >= end()) {
                continue;
            }
            lines.add(line(rate, order, hertz, reach));
        }
    }

    private double end() {
        return velocity.frequencyHertz(velocity.lines() - 2);
    }

    private NamedLine line(Rate rate, int order, double expected, double reach) {
        int searched = 1 + (int) Math.ceil(2 * reach / resolution);
        Optional<SpectralPeak> peak = velocity.peakNear(expected, reach);
        double hertz = peak.map(SpectralPeak::frequencyHertz).orElse(expected);
        Level level = peak.map(SpectralPeak::level).orElseGet(() -> noise(expected));
        double chance = peak.isPresent() ? logChance(hertz, level, searched) : 0;
        return new NamedLine(rate, order, hertz, level, chance, chance < LOG_FALSE_ALARM);
    }

    private Level noise(double hertz) {
        double rms = velocity.amplitude((int) Math.rint(hertz / resolution), Detector.RMS);
        return Level.ofSi(rms, Quantity.VELOCITY, Detector.RMS);
    }

    private double logChance(double hertz, Level level, int searched) {
        double recorded = level.sineAs(signals.wave().quantity(), Detector.RMS, hertz).si();
        return Math.max(LEAST_LOG, signals.floor().log10Probability(hertz, recorded, searched));
    }

    /** Below the usual band, and half the shaft speed, a velocity made of acceleration is mostly noise of the chain. */
    List<DominantLine> dominant(List<NamedLine> known) {
        double usual = Descriptors.USUAL_BAND.lowestHertz();
        Band band = Band.of(signals.speed().map(speed -> Math.min(speed.hertz() / 2, usual)).orElse(usual),
                Descriptors.USUAL_BAND.highestHertz());
        List<SpectralPeak> lines = velocity.peaks(LINES_TOLD, band).stream()
                .filter(peak -> logChance(peak.frequencyHertz(), peak.level(), velocity.lines()) < LOG_FALSE_ALARM)
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

    private double shaftHertz(RotationSpeed given) {
        return signals.shaftLines().stream().filter(NamedLine::stands).mapToDouble(line -> line.hertz() / line.order())
                .findFirst().orElse(given.hertz());
    }
}
