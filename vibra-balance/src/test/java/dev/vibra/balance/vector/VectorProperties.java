package dev.vibra.balance.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class VectorProperties {
    @Property
    void readingsConvertWithoutLoss(@ForAll @DoubleRange(min = 1e-3, max = 1e3) @Scale(6) double amplitude,
            @ForAll @DoubleRange(min = 0, max = 359.999) @Scale(6) double phase, @ForAll PhaseSense sense,
            @ForAll Detector detector, @ForAll Detector other) {
        VibrationVector v = VibrationVector.of(amplitude, phase, Unit.MM_PER_S, detector, sense);
        PhaseSense turned = sense == PhaseSense.LAG ? PhaseSense.LEAD : PhaseSense.LAG;
        VibrationVector away = v.in(turned).in(Unit.IN_PER_S, other);
        VibrationVector back = VibrationVector.of(away.amplitude(), away.phaseDegrees(), Unit.IN_PER_S, other, turned)
                .in(sense).in(Unit.MM_PER_S, detector);
        assertEquals(amplitude, back.amplitude(), 1e-13 * amplitude);
        assertEquals(0, Math.IEEEremainder(phase - back.phaseDegrees(), 360), 1e-11);
    }

    @Property
    void massesConvertWithoutLoss(@ForAll @DoubleRange(min = 1e-3, max = 1e4) @Scale(6) double grams,
            @ForAll @DoubleRange(min = -360, max = 720) @Scale(6) double angle, @ForAll AngleSense sense,
                    @ForAll AngleSense other,
            @ForAll @DoubleRange(min = 1, max = 2000) double radius, @ForAll @DoubleRange(min = 1, max =
                    2000) double moved) {
        PlacedMass m = PlacedMass.ofGrams(grams, angle, sense).atRadius(radius);
        PlacedMass back = m.in(other).movedTo(moved).toRemoveInstead().toRemoveInstead().movedTo(radius).in(sense);
        assertEquals(grams, back.grams(), 1e-12 * grams);
        assertEquals(0, Math.IEEEremainder(angle - back.angleDegrees(), 360), 1e-11);
        assertEquals(m.gramMillimetres(), m.movedTo(moved).gramMillimetres(), 1e-12 * m.gramMillimetres());
    }

    @Property
    void rigidUnbalanceIsTheSameInAnyTwoPlanes(@ForAll @DoubleRange(min = -2, max = 2) double z,
            @ForAll @DoubleRange(min = -2, max = 2) double a, @ForAll @DoubleRange(min = 0.1, max = 2) double span,
            @ForAll @DoubleRange(min = -1, max = 1) double about) {
        RigidUnbalance u = RigidUnbalance.inPlane(new Phasor(3e-3, -1e-3), z)
                .plus(RigidUnbalance.inPlane(new Phasor(-1e-3, 2e-3), z + 0.3));
        Phasor[] planes = u.inPlanes(a, a + span);
        RigidUnbalance again = RigidUnbalance.inPlane(planes[0], a).plus(RigidUnbalance.inPlane(planes[1], a + span));
        assertEquals(0, again.resultant().minus(u.resultant()).magnitude(), 1e-15);
        assertEquals(0, again.about(about).moment().minus(u.about(about).moment()).magnitude(), 1e-15);
    }
}
