package dev.vibra.severity;

/** A standard written for one kind of machine, to be named beside a choice. */
record SeeAlso(KindSet kinds, Range power, String remark) {

    static SeeAlso read(TableText.Row row) {
        return new SeeAlso(row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)), row.text("remark"));
    }

    boolean holds(Machine machine) {
        return machine.kind().isPresent() && kinds.holds(machine) && power.fit(machine) == Fit.MET;
    }
}
