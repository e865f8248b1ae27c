package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** One standard tried on one machine: what fits, what is missing, what speaks against it. */
final class Attempt {
    private final CriterionTables tables;
    private final String standard;
    private final Machine machine;
    private final boolean byName;
    private final List<Criterion> criteria = new ArrayList<>();
    private final Set<String> reasons = new LinkedHashSet<>();
    private final Set<String> remarks = new LinkedHashSet<>();
    private final Set<String> missing = new LinkedHashSet<>();
    private final Set<String> equallyFitting = new LinkedHashSet<>();
    private final Set<String> assumed = new LinkedHashSet<>();
    private String lacking = "";
    private String refusal = "";
    private String bandAssumed = "";

    private Attempt(CriterionTables tables, String standard, Machine machine, boolean byName) {
        this.tables = tables;
        this.standard = standard;
        this.machine = machine;
        this.byName = byName;
    }

    /** Tries the classes that the filter lets through, by the standard's own rules. */
    static Attempt byRule(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> filter) {
        return new Attempt(tables, standard, machine, false).run(filter);
    }

    /** Tries a class that the user named: power and shaft height are not asked. */
    static Attempt byName(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> named) {
        return new Attempt(tables, standard, machine, true).run(named);
    }

    boolean fits() {
        return !criteria.isEmpty();
    }

    boolean isOpen() {
        return !fits() && !missing.isEmpty();
    }

    /** Whether several classes fit, so that the user has to name one of them. */
    boolean isAmbiguous() {
        return !equallyFitting.isEmpty();
    }

    List<Criterion> criteria() {
        return criteria;
    }

    String reason() {
        return String.join("; ", reasons);
    }

    /** Standard and groups without the facts that decided. */
    String designation() {
        return standard + " " + criteria.stream().map(Criterion::groupLabel).distinct()
                .collect(Collectors.joining(", "));
    }

    Set<String> remarks() {
        return remarks;
    }

    Set<String> missing() {
        return missing;
    }

    /** The missing facts in words, as in {@code shaft height or rated power}. */
    String lacking() {
        return lacking;
    }

    /** What is unknown, too, and would be assumed. */
    Set<String> assumed() {
        return assumed;
    }

    /** Why nothing fits, as far as something speaks against it. */
    String refusal() {
        return refusal;
    }

    private Attempt run(Predicate<ClassRule> filter) {
        Optional<ScopeRule> scope = tables.scope(standard, machine);
        if (scope.isEmpty()) {
            refusal = standard + " does not cover a machine of kind "
                    + machine.kind().map(MachineKind::toString).orElse("unknown");
        } else if (scope.get().refusal(machine).isPresent()) {
            refusal = scope.get().refusal(machine).get();
        } else {
            missing.addAll(scope.get().missing(machine));
            if (missing.isEmpty()) {
                match(filter, scope.get());
            }
            if (isOpen()) {
                noteOpen(filter, scope.get());
            }
        }
        return this;
    }

    /** Names at once all that is missing, so that nobody has to ask again for each fact. */
    private void noteOpen(Predicate<ClassRule> filter, ScopeRule scope) {
        List<List<ClassRule>> possible = supports().stream().map(support -> {
            List<ClassRule> rules = rules(filter, support, Fit.MET);
            rules.addAll(rules(filter, support, Fit.OPEN));
            return rules;
        }).toList();
        OpenFacts open = OpenFacts.of(tables, scope, machine, byName, possible);
        missing.addAll(open.missing());
        if (!isAmbiguous() && !open.groups().isEmpty()) {
            missing.add(theGroup(open.groups()));
        }
        assumed.addAll(open.assumed());
        assumed.removeAll(missing);
        lacking = String.join(open.alternatives().equals(missing) ? " or " : " and ", missing);
    }

    private static String theGroup(Collection<String> groups) {
        return "the group, one of " + String.join(" / ", groups);
    }

    private List<Support> supports() {
        return machine.support().map(List::of).orElse(List.of(Support.RIGID, Support.FLEXIBLE));
    }

