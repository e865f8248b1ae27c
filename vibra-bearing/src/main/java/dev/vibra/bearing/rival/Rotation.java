package dev.vibra.bearing.rival;

import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.lines.SearchLines;
import dev.vibra.bearing.lines.LineMask;
import dev.vibra.bearing.lines.RateFamily;
import dev.vibra.bearing.lines.SearchField;
import dev.vibra.internal.Require;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Speeds of the rings as the envelope spectra show them, and the lines that turning makes.
 *
 * <p>Multiples of a speed must be expected on any machine, as blades, slots, teeth and couplings make them. Halves,
 * thirds and quarters are rare, and count only where lines of their own stand.
 */
public final class Rotation {
    /** Within the tolerance of higher multiples, sidebands of bearings are taken for them. */
    private static final double MOST_MULTIPLES = 1e4;
    private static final double MOST_STEPS = 1e6;
    private static final int MULTIPLES = 3;
    private static final int[] SUBDIVISIONS = {2, 3, 4};
    /** A loose or rubbing machine shows parts of its speed up to about this order; common practice, no source. */
    private static final int HIGHEST_ORDER = 10;

    private final List<Ring> rings;
    private final List<? extends SearchLines> bands;
    private final double logAlarm;

    private Rotation(List<Ring> rings, List<? extends SearchLines> bands, double logAlarm) {
        this.rings = rings;
        this.bands = bands;
        this.logAlarm = logAlarm;
    }

    /**
     * A ring that turns.
     *
     * @param hertz its speed in Hz
     * @param uncertainty how far it may be off, over the speed
     * @param seen true if its multiples stand in an envelope
     * @param logProbability how improbable its multiples are in noise
     */
    private record Ring(double hertz, double uncertainty, boolean seen, double logProbability) {}

    /**
     * Refines the speeds of the rings that turn by their multiples in the band that shows them best, else in the
     * vibration itself. Where neither shows them significantly, a speed stays as uncertain as it was given.
     *
     * @param bands lines of the bands
     * @param vibration lines of the vibration itself
     * @param kinematics speeds as given
     * @param tolerance how far a speed may be off, over the speed, 0 to 0.5
     * @param falseAlarm probability at which multiples count as seen, above 0, at most 1
     * @return the speeds
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Rotation of(List<? extends SearchLines> bands, SearchLines vibration,
            KinematicFrequencies kinematics, double tolerance, double falseAlarm) {
        Objects.requireNonNull(kinematics, "kinematics");
        Objects.requireNonNull(vibration, "vibration");
        Require.atLeast("number of bands", Require.copy("bands", bands).size(), 1);
        Require.within("tolerance", tolerance, 0, 0.5, "");
        double logAlarm = Math.log(Require.within("falseAlarm", falseAlarm, Double.MIN_NORMAL, 1, ""));
        List<Ring> rings = DoubleStream.of(kinematics.innerRingHertz(), kinematics.outerRingHertz())
                .filter(f -> f > 0).mapToObj(f -> refined(bands, vibration, f, tolerance, logAlarm)).toList();
        return new Rotation(rings, bands, logAlarm);
    }

    private static Ring refined(List<? extends SearchLines> bands, SearchLines vibration, double nominal,
            double tolerance, double logAlarm) {
        Ring inEnvelope = bands.stream().map(lines -> refined(lines, MULTIPLES, nominal, tolerance))
                .min(Comparator.comparingDouble(Ring::logProbability)).orElseThrow();
        if (inEnvelope.logProbability() < logAlarm - Math.log(bands.size())) {
            return inEnvelope;
        }
        Ring itself = refined(vibration, HIGHEST_ORDER, nominal, tolerance);
        return itself.logProbability() < logAlarm ? new Ring(itself.hertz(), itself.uncertainty(), false, 0)
                : new Ring(nominal, tolerance, false, 0);
    }

    private static Ring refined(SearchLines lines, int multiples, double nominal, double tolerance) {
        double reach = tolerance * nominal;
        RateFamily family = RateFamily.best(SearchField.of(lines, LineMask.nothing()), nominal - reach,
                nominal + reach, multiples);
        double found = Math.max(nominal - reach, Math.min(nominal + reach, family.refinedHertz()));
        double reading = 0.25 * lines.resolutionHertz() / nominal; // Interpolated, a quarter of a bin at most.
        return new Ring(found, Math.min(tolerance, reading), true,
                family.logProbability() + Math.log(family.places(reach)));
    }

    /** {@return the speeds of the rings that turn, Hz} */
    public double[] hertz() {
        return rings.stream().mapToDouble(Ring::hertz).toArray();
    }

