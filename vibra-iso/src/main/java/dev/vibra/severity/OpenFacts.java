package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** All that would have to be known of a machine before a standard can be applied to it, not only what is met first. */
final class OpenFacts {
    private final CriterionTables tables;
    private final Machine machine;
    private final boolean byName;
    private final Set<String> missing = new LinkedHashSet<>();
    private final List<Set<String>> ways = new ArrayList<>();
    private final Set<String> groups = new LinkedHashSet<>();
    private final Set<String> assumed = new LinkedHashSet<>();

    private OpenFacts(CriterionTables tables, Machine machine, boolean byName) {
        this.tables = tables;
        this.machine = machine;
        this.byName = byName;
    }

    /** {@code possible} are, for each support, the classes against which nothing speaks that is known. */
    static OpenFacts of(CriterionTables tables, ScopeRule scope, Machine machine, boolean byName,
            List<List<ClassRule>> possible) {
        OpenFacts open = new OpenFacts(tables, machine, byName);
        open.missing.addAll(scope.missing(machine));
        possible.forEach(open::noteClasses);
        open.noteAssumed(scope, possible);
        return open;
    }

    private void noteClasses(List<ClassRule> possible) {
        for (ClassRule rule : possible) {
            Set<String> way = Range.open(rule.ranges(byName), machine);
            if (followsUnknownSpeed(rule)) {
                way.add(Range.Fact.SPEED.toString());
            }
            ways.add(way);
            missing.addAll(way);
            groups.addAll(toldApart(possible.stream().filter(other -> conditions(other).equals(conditions(rule)))
                    .map(ClassRule::group).distinct().toList()));
        }
    }

    /** Groups that no fact of the machine tells apart, without the parts that all their names share; none if one. */
    static List<String> toldApart(Collection<String> groups) {
        return groups.size() < 2 ? List.of() : groups.stream().map(group -> parts(group).stream()
                .filter(part -> !groups.stream().allMatch(other -> parts(other).contains(part)))
                .collect(Collectors.joining(", "))).toList();
    }

    private static List<String> parts(String group) {
        return List.of(group.split(", "));
    }

    private boolean followsUnknownSpeed(ClassRule rule) {
        return machine.speed().isEmpty() && (tables.limits(rule.standard()).stream()
                .anyMatch(row -> row.group().equals(rule.group()) && row.perRootSpeed())
                || tables.band(rule.standard(), rule.group(), machine, Fit.MET).isEmpty());
    }

    private List<String> conditions(ClassRule rule) {
        return rule.ranges(byName).stream().map(Range::bounds).toList();
    }

    private void noteAssumed(ScopeRule scope, List<List<ClassRule>> possible) {
        boolean bySupport = possible.stream().flatMap(List::stream).anyMatch(rule -> rule.support() != null
                || tables.limits(rule.standard()).stream()
                        .anyMatch(row -> row.group().equals(rule.group()) && row.support() != null));
        if (machine.support().isEmpty() && bySupport) {
            assumed.add("support");
        }
        if (machine.speed().isEmpty() && !scope.speed().isAny() && !missing.contains(Range.Fact.SPEED.toString())) {
            assumed.add(Range.Fact.SPEED.toString());
        }
    }

    /** Names of the facts, without the group. */
    Set<String> missing() {
        return missing;
    }

    /** Groups that only the user can choose among, whatever else becomes known. */
    Set<String> groups() {
        return groups;
    }

    /** Facts that are unknown, too, but stop nothing. */
    Set<String> assumed() {
        return assumed;
    }

    /** The facts of which any one is enough: each class lacks just one, and not all the same. */
    Set<String> alternatives() {
        Set<String> all = ways.stream().flatMap(Set::stream).collect(Collectors.toCollection(LinkedHashSet::new));
        boolean oneEach = ways.stream().allMatch(way -> way.size() == 1);
        return oneEach && all.size() > 1 && all.equals(missing) ? all : Set.of();
    }
}
