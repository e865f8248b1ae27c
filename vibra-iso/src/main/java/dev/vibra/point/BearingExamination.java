package dev.vibra.point;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.DiagnosisSettings;
import dev.vibra.bearing.proportion.UnknownBearing;
import dev.vibra.bearing.proportion.UnknownBearingSettings;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.Rate;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SynchronousResidual;
import dev.vibra.rotation.TrackedAngle;
import dev.vibra.signal.Waveform;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Makes a recording ready for its bearing, and has it diagnosed: what repeats with the shafts of a gear is taken away,
 * and a speed that varies is made steady.
 */
final class BearingExamination {
    /** What wanders by less smears no line; see {@link ShaftAngle#wanderRevolutions()}. */
    private static final double STEADY_REVOLUTIONS = 0.02;
    private static final double SAME_SHAFT = 1e-3;
    private static final double BY_ANGLE = 0.0005;

    private final Waveform wave;
    private final SpeedFound found;
    private final RotationSpeed speed;
    private final List<Rate> rates;
    private final Optional<ShaftAngle> tachometer;

    /** The speed must be known. */
    BearingExamination(Waveform wave, SpeedFound found, List<Rate> rates, Optional<ShaftAngle> tachometer) {
        this.wave = wave;
        this.found = found;
        this.speed = found.speed().orElseThrow();
        this.rates = rates;
        this.tachometer = tachometer;
    }

    /**
     * A recording made ready.
     *
     * @param wave what is judged
     * @param speed speed of the shaft in it
     * @param tolerance how far that may be off, over the speed
     * @param words what was done to it; empty if nothing was
     */
    private record Prepared(Waveform wave, RotationSpeed speed, double tolerance, String words) {}

    BearingSurvey diagnose(BearingData bearing) {
        Prepared prepared = separated();
        BearingSurvey survey = diagnose(bearing, prepared);
        if (tachometer.isPresent() || hasMesh() || survey.showsDefect()) {
            return survey;
        }
        // A speed that wanders hides a defect: where none shows, the shaft is followed.
        return TrackedAngle.of(wave, speed).angle().filter(angle -> angle.wanderRevolutions() > STEADY_REVOLUTIONS)
                .map(angle -> diagnose(bearing, steadied(prepared, angle))).orElse(survey);
    }

    private BearingSurvey diagnose(BearingData bearing, Prepared prepared) {
        double[] others = others(prepared.speed()).toArray();
        return new BearingSurvey(bearing.id(), BearingDiagnosis.of(prepared.wave(),
                bearing.geometry().frequencies(bearing.rotatingRing(), prepared.speed()),
                DiagnosisSettings.withDefaults().withOtherRates(others).withSpeedTolerance(prepared.tolerance())),
                prepared.words());
    }

    /** Searches for pulsations where no geometry is known. */
    UnknownBearing search(MachineDescription machine) {
        UnknownBearingSettings settings = UnknownBearingSettings.withDefaults().withSpeedTolerance(tolerance())
                .withOtherRates(others(speed).toArray());
        return UnknownBearing.of(wave, speed, machine.train().lineHertz().isPresent()
                ? settings.withLineFrequencies(machine.train().lineHertz().getAsDouble()) : settings);
    }

    private Prepared separated() {
        Prepared raw = new Prepared(wave, speed, tolerance(), "");
        Optional<ShaftAngle> angle = tachometer.or(() -> hasMesh()
                ? TrackedAngle.of(wave, speed, multiples()).angle() : Optional.empty());
        if (angle.isEmpty()) {
            return raw;
        }
        Prepared prepared = hasMesh() ? withoutShafts(raw, angle.get()) : raw;
        return angle.get().wanderRevolutions() > STEADY_REVOLUTIONS ? steadied(prepared, angle.get()) : prepared;
    }

    private Prepared withoutShafts(Prepared raw, ShaftAngle angle) {
        double[] ratios = rates.stream().filter(rate -> rate.kind() == Rate.Kind.SHAFT)
                .mapToDouble(rate -> rate.hertz() / speed.hertz()).filter(ratio -> Math.abs(ratio - 1) > SAME_SHAFT)
                .toArray();
        SynchronousResidual residual = SynchronousResidual.of(raw.wave(), angle, ratios);
        return residual.waveform().map(rest -> new Prepared(rest, raw.speed(), raw.tolerance(),
                "without what repeats with the shafts (" + residual + ")")).orElse(raw);
    }

    private static Prepared steadied(Prepared before, ShaftAngle angle) {
        if (angle.revolutionsWithin(before.wave()) < UnknownBearing.FEWEST_REVOLUTIONS) {
            return before;
        }
        return new Prepared(angle.atMeanSpeed(before.wave()), angle.meanSpeed(), BY_ANGLE,
                (before.words().isEmpty() ? "" : before.words() + ", ") + "at the mean speed of a shaft that varies");
    }

    private boolean hasMesh() {
        return rates.stream().anyMatch(rate -> rate.kind() == Rate.Kind.GEAR_MESH);
    }

    /** The first three multiples of the speed, and of the number of teeth of each gear on the shaft. */
    private int[] multiples() {
        IntStream teeth = rates.stream().filter(rate -> rate.kind() == Rate.Kind.GEAR_MESH)
                .mapToDouble(rate -> rate.hertz() / speed.hertz())
                .filter(ratio -> ratio >= 1 && Math.abs(ratio - Math.rint(ratio)) < SAME_SHAFT)
                .mapToInt(ratio -> (int) Math.rint(ratio)).flatMap(z -> IntStream.of(z, 2 * z, 3 * z));
        return IntStream.concat(IntStream.of(1, 2, 3), teeth).distinct().toArray();
    }

    /** Rates of other parts; those that keep step with the shaft follow the speed of the recording that is judged. */
    private DoubleStream others(RotationSpeed judged) {
        return rates.stream().filter(rate -> Math.abs(rate.hertz() / speed.hertz() - 1) > SAME_SHAFT)
                .mapToDouble(rate -> rate.kind() == Rate.Kind.TWICE_LINE ? rate.hertz()
                        : rate.hertz() * judged.hertz() / speed.hertz());
    }

    /** How far the speed may be off, over the speed, by where it is known from; common practice, no source. */
    private double tolerance() {
        return switch (found.source()) {
            case TACHOMETER -> BY_ANGLE;
            case RECORDING -> 0.002;
            case GIVEN, NOT_DETERMINED -> 0.01;
        };
    }
}
