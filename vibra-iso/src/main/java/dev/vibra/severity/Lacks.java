package dev.vibra.severity;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A standard that can't be applied for want of facts: all of them, not only what is met first.
 *
 * @param inWords the missing facts, as in {@code shaft height or rated power} where any one is enough
 * @param assumed facts that are unknown, too, but stop nothing
 */
record Lacks(String standard, Set<String> missing, String inWords, Set<String> assumed) implements Attempt.Result {

    /** {@code possible} are the classes against which nothing speaks that is known. */
    static Lacks of(CriterionTables tables, String standard, Machine machine, Set<String> known,
            List<ClassRule> possible, boolean byName) {
        List<Set<String>> ways = possible.stream().map(rule -> way(tables, rule, machine, byName)).toList();
        ways.forEach(way -> way.removeAll(known));
        Set<String> missing = new LinkedHashSet<>(known);
        if (ways.stream().noneMatch(Set::isEmpty)) {
            ways.forEach(missing::addAll);
        }
        // Each class lacks just one fact, and not all the same: any one of them is enough.
        boolean anyOne = known.isEmpty() && missing.size() > 1 && ways.stream().allMatch(way -> way.size() == 1);
        return new Lacks(standard, missing, String.join(anyOne ? " or " : " and ", missing),
                assumed(tables, standard, machine, missing, possible));
    }

    private static Set<String> way(CriterionTables tables, ClassRule rule, Machine machine, boolean byName) {
        Set<String> way = Range.open(rule.ranges(byName), machine);
        boolean follows = tables.band(rule.standard(), rule.group(), machine, Fit.MET).isEmpty()
                || tables.limits(rule.standard()).stream()
                        .anyMatch(row -> row.group().equals(rule.group()) && row.perRootSpeed());
        if (machine.speed().isEmpty() && follows) {
            way.add(Range.Fact.SPEED.toString());
        }
        return way;
    }

    private static Set<String> assumed(CriterionTables tables, String standard, Machine machine, Set<String> missing,
            List<ClassRule> possible) {
        Set<String> assumed = new LinkedHashSet<>();
        boolean bySupport = possible.stream().anyMatch(rule -> rule.support() != null
                || tables.limits(standard).stream()
                        .anyMatch(row -> row.group().equals(rule.group()) && row.support() != null));
        if (machine.support().isEmpty() && bySupport) {
            assumed.add("support");
        }
        if (machine.speed().isEmpty() && (possible.stream().anyMatch(rule -> !rule.speed().isAny())
                || tables.scopes(standard, machine).stream().anyMatch(scope -> !scope.speed().isAny()))) {
            assumed.add(Range.Fact.SPEED.toString());
        }
        assumed.removeAll(missing);
        return assumed;
    }
}
