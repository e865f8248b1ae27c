package dev.vibra.bearing.study;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.bearing.synthesis.GearMesh;
import dev.vibra.quantity.RotationSpeed;
import java.util.Locale;
import java.util.SplittableRandom;

/** What beats in a machine beside its bearing. Each makes samples of some level; who adds them scales them. */
enum Disturbance {
    NONE,
    /** Hammers once a turn. */
    LOOSE {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return m.impacts(m.shaft(), random.nextDouble(0.001, 0.01), 0, 0, random);
        }
    },
    /** Hammers every second turn. */
    LOOSE_HALF {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return m.impacts(m.shaft() / 2, random.nextDouble(0.001, 0.01), 0, 0, random);
        }
    },
    /** A mesh that swings with the other shaft, one tooth of which strikes. */
    GEAR {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            int teeth = random.nextInt(17, 60);
            double other = m.foreign(random, r -> m.shaft() * teeth / r.nextInt(17, 120));
            double mesh = Math.min(teeth * m.shaft(), 0.4 * m.sampleRate());
            GearMesh gear = new GearMesh(mesh, 1, other, random.nextDouble(0.2, 1));
            double[] tones = gear.addTo(m.silence(), m.sampleRate()).waveform().samples();
            return Machine.sum(tones, m.impacts(other, 0.001, 0, 0, random), random.nextDouble(0, 0.5));
        }
    },
    /** Flow noise that swings as vanes pass. */
    VANE {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return m.swinging(m.foreign(random, r -> r.nextInt(3, 13) * m.shaft()), random);
        }
    },
    /** The joint of a belt. */
    BELT {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            double rate = m.foreign(random, r -> r.nextDouble(0.15, 0.9) * m.shaft());
            return m.impacts(rate, random.nextDouble(0.001, 0.01), 0, 0, random);
        }
    },
    /** Single samples. */
    SPIKES {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            double[] spikes = new double[m.length()];
            int count = random.nextInt(1, 50);
            for (int i = 0; i < count; i++) {
                spikes[random.nextInt(spikes.length)] = random.nextDouble(-1, 1);
            }
            return spikes;
        }
    },
    /** Magnetic noise at twice the line frequency. */
    LINE {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return m.swinging(m.foreign(random, r -> r.nextBoolean() ? 100 : 120), random);
        }
    },
    /** Noise that a converter of six or twelve pulses makes. */
    CONVERTER {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return m.swinging(m.foreign(random, r -> (r.nextBoolean() ? 6 : 12) * (r.nextBoolean() ? 50 : 60)),
                    random);
        }
    },
    /** A defect in another bearing of the same shaft. */
    OTHER_BEARING {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return other(m, m.shaft(), random);
        }
    },
    /** A defect in a bearing of another shaft. */
    OTHER_SHAFT {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            return other(m, m.shaft() * Draw.logarithmic(random, 0.3, 3), random);
        }
    },
    /** Impacts at random times, as of cavitation. */
    RANDOM_IMPACTS {
        @Override
        double[] samples(Machine m, SplittableRandom random) {
            double perSample = Draw.logarithmic(random, 1, 50) / m.sampleRate();
            double[] excitation = new double[m.length()];
            for (int i = 0; i < excitation.length; i++) {
                excitation[i] = random.nextDouble() < perSample ? random.nextDouble(0.2, 1) : 0;
            }
            return m.rung(excitation);
        }
    };

    /** Nothing, unless overridden. */
    double[] samples(Machine machine, SplittableRandom random) {
        return new double[machine.length()];
    }

    private static double[] other(Machine m, double shaft, SplittableRandom random) {
        BearingElement[] elements = {BearingElement.OUTER_RACE, BearingElement.INNER_RACE,
            BearingElement.ROLLING_ELEMENT};
        BearingElement element = elements[random.nextInt(elements.length)];
        double[] modulation = new double[1];
        double rate = m.foreign(random, r -> {
            KinematicFrequencies rates = Draw.geometry(r).frequencies(RotatingRing.INNER,
                    RotationSpeed.ofHertz(shaft));
            modulation[0] = rates.modulationOf(element);
            return rates.of(element);
        });
        return m.impacts(rate, random.nextDouble(0.002, 0.02), modulation[0], modulation[0] > 0 ? 0.9 : 0, random);
    }

    /** True if a sensor sees it: spikes arise behind it. */
    boolean mechanical() {
        return this != SPIKES;
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
