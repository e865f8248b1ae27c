package dev.vibra.severity;

import dev.vibra.internal.TableText;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a standard covers, for the kinds of machine named; of several rows for a kind any one may hold. */
record ScopeRule(String standard, KindSet kinds, Range power, Range speed) {

    static ScopeRule read(TableText.Row row) {
        return new ScopeRule(row.text("standard"), row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)),
                row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text)));
    }

    /** Why the machine lies outside all of the rows, by the first of them; empty if it may lie inside one. */
    static Optional<String> refusal(List<ScopeRule> rows, Machine machine) {
        return rows.stream().allMatch(row -> row.fit(machine) == Fit.NOT_MET)
                ? rows.stream().findFirst().map(row -> row.refusal(machine)) : Optional.empty();
    }

    /** Names of the facts that would have to be known to tell whether the machine lies inside one of the rows. */
    static Set<String> missing(List<ScopeRule> rows, Machine machine) {
        Set<String> missing = new LinkedHashSet<>();
        if (rows.stream().noneMatch(row -> row.fit(machine) == Fit.MET)) {
            rows.stream().filter(row -> row.fit(machine) == Fit.OPEN)
                    .forEach(row -> missing.addAll(Range.open(List.of(row.power, row.speed), machine)));
        }
        return missing;
    }

    private Fit fit(Machine machine) {
        return power.fit(machine).and(speed.fit(machine));
    }

    private String refusal(Machine machine) {
        Range outside = power.fit(machine) == Fit.NOT_MET ? power : speed;
        return standard + " covers a " + outside.fact() + " " + outside.bounds() + ", not "
                + outside.printed(outside.fact().of(machine).orElseThrow());
    }
}
