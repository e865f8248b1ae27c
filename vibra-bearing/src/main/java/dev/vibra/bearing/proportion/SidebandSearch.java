package dev.vibra.bearing.proportion;

import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.SearchField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Sidebands about one family: at the speed, and at any rate that a cage may have. */
final class SidebandSearch {
    /** Sums of so many harmonics and so many turns are taken for such, and not for sidebands at a cage. */
    private static final int HARMONICS = 5;
    private static final int TURNS = 6;
    /** Weaker ones come about by chance among many lines; common practice, no source. */
    private static final double LEAST_SHARE = 0.1;

    private final SearchLines lines;
    private final double hertz;
    private final Shaft shaft;
    private final LineMask explained;
    private final double logAlarm;
    private final List<SidebandSpacing> found = new ArrayList<>();
    private Shaft read;

    /**
     * Searches.
     *
     * @param lines lines of the band
     * @param hertz rate of the family
     * @param shaft speed
     * @param mask what is explained already
     * @param settings settings
     */
    SidebandSearch(SearchLines lines, double hertz, Shaft shaft, LineMask mask, UnknownBearingSettings settings) {
        this.lines = lines;
        this.hertz = hertz;
        this.shaft = shaft;
        logAlarm = Math.log(settings.falseAlarmProbability());
        double highest = lines.highestUsableHertz();
        explained = mask.with(multiples(hertz, highest), lines.spreadHertz())
                .with(multiples(shaft.hertz(), highest), lines.spreadHertz());
        read = shaft;
        atSpeed();
        settings.turning().forEach(this::atCage);
    }

    static DoubleStream multiples(double hertz, double highest) {
        return IntStream.rangeClosed(1, (int) Math.ceil(highest / hertz)).mapToDouble(h -> h * hertz);
    }

    static DoubleStream about(double hertz, double spacing, int sidebands) {
        return IntStream.rangeClosed(-sidebands, sidebands).mapToDouble(n -> Math.abs(hertz + n * spacing));
    }

    List<SidebandSpacing> found() {
        return found;
    }

    /** The speed; where it shows no lines of its own, as strong sidebands tell it. */
    Shaft shaft() {
        return read;
    }

    private Optional<Sidebands> best(LineMask mask, double from, double to) {
        return Sidebands.best(SearchField.of(lines, mask), hertz, from, to)
                .filter(best -> best.logProbability() < logAlarm && best.share() >= LEAST_SHARE);
    }

    private void atSpeed() {
        double reach = shaft.read() ? 0 : shaft.reach() * shaft.hertz();
        best(explained, shaft.hertz() - reach, shaft.hertz() + reach).ifPresent(best -> {
            SidebandSpacing spacing = new SidebandSpacing(best.spacing() / shaft.hertz(), best.share());
            found.add(spacing);
            read = spacing.isPlain() && !shaft.read() ? shaft.readAs(best.spacing(), lines) : shaft;
        });
    }

    /** Sums of multiples of rate and speed lie at distances of a cage by chance, and don't count. */
    private void atCage(RotatingRing ring) {
        DoubleStream sums = IntStream.rangeClosed(1, HARMONICS).mapToDouble(h -> h * hertz)
                .flatMap(f -> about(f, read.hertz(), TURNS));
        Plausible.Interval cage = Plausible.cage(ring);
        best(explained.with(sums, lines.spreadHertz()), cage.low() * shaft.hertz(), cage.high() * shaft.hertz())
                .ifPresent(best -> found.add(new SidebandSpacing(best.spacing() / shaft.hertz(), best.share())));
    }
}
