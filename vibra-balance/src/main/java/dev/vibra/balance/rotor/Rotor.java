package dev.vibra.balance.rotor;

import dev.vibra.balance.influence.InfluenceCoefficients;
import dev.vibra.balance.influence.Layout;
import dev.vibra.balance.vector.Phasor;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.RotationSpeed;
import java.util.List;
import java.util.Objects;

/**
 * Rotor that answers unbalance with vibration, linearly.
 *
 * <p>Angles are counted with rotation and phases are leads, as everywhere inside the library: {@code x(t) =
 * Re(V·exp(iωt))} with {@code t = 0} when the mark passes the tachometer.
 */
public interface Rotor {
    /**
     * Counts the planes in which unbalance can act.
     *
     * @return number of planes
     */
    int planes();

    /**
     * Counts the sensors.
     *
     * @return number of sensors
     */
    int sensors();

    /**
     * Returns the displacement at a sensor per unbalance in a plane.
     *
     * @param sensor index of the sensor
     * @param plane index of the plane
     * @param speed speed of rotation
     * @return complex receptance times ω², in m zero-to-peak per kg·m
     * @throws IllegalArgumentException if there is no such sensor or plane
     * @throws IllegalStateException if the rotor is not held, or turns at an undamped critical speed
     */
    Phasor displacementPerUnbalance(int sensor, int plane, RotationSpeed speed);

    /**
     * Checks indices.
     *
     * @param sensor index of the sensor
     * @param plane index of the plane
     * @throws IllegalArgumentException if there is no such sensor or plane
     */
    default void requireIndices(int sensor, int plane) {
        if (sensor < 0 || sensor >= sensors()) {
            throw new IllegalArgumentException("sensor must be from 0 to " + (sensors() - 1) + ": " + sensor);
        }
        if (plane < 0 || plane >= planes()) {
            throw new IllegalArgumentException("plane must be from 0 to " + (planes() - 1) + ": " + plane);
        }
    }

    /**
     * Returns the influence coefficients of this rotor, with each row in the quantity of its sensor.
     *
     * @param layout layout with as many planes and sensors as the rotor, and at least one speed; radii have to be known
     * @return the coefficients
     * @throws IllegalArgumentException if the layout does not fit
     */
    default InfluenceCoefficients coefficients(Layout layout) {
        Objects.requireNonNull(layout, "layout");
        if (layout.planes().size() != planes() || layout.sensors().size() != sensors() || layout.speeds().isEmpty()) {
            throw new IllegalArgumentException("layout must have " + planes() + " planes, " + sensors()
                    + " sensors and at least one speed: " + layout);
        }
        Phasor[][] alpha = new Phasor[layout.rows()][planes()];
        List<RotationSpeed> speeds = layout.speeds();
        for (int row = 0; row < alpha.length; row++) {
            RotationSpeed speed = speeds.get(row / sensors());
            int integrations = Quantity.DISPLACEMENT.integrationsTo(layout.sensorOfRow(row).unit().quantity());
            for (int plane = 0; plane < planes(); plane++) {
                if (!layout.radiusKnown(plane)) {
                    throw new IllegalArgumentException("radius of plane " + layout.planes().get(plane)
                            + " must be known");
                }
                alpha[row][plane] = differentiated(displacementPerUnbalance(row % sensors(), plane, speed),
                        -integrations, speed.radiansPerSecond());
            }
        }
        return InfluenceCoefficients.of(layout, alpha);
    }

    private static Phasor differentiated(Phasor displacement, int times, double omega) {
        Phasor out = displacement;
        for (int i = 0; i < times; i++) {
            out = new Phasor(-omega * out.im(), omega * out.re()); // d/dt is a factor iω
        }
        return out;
    }
}