    private LineMask multiples(Ring ring, double step, double highestHertz) {
        Require.within("highestHertz", highestHertz, 0, MOST_MULTIPLES * ring.hertz(), "Hz");
        LineMask mask = LineMask.nothing();
        for (int n = 1; step * n * ring.hertz() <= highestHertz; n++) {
            mask = mask.with(DoubleStream.of(step * n * ring.hertz()), halfWidth(step * n, ring));
        }
        return mask;
    }

    private double halfWidth(double order, Ring ring) {
        return SearchLines.LINE_BINS * bands.get(0).resolutionHertz() + order * ring.uncertainty() * ring.hertz();
    }

    /**
     * Covers the multiples of the speeds that stand in an envelope.
     *
     * @param highestHertz highest frequency that matters in Hz, at most ten thousand times each speed
     * @return the mask
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public LineMask standing(double highestHertz) {
        LineMask mask = LineMask.nothing();
        for (Ring ring : rings) {
            if (ring.seen()) {
                mask = mask.with(multiples(ring, 1, highestHertz));
            }
        }
        return mask;
    }

    /**
     * Covers multiples and halves of the speeds, which explain a line whose origin is asked for.
     *
     * @param highestHertz highest frequency that matters in Hz, at most ten thousand times each speed
     * @return the mask
     * @throws IllegalArgumentException if the frequency is out of range
     */
    public LineMask halves(double highestHertz) {
        LineMask mask = LineMask.nothing();
        for (Ring ring : rings) {
            mask = mask.with(multiples(ring, 0.5, highestHertz));
        }
        return mask;
    }

    /**
     * Tells which multiple or standing part of a speed a rate can't be told from.
     *
     * @param hertz rate in Hz
     * @param lines lines that show the rate
     * @param own lines that the rate explains itself, which prove nothing of a part
     * @return the words; empty if there is none
     */
    Optional<String> explains(double hertz, SearchLines lines, LineMask own) {
        for (Ring told : rings) {
            Ring ring = told.seen() ? told : bySidebands(told, hertz, lines);
            double order = hertz / ring.hertz();
            if (near(order, 1, ring)) {
                return Optional.of("it can't be told from " + (long) Math.rint(order) + " times the speed of rotation");
            }
            for (int parts : SUBDIVISIONS) {
                if (ring.seen() && order <= HIGHEST_ORDER && near(order, parts, ring) && stands(ring, parts, own)) {
                    return Optional.of("it can't be told from " + (long) Math.rint(order * parts) + "/" + parts
                            + " of the speed of rotation");
                }
            }
        }
        return Optional.empty();
    }

    /** Sidebands of a rate stand one turn apart, and so tell a speed that shows no lines of its own. */
    private Ring bySidebands(Ring ring, double hertz, SearchLines lines) {
        double reach = ring.uncertainty() * ring.hertz();
        double step = 0.25 * lines.resolutionHertz();
        if (!(reach / step <= MOST_STEPS)) {
            return ring; // So far beyond the lines that no sideband of it is seen.
        }
        double best = ring.hertz();
        double least = logAlarm - Math.log(Math.max(1, 2 * reach / lines.resolutionHertz()));
        for (int i = (int) -(reach / step); i * step <= reach; i++) {
            double log = lines.logOfSidebands(hertz, ring.hertz() + i * step);
            if (log < least) {
                least = log;
                best = ring.hertz() + i * step;
            }
        }
        double reading = 0.5 * lines.resolutionHertz() / ring.hertz();
        return best == ring.hertz() ? ring : new Ring(best, Math.min(ring.uncertainty(), reading), false, least);
    }

    private boolean near(double order, int parts, Ring ring) {
        double nearest = Math.rint(order * parts) / parts;
        double told = bands.get(0).resolutionHertz() + nearest * ring.uncertainty() * ring.hertz();
        return Math.abs(order - nearest) * ring.hertz() <= told;
    }

    private boolean stands(Ring ring, int parts, LineMask own) {
        return bands.stream().anyMatch(lines -> logOfParts(lines, ring, parts, own) + Math.log(bands.size())
                < logAlarm);
    }

    private static double logOfParts(SearchLines lines, Ring ring, int parts, LineMask own) {
        return lines.logTogether(IntStream.rangeClosed(1, HIGHEST_ORDER * parts).filter(k -> k % 2 == 1 || parts == 3)
                .filter(k -> k % parts != 0).mapToDouble(k -> k * ring.hertz() / parts).filter(f -> !own.covers(f)));
    }

    /** Returns the speeds. */
    @Override
    public String toString() {
        return "rings turning at " + Arrays.toString(hertz()) + " Hz";
    }
}
