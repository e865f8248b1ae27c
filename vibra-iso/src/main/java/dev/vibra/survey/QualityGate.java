package dev.vibra.survey;

import dev.vibra.evidence.Remark;
import dev.vibra.internal.Digits;
import dev.vibra.quality.RecordingCheck;
import dev.vibra.quality.RecordingQuality;
import dev.vibra.quality.Steadiness;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.machine.MeasuringPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a recording is good for: which part of it, and for which conclusions. */
final class QualityGate {
    private static final String LOW_FREQUENCY = "low-frequency-slope";
    private static final String NO_SIGNAL = "constant";

    private final Waveform wave;
    private final RecordingQuality quality;
    private final Waveform steady;

    private QualityGate(Waveform wave, RecordingQuality quality, Waveform steady) {
        this.wave = wave;
        this.quality = quality;
        this.steady = steady;
    }

    /** Checks a recording for the bands that velocity is judged in. */
    static QualityGate of(Waveform wave, MeasuringPoint point, SeverityCheck severity, Optional<RotationSpeed> speed,
            Optional<Double> mains) {
        List<Band> bands = severity.bands(Quantity.VELOCITY);
        Band band = Band.of(bands.stream().mapToDouble(Band::lowestHertz).min().orElseThrow(),
                bands.stream().mapToDouble(Band::highestHertz).max().orElseThrow());
        RecordingCheck check = RecordingCheck.withDefaults().withBand(band);
        check = speed.map(check::withSpeed).orElse(check);
        check = mains.map(check::withMains).orElse(check);
        List<Remark> remarks = new ArrayList<>(check.check(wave).remarks());
        point.mounting().ifPresent(mounting -> dev.vibra.measuring.Mounting.valueOf(mounting.name()).warnings(band)
                .forEach(text -> remarks.add(new Remark("mounting", text,
                        dev.vibra.measuring.Mounting.valueOf(mounting.name()).lowestFigureHertz(),
                        band.highestHertz(), false))));
        Optional<Waveform> part = remarks.stream().anyMatch(remark -> remark.code().equals("partly-steady"))
                ? Steadiness.ofLevel(wave).flatMap(Steadiness::longestSteady) : Optional.empty();
        part.ifPresent(stretch -> remarks.add(said(stretch, wave)));
        return new QualityGate(wave, new RecordingQuality(remarks), part.orElse(wave));
    }

    private static Remark said(Waveform stretch, Waveform wave) {
        double begin = stretch.startSeconds();
        return new Remark("steady-stretch", "levels and spectra are taken from "
                + Digits.compact(begin, 5) + " s to " + Digits.compact(begin + stretch.durationSeconds(), 5)
                + " s, the longest steady stretch", stretch.durationSeconds(), wave.durationSeconds(), false);
    }

    RecordingSummary summary() {
        return new RecordingSummary(wave.sampleRateHertz(), wave.length(), quality);
    }

    boolean sound() {
        return quality.sound();
    }

    /** The part that levels and spectra are taken from. */
    Waveform steady() {
        return steady;
    }

    /** A doubt that concerns the low frequencies of the velocity says nothing on bearings. */
    boolean suitsBearings() {
        return doubts().equals(List.of(LOW_FREQUENCY)) || sound();
    }

    /** Whoever insists can have numbers of a doubtful signal, but none of no signal. */
    boolean holdsSignal() {
        return !doubts().contains(NO_SIGNAL);
    }

    String reason() {
        return "the recording is not sound (" + doubts().stream().collect(Collectors.joining(", ")) + ")";
    }

    private List<String> doubts() {
        return quality.remarks().stream().filter(Remark::disqualifying).map(Remark::code).distinct().toList();
    }
}
