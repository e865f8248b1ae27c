package dev.vibra.severity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The classes of one standard tried on one machine; its scope is looked at before. */
final class Attempt {
    private final CriterionTables tables;
    private final String standard;
    private final Machine machine;
    private final Predicate<ClassRule> asked;
    private final boolean byName;
    private final Set<String> missing = new LinkedHashSet<>();
    private String refusal = "";

    private Attempt(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> asked,
            boolean byName) {
        this.tables = tables;
        this.standard = standard;
        this.machine = machine;
        this.asked = asked;
        this.byName = byName;
    }

    /** Tries the classes that the filter lets through, by the standard's own rules. */
    static Result byRule(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> filter) {
        return new Attempt(tables, standard, machine, filter, false).run();
    }

    /** Tries a class that the user named: power and shaft height are not asked. */
    static Result byName(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> named) {
        return new Attempt(tables, standard, machine, named, true).run();
    }

    /** What comes of it: what fits, or what is missing, or what speaks against it. */
    sealed interface Result permits Fits, Lacks, Refuses {}

    /** Nothing fits whatever else becomes known. */
    record Refuses(String because) implements Result {}

    /** Supports without a class of their own are in {@code without}. */
    record Fits(String standard, Machine machine, List<Match> matches, List<Support> without) implements Result {}

    /** A class that fits on a support, with its limits as criteria. */
    record Match(ClassRule rule, Support support, BandRule band, CriterionSet set) {}

    private Result run() {
        missing.addAll(ScopeRule.missing(tables.scopes(standard, machine), machine));
        List<Match> matches = new ArrayList<>();
        List<Support> without = new ArrayList<>();
        for (Support support : supports(machine)) {
            List<Match> found = rules(support, Fit.MET).stream().flatMap(rule -> match(rule, support).stream())
                    .toList();
            matches.addAll(found);
            if (found.isEmpty()) {
                without.add(support);
            }
        }
        if (missing.isEmpty() && !matches.isEmpty()) {
            return new Fits(standard, machine, distinct(matches), without);
        }
        List<ClassRule> possible = supports(machine).stream().flatMap(support -> possible(support).stream()).toList();
        Lacks lacks = Lacks.of(tables, standard, machine, missing, possible, byName);
        return lacks.missing().isEmpty() || possible.isEmpty() ? new Refuses(refusal.isEmpty() ? noClass() : refusal)
                : lacks;
    }

    static List<Support> supports(Machine machine) {
        return machine.support().map(List::of).orElse(List.of(Support.RIGID, Support.FLEXIBLE));
    }

    private List<ClassRule> possible(Support support) {
        List<ClassRule> rules = rules(support, Fit.MET);
        rules.addAll(rules(support, Fit.OPEN));
        return rules;
    }

    private List<ClassRule> rules(Support support, Fit wanted) {
        return tables.classes(standard).stream().filter(asked)
                .filter(rule -> rule.fit(machine, support, byName) == wanted)
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /** Empty if the class has no limits for the support, no band at this speed, or if they follow an unknown speed. */
    private Optional<Match> match(ClassRule rule, Support support) {
        Optional<BandRule> band = tables.band(standard, rule.group(), machine, Fit.MET);
        if (band.isEmpty()) {
            tables.band(standard, rule.group(), machine, Fit.OPEN)
                    .ifPresentOrElse(open -> missing.add(open.speed().fact().toString()),
                            () -> refusal = standard + " has no frequency band for this speed");
            return Optional.empty();
        }
        List<LimitRow> rows = tables.limits(standard).stream().filter(row -> row.holdsFor(rule, support)).toList();
        boolean follows = band.get().followsSpeed() || rows.stream().anyMatch(LimitRow::perRootSpeed);
        if (follows && machine.speed().isEmpty()) {
            missing.add(Range.Fact.SPEED.toString());
            return Optional.empty();
        }
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        String on = rows.get(0).support() == null ? "" : ", " + support;
        return Optional.of(new Match(rule, support, band.get(), new CriterionSet(rule.group() + on,
                rows.stream().map(row -> tables.criterion(row, band.get(), machine)).toList())));
    }

    /** Where the support changes nothing one match is enough. */
    private static List<Match> distinct(List<Match> matches) {
        List<Match> distinct = new ArrayList<>();
        for (Match match : matches) {
            if (distinct.stream().noneMatch(other -> other.set().equals(match.set()))) {
                distinct.add(match);
            }
        }
        return distinct;
    }

    static String onlyOn(String standard, Support support) {
        return standard + " has a group or class for it on " + support + " support only";
    }

    private String noClass() {
        for (Support other : Support.values()) {
            if (machine.support().isPresent() && !rules(other, Fit.MET).isEmpty()) {
                return onlyOn(standard, other);
            }
        }
        String facts = tables.classes(standard).stream().filter(asked)
                .filter(rule -> rule.kinds().holds(machine)).flatMap(rule -> rule.ranges(byName).stream())
                .filter(range -> range.fit(machine) == Fit.NOT_MET).map(range -> range.given(machine)).distinct()
                .collect(Collectors.joining(" and "));
        return standard + " has no group or class for "
                + (facts.isEmpty() ? machine.kind().map(MachineKind::toString).orElse("this machine") : facts);
    }
}
