package dev.vibra.point;

import dev.vibra.descriptor.LineReader;
import dev.vibra.descriptor.NamedLine;
import dev.vibra.internal.Digits;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.Rate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Lines of an induction motor's magnetic forces: twice the line frequency and what stands beside it and beside the
 * multiples of the speed. The poles of the stator pass a bar of the rotor at {@code 2·f1 - poles·fr}, twice the slip
 * times the line frequency.
 */
final class MotorLines {
    /** How far the line frequency strays, over it; common practice, no source. */
    private static final double DRIFT = 0.002;
    /** A peak this part of the way from a multiple of the speed to twice the line frequency holds little of the former. */
    private static final double ALONE = 0.8;
    private static final double ALONE_LINES = 2;
    private static final int ORDERS = 10;
    private static final int CARRIERS = 2;
    /** A slip above a tenth is no running motor's. */
    private static final double MOST_SLIP = 0.1;
    private static final double LONGEST_SECONDS = 600;
    /** A fast transform may leave a little of a recording out. */
    private static final double TO_SPARE = 1.04;

    private final LineReader reader;
    private final ShaftRates shafts;
    private final List<Integer> mixed = new ArrayList<>();
    private String obstacle = "";
    private NamedLine twiceLine;

    private MotorLines(LineReader reader, ShaftRates shafts) {
        this.reader = reader;
        this.shafts = shafts;
    }

    static MotorLines of(LineReader reader, ShaftRates shafts) {
        MotorLines lines = new MotorLines(reader, shafts);
        lines.readTwiceLine();
        return lines;
    }

    /** Twice the line frequency, standing or not. */
    Optional<NamedLine> twiceLine() {
        return Optional.ofNullable(twiceLine);
    }

    /** Why it is missing; empty if it isn't. */
    String obstacle() {
        return obstacle;
    }

    /** Multiples of the point's shaft that can't be parted from it. */
    List<Integer> mixedOrders() {
        return mixed;
    }

    private static Optional<String> missing(DriveTrain train) {
        if (train.lineHertz().isEmpty()) {
            return Optional.of("no line frequency is given");
        }
        return train.motor().isOnConverter()
                ? Optional.of("a frequency converter feeds the motor, so that the line frequency tells nothing")
                : Optional.empty();
    }

    private void readTwiceLine() {
        Optional<String> missing = missing(shafts.train());
        if (missing.isPresent()) {
            obstacle = missing.get();
            return;
        }
        double hertz = 2 * shafts.train().lineHertz().getAsDouble();
        double closest = Double.MAX_VALUE;
        double multiple = 0;
        for (double shaft : new TreeSet<>(List.of(shafts.ownHertz(), shafts.motorHertz()))) {
            for (int order = 1; order <= ORDERS; order++) {
                double apart = Math.abs(order * shaft - hertz);
                if (apart < reader.partedHertz() && shaft == shafts.ownHertz()) {
                    mixed.add(order);
                }
                if (apart < closest) {
                    closest = apart;
                    multiple = order * shaft;
                    obstacle = order + "\u00d7 and twice the line frequency lie " + Digits.significant(apart, 2)
                            + " Hz apart" + recordingFor(apart);
                }
            }
        }
        boolean parted = closest >= reader.partedHertz();
        double reach = parted ? Math.min(DRIFT * hertz, closest - reader.partedHertz() / 2) : DRIFT * hertz;
        Rate rate = new Rate(Rate.Kind.TWICE_LINE, Rate.Kind.TWICE_LINE.toString(), hertz);
        if (!reader.covers(hertz, reach)) {
            obstacle = "the recording is sampled too slowly for twice the line frequency";
        } else if (parted || closest >= ALONE_LINES * reader.resolutionHertz()) {
            NamedLine line = reader.line(rate, 1, hertz, reach);
            if (parted || isAlone(line, hertz, multiple)) {
                twiceLine = line;
                obstacle = "";
            }
        }
    }

    /** Of two lines closer than that the larger one draws the peak to itself: where the peak is tells which it is. */
    private boolean isAlone(NamedLine line, double hertz, double multiple) {
        double there = reader.line(line.rate(), 1, multiple, reader.resolutionHertz() / 2).level().si();
        return line.stands() && line.level().si() > there
                && Math.abs(line.hertz() - hertz) <= (1 - ALONE) * Math.abs(multiple - hertz);
    }

    private String recordingFor(double apart) {
        double seconds = Math.ceil(TO_SPARE * reader.partedHertz() / reader.resolutionHertz() / apart);
        return seconds > LONGEST_SECONDS ? ", which no recording parts" : ": a recording of at least "
                + Digits.compact(seconds, 3) + " s parts them";
    }

    List<Sidebands> sidebands() {
        List<Sidebands> found = new ArrayList<>();
        twiceLine().flatMap(carrier -> SidebandReading.of(reader, carrier, shafts.motorShaft(), shafts.motorHertz()))
                .ifPresent(found::add);
        OptionalDouble polePass = polePass();
        for (int order = 1; order <= CARRIERS && polePass.isPresent(); order++) {
            besideShaft(order, polePass.getAsDouble()).ifPresent(found::add);
        }
        return found;
    }

    /** Pole-pass rate in Hz; empty without poles, and where the recording doesn't part lines at it. */
    private OptionalDouble polePass() {
        DriveTrain train = shafts.train();
        if (missing(train).isPresent() || train.motor().poles().isEmpty()) {
            return OptionalDouble.empty();
        }
        double twice = twiceLine().filter(NamedLine::stands).map(NamedLine::hertz)
                .orElse(2 * train.lineHertz().getAsDouble());
        double hertz = twice - train.motor().poles().getAsInt() * shafts.motorHertz();
        return hertz >= reader.partedHertz() && hertz < MOST_SLIP * twice ? OptionalDouble.of(hertz)
                : OptionalDouble.empty();
    }

    /** As far as the line frequency strays, so does the rate; lines at both sides tell it. */
    private Optional<Sidebands> besideShaft(int order, double polePass) {
        double hertz = order * shafts.motorHertz();
        double near = reader.partedHertz() / 2;
        if (!reader.covers(hertz, near)) {
            return Optional.empty();
        }
        NamedLine carrier = reader.line(shafts.motorShaft(), order, hertz, Math.min(near, polePass / 2));
        Rate rate = new Rate(Rate.Kind.POLE_PASS, Rate.Kind.POLE_PASS.toString(), polePass);
        double drift = twiceLine().filter(NamedLine::stands).isPresent() ? 0
                : DRIFT * 2 * shafts.train().lineHertz().getAsDouble();
        double reach = Math.max(reader.resolutionHertz(), Math.min(drift, polePass / 3));
        if (!reader.covers(carrier.hertz() - polePass, reach) || !reader.covers(carrier.hertz() + polePass, reach)) {
            return Optional.empty();
        }
        NamedLine lower = reader.line(rate, 1, carrier.hertz() - polePass, reach);
        NamedLine upper = reader.line(rate, 1, carrier.hertz() + polePass, reach);
        NamedLine surer = lower.log10Probability() < upper.log10Probability() ? lower : upper;
        return SidebandReading.of(reader, carrier, rate, Math.abs(surer.hertz() - carrier.hertz()));
    }
}