    private void match(Predicate<ClassRule> filter, ScopeRule scope) {
        List<Support> supports = supports();
        List<List<ClassRule>> fitting = supports.stream().map(support -> rules(filter, support, Fit.MET)).toList();
        fitting.forEach(this::noteSeveral);
        if (isAmbiguous()) {
            missing.add(theGroup(OpenFacts.toldApart(equallyFitting)));
            return;
        }
        List<String> without = new ArrayList<>();
        for (int i = 0; i < supports.size(); i++) {
            Support support = supports.get(i);
            fitting.get(i).forEach(fit -> take(fit, support));
            if (fitting.get(i).isEmpty()) {
                without.add(support.toString());
                rules(filter, support, Fit.OPEN)
                        .forEach(open -> missing.addAll(Range.open(open.ranges(byName), machine)));
            }
        }
        if (fits()) {
            remark(scope);
            if (!without.isEmpty()) {
                remarks.add("on " + String.join(" or ", without) + " support " + standard
                        + " has no group or class for it");
            }
        } else if (refusal.isEmpty()) {
            refusal = standard + " has no group or class for it";
        }
    }

    /** Several groups that fit one support are for the user to choose among. */
    private void noteSeveral(List<ClassRule> fitting) {
        List<String> groups = fitting.stream().map(ClassRule::group).distinct().toList();
        if (groups.size() > 1) {
            equallyFitting.addAll(groups);
        }
    }

    private List<ClassRule> rules(Predicate<ClassRule> filter, Support support, Fit wanted) {
        List<ClassRule> rules = new ArrayList<>();
        for (ClassRule candidate : tables.classes(standard)) {
            if (filter.test(candidate) && candidate.fit(machine, support, byName) == wanted) {
                rules.add(candidate);
            }
        }
        return rules;
    }

    private void take(ClassRule rule, Support support) {
        Optional<BandRule> band = tables.band(standard, rule.group(), machine, Fit.MET);
        if (band.isEmpty()) {
            tables.band(standard, rule.group(), machine, Fit.OPEN)
                    .ifPresent(open -> missing.add(open.speed().fact().toString()));
            refusal = standard + " has no frequency band for this speed";
            return;
        }
        for (LimitRow row : tables.limits(standard)) {
            if (row.holdsFor(rule, support)) {
                take(row, band.get());
            }
        }
        if (fits()) {
            remark(band.get());
            String because = rule.because(machine);
            reasons.add(standard + " " + rule.group() + (because.isEmpty() ? "" : ": " + because));
            if (!rule.remark().isEmpty()) {
                remarks.add(rule.remark());
            }
        }
    }

    private void take(LimitRow row, BandRule band) {
        if ((row.perRootSpeed() || band.followsSpeed()) && machine.speed().isEmpty()) {
            missing.add("speed");
        } else {
            Criterion criterion = tables.criterion(row, band, machine);
            if (!criteria.contains(criterion)) {
                criteria.add(criterion);
            }
        }
    }

    private void remark(BandRule band) {
        if (machine.speed().isEmpty()) {
            bandAssumed = "band " + band.band(machine)
                    + (band.speed().isAny() ? "" : " as for a speed " + band.speed().bounds());
        }
    }

    private void remark(ScopeRule scope) {
        if (machine.kind().isEmpty()) {
            remarks.add("kind of machine not given: classed by rated power, as a machine that is not electrical");
        }
        if (machine.ratedPowerWatts().isEmpty() && !scope.power().isAny()) {
            remarks.add("rated power not given: " + standard + " covers a rated power " + scope.power().bounds());
        }
        if (machine.speed().isEmpty()) {
            remarks.add("speed not given: " + (scope.speed().isAny() ? ""
                    : standard + " covers a speed " + scope.speed().bounds() + "; ") + bandAssumed);
        }
        if (machine.support().isEmpty() && criteria.stream().anyMatch(criterion -> criterion.support().isPresent())) {
            remarks.add("support not given: judged as rigid and as flexible, the worse zone decides");
        }
    }
}
