package dev.vibra.diagnosis.study;

/**
 * A bearing housing: where motion is measured and bearings knock. Each has a local resonance of its own in each direction,
 * which knocks make ring.
 *
 * @param name as in {@code M-DE}
 * @param rotor index of its rotor
 * @param end which bearing of the rotor
 * @param taps motion level, upright, along, resonances included
 * @param knock where a bearing's knock pushes
 * @param shield bending of the end shield, along the shaft
 */
record Housing(String name, int rotor, int end, Tap[] taps, Tap knock, Tap shield) {}
