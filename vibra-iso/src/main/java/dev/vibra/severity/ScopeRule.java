package dev.vibra.severity;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a standard covers, for the kinds of machine named. */
record ScopeRule(String standard, KindSet kinds, Range power, Range speed) {

    static ScopeRule read(TableText.Row row) {
        return new ScopeRule(row.text("standard"), row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)),
                row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text)));
    }

    /** Why the machine lies outside; empty if nothing that is known speaks against it. */
    Optional<String> refusal(Machine machine) {
        for (Range range : List.of(power, speed)) {
            if (range.fit(machine) == Fit.NOT_MET) {
                double given = range.fact().of(machine).orElseThrow();
                return Optional.of(standard + " covers a " + range.fact() + " " + range.bounds() + ", not "
                        + range.printed(given));
            }
        }
        return Optional.empty();
    }

    /** Names of the facts that would have to be known to tell whether the machine lies inside. */
    Set<String> missing(Machine machine) {
        return Range.open(List.of(power, speed), machine);
    }
}
