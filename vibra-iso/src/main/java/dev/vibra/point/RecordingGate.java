package dev.vibra.point;

import dev.vibra.internal.Digits;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.evidence.Remark;
import dev.vibra.quality.Steadiness;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The first question to a recording: what is it good for, and which part of it.
 *
 * @param summary size, remarks, what is refused
 * @param steady the part that levels and spectra are taken from
 * @param reason why something is refused, without full stop; empty if nothing is
 */
record RecordingGate(RecordingSummary summary, Waveform steady, String reason) {
    private static final String NO_SIGNAL = "constant";
    private static final String PARTLY_STEADY = "partly-steady";
    /** Doubts that concern less than everything; whatever isn't named here refuses all. */
    private static final Map<String, Set<Aspect>> CONCERNS = Map.of(
            "low-frequency-slope", EnumSet.of(Aspect.MOTION),
            "too-short", EnumSet.of(Aspect.MOTION));

    /** Checks a recording for the bands that motion is judged in. */
    static RecordingGate of(Waveform wave, MeasuringPoint point, MachineDescription machine, Band band) {
        RecordingCheck check = RecordingCheck.withDefaults().withBand(band);
        Optional<RotationSpeed> speed = machine.speedAt(point);
        check = speed.isPresent() ? check.withSpeed(speed.get()) : check;
        check = machine.train().lineHertz().isPresent()
                ? check.withMains(machine.train().lineHertz().getAsDouble()) : check;
        List<Remark> remarks = new ArrayList<>(check.check(wave).remarks());
        point.mounting().ifPresent(mounting -> mounting.warnings(band).forEach(text -> remarks.add(
                new Remark("mounting", text, mounting.lowestFigureHertz(), band.highestHertz(), false))));
        Optional<Steadiness> levels = remarks.stream().anyMatch(remark -> remark.code().equals(PARTLY_STEADY))
                ? Steadiness.ofLevel(wave) : Optional.empty();
        // A stretch in which nothing was measured is steady and tells nothing.
        Optional<Waveform> part = levels.flatMap(Steadiness::longestSteady).filter(one -> one.moments().rms() > 0);
        part.ifPresent(stretch -> remarks.add(stretchRemark(stretch, wave, levels.get())));
        return of(wave, part.orElse(wave), remarks);
    }

    private static RecordingGate of(Waveform wave, Waveform steady, List<Remark> remarks) {
        List<String> doubts = remarks.stream().filter(Remark::disqualifying).map(Remark::code).distinct().toList();
        Set<Aspect> refused = EnumSet.noneOf(Aspect.class);
        doubts.forEach(code -> refused.addAll(CONCERNS.getOrDefault(code, EnumSet.allOf(Aspect.class))));
        String reason = doubts.isEmpty() ? "" : "the recording is not sound ("
                + doubts.stream().collect(Collectors.joining(", ")) + ")";
        return new RecordingGate(new RecordingSummary(wave.sampleRateHertz(), wave.length(),
                new RecordingQuality(remarks), refused), steady, reason);
    }

    private static Remark stretchRemark(Waveform stretch, Waveform wave, Steadiness levels) {
        double begin = stretch.startSeconds();
        return new Remark(RecordingSummary.STEADY_STRETCH, "levels and spectra are taken from "
                + Digits.compact(begin, 5) + " s to " + Digits.compact(begin + stretch.durationSeconds(), 5)
                + " s, the longest steady stretch; elsewhere the level reaches "
                + Digits.significant(louder(stretch, levels), 2) + " times that of it",
                stretch.durationSeconds(), wave.durationSeconds(), false);
    }

    private static double louder(Waveform stretch, Steadiness levels) {
        return Arrays.stream(levels.values()).max().orElseThrow() / stretch.moments().rms();
    }

    /** Whoever insists can have numbers of a doubtful signal, but none of no signal. */
    boolean holdsSignal() {
        return summary.quality().remarks().stream().noneMatch(remark -> remark.code().equals(NO_SIGNAL));
    }

    boolean refuses(Aspect aspect) {
        return summary.refused().contains(aspect);
    }
}
