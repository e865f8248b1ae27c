package dev.vibra.simulation;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import java.util.List;
import java.util.Map;

/**
 * What a plan is made of; numbers of housings and rotors are places in the lists.
 *
 * @param form what the machine is
 * @param housings bearing housings, motor first
 * @param rotors rotors, that of the motor first
 * @param links couplings, one at most
 * @param stages gear stages
 * @param belt the belt, or null
 * @param blades blades or vanes, or null
 * @param supply speed and line
 * @param sampling rate, length and common time of the recordings
 * @param points measuring points
 * @param bearings geometry of the bearings that it is told of, by housing
 * @param structure how the sound machine answers to forces
 * @param motorIsTold true if the description tells that a motor drives
 * @param description what a user tells
 */
record PlanParts(MachinePlan.Form form, List<Housing> housings, List<Rotor> rotors, List<Link> links,
        List<Stage> stages,
        Drive belt, Blades blades, Supply supply, Sampling sampling, List<Point> points,
        Map<Integer, BearingGeometry> bearings, Structure structure, boolean motorIsTold,
        MachineDescription description) {
    /** A bearing housing of a part. */
    record Housing(String id, String part) {}

    /**
     * A rotor on two bearings.
     *
     * @param owner shaft as a site of faults names it
     * @param ratio its turns for one turn of the main shaft
     * @param first housing at the end away from the coupling of the motor, or at the coupling of what is driven
     * @param second housing at its other end
     * @param plane where its mass lies: 0 at the first bearing, 1 at the second, beyond 1 overhung
     */
    record Rotor(String owner, double ratio, int first, int second, double plane) {
        boolean isOverhung() {
            return plane > 1;
        }
    }

    /** A coupling with the housings at its sides and the rotors that it joins. */
    record Link(String owner, int before, int behind, int driving, int driven) {}

    /** A gear stage with the rotors of its wheels. */
    record Stage(String owner, int pinion, int wheel, int pinionTeeth, int wheelTeeth) {}

    /** A belt: order of its rate, angle of its line from the horizontal, housings at the pulleys, and the rotors. */
    record Drive(String owner, double order, double angle, int drivingHousing, int drivenHousing, int driving,
            int driven) {}

    /** A wheel with blades; guide vanes are zero where there are none. */
    record Blades(int rotor, int number) {}

    /**
     * Speed and line.
     *
     * @param mainHertz true speed of the main shaft
     * @param lineHertz true line frequency
     * @param polePassHertz slip speed times the number of poles, {@code 2·s·f1}
     * @param load part of the rated load, 0 to 1
     */
    record Supply(double mainHertz, double lineHertz, double polePassHertz, double load) {}

    /** Sample rate, number of samples and, for each housing, the instant at which its recordings begin. */
    record Sampling(double hertz, int length) {}

    /**
     * A measuring point.
     *
     * @param point as the description has it
     * @param housing where it lies
     * @param direction which way, as in {@link Excitation}
     * @param factor gain of the sensor, negative where it is turned over
     * @param resonanceHertz mounted resonance of the sensor
     * @param limit boundary B/C of its part as rms velocity in m/s
     * @param start instant at which its recording begins, in s
     */
    record Point(MeasuringPoint point, int housing, int direction, double factor, double resonanceHertz, double limit,
            double start) {}
}
