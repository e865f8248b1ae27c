package dev.vibra.severity;

import dev.vibra.internal.TableText;

/** What has to be said of a kind of machine beside a choice, most often a standard written for it. */
record SeeAlso(KindSet kinds, Range power, Range speed, String remark) {

    static SeeAlso read(TableText.Row row) {
        return new SeeAlso(row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)),
                row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text)), row.text("remark"));
    }

    boolean holds(Machine machine) {
        return machine.kind().isPresent() && kinds.holds(machine)
                && power.fit(machine).and(speed.fit(machine)) == Fit.MET;
    }
}
