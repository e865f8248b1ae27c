package dev.vibra.point;

import dev.vibra.descriptor.LineReader;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.machine.Rate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Looks for lines beside gear meshes and blade passing at the speeds of the shafts that make them. */
final class SidebandReading {
    private static final int MESH_ORDERS = 3;
    private static final int BLADE_ORDERS = 2;
    private static final int MOST_PAIRS = 5;
    /** How far a multiple lies beside where the shaft's line puts it: accuracy of that line. */
    private static final double EXACT = 5e-4;
    private static final double GIVEN = 0.003;
    /** Less than this above the dip towards the carrier is its skirt; common practice, no source. */
    private static final double ABOVE_DIP = 1.5;

    private final Signals signals;
    private final ShaftRates shafts;
    private final List<NamedLine> lines;

    SidebandReading(Signals signals, ShaftRates shafts, List<NamedLine> lines) {
        this.signals = signals;
        this.shafts = shafts;
        this.lines = lines;
    }

    List<Sidebands> all() {
        List<Sidebands> found = new ArrayList<>();
        for (NamedLine line : lines) {
            int orders = switch (line.rate().kind()) {
                case GEAR_MESH -> MESH_ORDERS;
                case BLADE_PASSING -> BLADE_ORDERS;
                case SHAFT, BELT, TWICE_LINE, POLE_PASS -> 0;
            };
            if (line.order() <= orders) {
                shafts.all().stream().filter(rate -> rate.name().equals(line.rate().name())).findFirst()
                        .ifPresent(rate -> shafts.train().shaftsOf(rate, shafts.mainHertz())
                                .forEach(shaft -> beside(rate, line.order(), shaft).ifPresent(found::add)));
            }
        }
        return found;
    }

    /** The carrier is looked for closely, or a sideband would be taken for it. */
    private Optional<Sidebands> beside(Rate rate, int order, Rate shaft) {
        return PatternReading.parting(signals, shaft.hertz()).flatMap(reader -> {
            double hertz = order * rate.hertz();
            double reach = Math.max(reader.resolutionHertz(),
                    Math.min((shafts.exact() ? EXACT : GIVEN) * hertz, shaft.hertz() / 2 - reader.resolutionHertz()));
            return reader.covers(hertz, reach)
                    ? of(reader, reader.line(rate, order, hertz, reach), shaft, shaft.hertz()) : Optional.empty();
        });
    }

    /** Empty where the first pair doesn't lie within the spectrum. */
    static Optional<Sidebands> of(LineReader reader, NamedLine carrier, Rate spacing, double apart) {
        double reach = reader.resolutionHertz();
        if (!reader.covers(carrier.hertz() - apart, reach) || !reader.covers(carrier.hertz() + apart, reach)) {
            return Optional.empty();
        }
        NamedLine lower = at(reader, carrier, spacing, -1, apart);
        NamedLine upper = at(reader, carrier, spacing, 1, apart);
        boolean lowerStands = standsApart(reader, carrier.hertz(), lower);
        boolean upperStands = standsApart(reader, carrier.hertz(), upper);
        int pairs = lowerStands && upperStands ? 1 + further(reader, carrier, spacing, apart, lower, upper) : 0;
        return Optional.of(new Sidebands(carrier, spacing, pairs, lower.level().si(), upper.level().si(), lowerStands,
                upperStands));
    }

    private static int further(LineReader reader, NamedLine carrier, Rate spacing, double apart, NamedLine lower,
            NamedLine upper) {
        NamedLine innerLower = lower;
        NamedLine innerUpper = upper;
        for (int pair = 2; pair <= MOST_PAIRS; pair++) {
            if (!reader.covers(carrier.hertz() - pair * apart, reader.resolutionHertz())
                    || !reader.covers(carrier.hertz() + pair * apart, reader.resolutionHertz())) {
                return pair - 2;
            }
            NamedLine below = at(reader, carrier, spacing, -pair, apart);
            NamedLine above = at(reader, carrier, spacing, pair, apart);
            if (!standsApart(reader, innerLower.hertz(), below) || !standsApart(reader, innerUpper.hertz(), above)) {
                return pair - 2;
            }
            innerLower = below;
            innerUpper = above;
        }
        return MOST_PAIRS - 1;
    }

    private static NamedLine at(LineReader reader, NamedLine carrier, Rate spacing, int pair, double apart) {
        return reader.line(spacing, Math.abs(pair), carrier.hertz() + pair * apart, reader.resolutionHertz());
    }

    private static boolean standsApart(LineReader reader, double inner, NamedLine line) {
        return line.stands() && line.level().si() >= ABOVE_DIP * reader.least(inner, line.hertz());
    }
}
