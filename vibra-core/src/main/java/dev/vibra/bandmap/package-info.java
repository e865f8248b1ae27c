/**
 * Which band of a recording pulsates most: a figure of impulsiveness for each band of a tree of centre frequencies and
 * bandwidths. Start at {@link dev.vibra.bandmap.BandMap}; {@link dev.vibra.bandmap.BandMapPlan} is the engine beneath.
 * The tree is that of J. Antoni, <i>Mech. Syst. Signal Process.</i> 21 (2007) 108-124, the negentropies those of J.
 * Antoni, <i>Mech. Syst. Signal Process.</i> 74 (2016) 73-94.
 *
 * @serial exclude
 */
package dev.vibra.bandmap;
