package dev.vibra.survey;

import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.rotation.AngularWaveform;
import dev.vibra.rotation.OrderVector;
import dev.vibra.rotation.PulseTrain;
import dev.vibra.rotation.ShaftAngle;
import dev.vibra.rotation.SynchronousAverage;
import dev.vibra.rotation.Tachometer;
import dev.vibra.signal.Waveform;
import java.util.List;

/** What the tachometer recorded along with a point says: the speed, and the once-per-revolution vector. */
final class TachometerSignal {
    private static final int SAMPLES_PER_REVOLUTION = 64;
    private static final double QUARTER_TURN = 90;

    private final ShaftAngle angle;
    private final String remark;

    private TachometerSignal(ShaftAngle angle, String remark) {
        this.angle = angle;
        this.remark = remark;
    }

    /**
     * Finds the pulses, takes doubled ones out and fills gaps. Pulses that are still uneven after that belong to no
     * shaft.
     *
     * @throws IllegalArgumentException if the signal holds no usable pulses, with the reason
     */
    static TachometerSignal of(Waveform signal, int pulsesPerRevolution) {
        PulseTrain pulses = Tachometer.fitting(signal).pulses(signal);
        if (pulses.size() < 4) {
            throw new IllegalArgumentException("its recording holds " + pulses);
        }
        PulseTrain repaired = pulses.repaired();
        int wrong = pulses.doubled().size() + pulses.gaps().size();
        // More than one repair in ten pulses is no tachometer to rely on: common practice, no source.
        if (10 * wrong > pulses.size()) {
            throw new IllegalArgumentException(wrong + " of its " + pulses.size() + " pulses are doubled or missing");
        }
        return new TachometerSignal(ShaftAngle.of(repaired, pulsesPerRevolution), wrong == 0 ? ""
                : "pulses of the tachometer were repaired: " + pulses.doubled().size() + " doubled, "
                        + pulses.gaps().size() + (pulses.gaps().size() == 1 ? " gap" : " gaps"));
    }

    SpeedFound speed() {
        return SpeedFound.byTachometer(angle.meanSpeed()).withRemark(remark);
    }

    /** Zero-to-peak velocity in mm/s and its lag behind the mark in degrees, added to the descriptors. */
    void describe(Waveform wave, PointSurvey.Collector results) {
        OrderVector vector = SynchronousAverage.of(AngularWaveform.of(wave, angle, SAMPLES_PER_REVOLUTION)).vector(1);
        RotationSpeed speed = angle.meanSpeed();
        int integrations = List.of(Quantity.DISPLACEMENT, Quantity.VELOCITY, Quantity.ACCELERATION)
                .indexOf(wave.quantity()) - 1;
        double velocity = vector.amplitude() / Math.pow(speed.radiansPerSecond(), integrations);
        double lag = (vector.lagDegrees() + QUARTER_TURN * integrations + 360) % 360;
        results.descriptor(DescriptorNames.VELOCITY_VECTOR_AMPLITUDE, velocity / Unit.MM_PER_S.toSi(),
                Unit.MM_PER_S.plainSymbol());
        results.descriptor(DescriptorNames.VELOCITY_VECTOR_LAG, lag, "deg");
    }
}
