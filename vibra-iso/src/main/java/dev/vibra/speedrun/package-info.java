/**
 * Run-up and coast-down: how vibration follows the speed of the shaft, and at which speeds a resonance answers. Start
 * at {@link dev.vibra.speedrun.SpeedSweep#read}, which reads speed over time from a tachometer, and give the sweep to
 * {@link dev.vibra.speedrun.PointRun#of}; {@link dev.vibra.speedrun.RunModel} is the forward model. Terms follow ISO
 * 2041 and ISO 13373-2 (from memory, unverified), the passage through a resonance F. M. Lewis (1932).
 *
 * @serial exclude
 */
package dev.vibra.speedrun;
