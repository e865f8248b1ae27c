/**
 * Meters for streams: push blocks of any size, read at any time; the reading equals that of the whole recording. Start
 * at {@link dev.vibra.meter.LevelMeter}. A meter holds its workspace and state, is made once per signal and thread, and
 * allocates nothing while blocks are pushed; bands and filters follow ISO 2954:2012.
 *
 * @serial exclude
 */
package dev.vibra.meter;
