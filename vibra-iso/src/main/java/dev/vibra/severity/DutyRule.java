package dev.vibra.severity;

import dev.vibra.internal.TableText;
import java.util.List;
import java.util.Set;

/** Which group of a standard a duty in words stands for, at a power. */
record DutyRule(String standard, String duty, Range power, String group) {

    static DutyRule read(TableText.Row row) {
        return new DutyRule(row.text("standard"), row.text("duty"),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)), row.text("group"));
    }

    boolean standsFor(String name) {
        return GroupNames.parts(name).containsAll(GroupNames.parts(group));
    }

    /** Names of the facts without which the duty doesn't tell the group. */
    static Set<String> missing(List<DutyRule> rules, Machine machine) {
        return Range.open(rules.stream().map(DutyRule::power).toList(), machine);
    }
}
