package dev.vibra.symptom;

import static dev.vibra.symptom.Bench.SHAFT;
import static dev.vibra.symptom.Site.Kind.BEARING;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.measuring.Direction;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.synthesis.ImpactTrain;
import dev.vibra.synthesis.Synthesis;
import org.junit.jupiter.api.Test;

/** Knocks at the rates of a bearing, whose geometry is that of a 6205 in the open data of Case Western Reserve. */
class BearingQuestionsTest {
    private static final BearingData BALLS =
            new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0), RotatingRing.INNER);
    private static final KinematicFrequencies RATES =
            BALLS.geometry().frequencies(RotatingRing.INNER, RotationSpeed.ofHertz(SHAFT));

    private static Bench at(Synthesis signal) {
        MeasuringPoint point = Bench.point("P-H").withDirection(Direction.HORIZONTAL).withBearing("DE");
        return Bench.of(Bench.fan().withBearing(BALLS)).with(point, signal);
    }

    private static Synthesis noisy() {
        return Bench.orders(1).noise(1, 7);
    }

    private static Synthesis knocks(double hertz) {
        return noisy().impacts(ImpactTrain.of(hertz, 20, 1800, 0.05).withJitter(0.002), 1);
    }

    @Test
    void anElementIsHeardAtItsRateAndNoOther() {
        Bench outer = at(knocks(RATES.outerRaceHertz()));
        outer.seen("element outer-race", BEARING, "P-H");
        outer.notSeen("element inner-race", BEARING);
        Bench inner = at(knocks(RATES.innerRaceHertz()));
        inner.seen("element inner-race", BEARING, "P-H");
        inner.notSeen("element outer-race", BEARING);
        at(noisy()).notSeen("element cage", BEARING);
        assertTrue(at(noisy()).ask("element outer-race", BEARING).words().startsWith("P-H: not determined"));
    }

    @Test
    void aPulsationAtTheRateOfTheCageIsCarried() {
        at(knocks(RATES.cageHertz())).seen("carried", BEARING, "P-H");
        at(knocks(RATES.outerRaceHertz())).notSeen("carried", BEARING);
        at(noisy()).notSeen("carried", BEARING);
    }

    @Test
    void nobodyHeardWhereNoEnvelopeWasRecorded() {
        Synthesis velocity = Synthesis.silence(Quantity.VELOCITY, 6400, 51_200).noise(1e-5, 1).tone(1e-3, SHAFT, 0);
        at(velocity).notMeasured("element outer-race", BEARING);
        at(velocity).notMeasured("carried", BEARING);
        Bench.of(Bench.fan().withBearing(BALLS)).with("P-H", noisy()).notMeasured("element outer-race", BEARING);
    }
}
