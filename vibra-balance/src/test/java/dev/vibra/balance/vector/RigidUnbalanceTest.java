package dev.vibra.balance.vector;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class RigidUnbalanceTest {
    private static void same(Phasor expected, Phasor actual) {
        assertEquals(0, expected.minus(actual).magnitude(), 1e-12 * Math.max(1e-9, expected.magnitude()));
    }

    // Lever rule by hand: 6 at z = 0.5 between planes at 0 and 2 is 4.5 and 1.5; outside, at 3, it is −3 and 9.
    @Test
    void oneForceInTwoPlanes() {
        Phasor six = new Phasor(0, 6e-3);
        Phasor[] inside = RigidUnbalance.inPlane(six, 0.5).inPlanes(0, 2);
        same(new Phasor(0, 4.5e-3), inside[0]);
        same(new Phasor(0, 1.5e-3), inside[1]);
        Phasor[] outside = RigidUnbalance.inPlane(six, 3).inPlanes(0, 2);
        same(new Phasor(0, -3e-3), outside[0]);
        same(new Phasor(0, 9e-3), outside[1]);
    }

    // A couple of 2 and −2 at ±0.3 m has the moment 1.2 about any place, and is 4 and −4 at ±0.15 m.
    @Test
    void coupleIsTheSameAboutAnyPlace() {
        RigidUnbalance couple = RigidUnbalance.inPlane(new Phasor(2e-3, 0), 0.3)
                .plus(RigidUnbalance.inPlane(new Phasor(-2e-3, 0), -0.3));
        same(Phasor.ZERO, couple.resultant());
        same(new Phasor(1.2e-3, 0), couple.moment());
        same(new Phasor(1.2e-3, 0), couple.about(7).moment());
        assertEquals(0.3, couple.placeMetres());
        assertEquals(7, couple.about(7).placeMetres());
        Phasor[] near = couple.inPlanes(0.15, -0.15);
        same(new Phasor(4e-3, 0), near[0]);
        same(new Phasor(-4e-3, 0), near[1]);
        assertEquals("resultant 0 g·mm, moment 1.20e+06 g·mm² about 0.3 m".replace("1.20e+06", "1200000"),
                couple.toString());
    }

    @Test
    void planesGoThereAndBack() {
        Phasor a = new Phasor(1e-3, 2e-3);
        Phasor b = new Phasor(-3e-3, 0.5e-3);
        RigidUnbalance whole = RigidUnbalance.inPlane(a, 0.1).plus(RigidUnbalance.inPlane(b, 0.9));
        Phasor[] bearings = whole.inPlanes(-0.2, 1.3);
        Phasor[] back = RigidUnbalance.inPlane(bearings[0], -0.2).plus(RigidUnbalance.inPlane(bearings[1], 1.3))
                .inPlanes(0.1, 0.9);
        same(a, back[0]);
        same(b, back[1]);
        assertEquals("second plane must be apart from the first, 1.0 m: 1.0",
                assertThrows(IllegalArgumentException.class,
                () -> whole.inPlanes(1, 1)).getMessage());
        assertEquals("place must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> whole.about(Double.NaN)).getMessage());
        assertEquals("first plane must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> whole.inPlanes(Double.NaN, 1)).getMessage());
    }

    @Test
    void staticAndCouplePartsByHand() {
        StaticCouple parts = StaticCouple.of(new Phasor(5, 0), new Phasor(1, 2));
        same(new Phasor(3, 1), parts.staticPart());
        same(new Phasor(2, -1), parts.couplePart());
        same(new Phasor(5, 0), parts.first());
        same(new Phasor(1, 2), parts.second());
        assertEquals("static 3.162 at 18.4°, couple 2.236 at 333.4°", parts.toString());
    }
}
