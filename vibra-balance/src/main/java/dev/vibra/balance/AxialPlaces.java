package dev.vibra.balance;

import dev.vibra.balance.vector.Phasor;
import dev.vibra.balance.vector.RigidUnbalance;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Arrays;

/** Where bearings and correction planes are along the axis, in m. */
final class AxialPlaces implements Serializable {
    private static final long serialVersionUID = 1;

    private final double firstBearing;
    private final double secondBearing;
    private final double[] planes;

    private AxialPlaces(double firstBearing, double secondBearing, double[] planes) {
        this.firstBearing = Require.finite("place of the first bearing", firstBearing);
        this.secondBearing = Require.finite("place of the second bearing", secondBearing);
        if (firstBearing == secondBearing) {
            throw Require.failure("place of the second bearing in m", "apart from that of the first", secondBearing);
        }
        this.planes = planes.clone();
        Require.allFinite("places of the planes", this.planes);
    }

    private Object readResolve() {
        return new AxialPlaces(firstBearing, secondBearing, planes);
    }

    static AxialPlaces ofMillimetres(double firstBearing, double secondBearing, double[] planes) {
        if (firstBearing == secondBearing) {
            throw Require.failure("place of the second bearing", "apart from that of the first", secondBearing);
        }
        return new AxialPlaces(firstBearing / 1000, secondBearing / 1000,
                Arrays.stream(planes).map(place -> place / 1000).toArray());
    }

    /** Two unbalances in the bearing planes that act on a rigid rotor as those in the correction planes do. */
    Phasor[] inBearingPlanes(Phasor[] unbalances) {
        RigidUnbalance sum = RigidUnbalance.inPlane(unbalances[0], planes[0]);
        for (int j = 1; j < unbalances.length; j++) {
            sum = sum.plus(RigidUnbalance.inPlane(unbalances[j], planes[j]));
        }
        return sum.inPlanes(firstBearing, secondBearing);
    }
}
