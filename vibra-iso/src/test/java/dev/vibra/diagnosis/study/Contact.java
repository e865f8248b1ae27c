package dev.vibra.diagnosis.study;

import java.util.List;

/** Something that touches or opens: forces that depend on where and how fast its places move. */
interface Contact {
    /** Motions that it feels and pushes along. */
    List<Tap> taps();

    /** Forces along the motions, by their displacements in m and velocities in m/s, beyond those of the linear springs. */
    void push(double[] places, double[] speeds, double[] forces);

    /** A joint that opens: stiff below zero, nothing in a gap, stiff again beyond; preload presses it shut. */
    record Joint(Tap tap, double stiffness, double preload, double gap, double stop, double damping) implements Contact {
        @Override
        public List<Tap> taps() {
            return List.of(tap);
        }

        @Override
        public void push(double[] places, double[] speeds, double[] forces) {
            double squeezed = preload / stiffness;
            double lift = places[0] - squeezed;
            double stopped = lift > gap ? Math.max(0, stop * (lift - gap) + damping * speeds[0]) : 0;
            forces[0] = lift <= 0 ? 0 : stiffness * places[0] - preload - stopped;
        }
    }

    /** A ring in a seat with clearance, at rest at its bottom; replaces the linear springs of a bearing. */
    record Seat(Tap x, Tap y, double level, double upright, double clearance, double weight, double damping)
            implements Contact {
        @Override
        public List<Tap> taps() {
            return List.of(x, y);
        }

        @Override
        public void push(double[] places, double[] speeds, double[] forces) {
            double across = places[0];
            double up = places[1] - clearance - weight / upright;
            double radius = Math.hypot(across, up);
            double pressed = radius - clearance;
            double force = 0;
            if (pressed > 0) {
                double outward = (across * speeds[0] + up * speeds[1]) / radius;
                double stiffness = (level * across * across + upright * up * up) / (radius * radius);
                force = Math.max(0, stiffness * pressed + damping * outward);
            }
            double direction = radius > 0 ? force / radius : 0;
            forces[0] = level * places[0] - direction * across;
            forces[1] = upright * places[1] - direction * up - weight;
        }
    }

    /** A wall at one side of a rotor: a round against a flat, so force grows with depth to the power 3/2; it drags. */
    record Wall(Tap normal, Tap along, double clearance, double stiffness, double depth, double friction)
            implements Contact {
        @Override
        public List<Tap> taps() {
            return List.of(normal, along);
        }

        @Override
        public void push(double[] places, double[] speeds, double[] forces) {
            double in = places[0] - clearance;
            double force = in > 0 ? Math.max(0, stiffness * in * Math.sqrt(Math.min(in / depth, 4))
                    * (1 + 0.3 * speeds[0] / (depth * 1000))) : 0;
            forces[0] = -force;
            forces[1] = friction * force;
        }
    }
}
