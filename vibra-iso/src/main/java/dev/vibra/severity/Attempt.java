package dev.vibra.severity;

import java.util.ArrayList;
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
    private final Set<Criterion> criteria = new LinkedHashSet<>();
    private final Set<String> reasons = new LinkedHashSet<>();
    private final Set<String> remarks = new LinkedHashSet<>();
    private final Set<String> missing = new LinkedHashSet<>();
    private String refusal = "";

    private Attempt(CriterionTables tables, String standard, Machine machine) {
        this.tables = tables;
        this.standard = standard;
        this.machine = machine;
    }

    /** Tries the classes that the filter lets through, by the standard's own rules. */
    static Attempt byRule(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> filter) {
        return new Attempt(tables, standard, machine).run(filter, ClassRule::fit);
    }

    /** Tries a class that the user named: power and shaft height are not asked. */
    static Attempt byName(CriterionTables tables, String standard, Machine machine, Predicate<ClassRule> named) {
        return new Attempt(tables, standard, machine).run(named, ClassRule::fitByName);
    }

    boolean fits() {
        return !criteria.isEmpty();
    }

    boolean isOpen() {
        return !fits() && !missing.isEmpty();
    }

    Set<Criterion> criteria() {
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

    /** Why nothing fits, as far as something speaks against it. */
    String refusal() {
        return refusal;
    }

    private interface Rule {
        Fit fit(ClassRule rule, Machine machine, Support support);
    }

    private Attempt run(Predicate<ClassRule> filter, Rule rule) {
        Optional<ScopeRule> scope = tables.scope(standard, machine);
        if (scope.isEmpty()) {
            refusal = standard + " does not cover a machine of kind "
                    + machine.kind().map(MachineKind::toString).orElse("unknown");
        } else if (scope.get().refusal(machine).isPresent()) {
            refusal = scope.get().refusal(machine).get();
        } else {
            missing.addAll(scope.get().missing(machine));
            run(filter, rule, scope.get());
        }
        return this;
    }

    private void run(Predicate<ClassRule> filter, Rule rule, ScopeRule scope) {
        Optional<BandRule> band = tables.band(standard, machine, Fit.MET);
        if (band.isEmpty()) {
            tables.band(standard, machine, Fit.OPEN).ifPresent(open -> missing.add(open.speed().fact().toString()));
            refusal = standard + " has no frequency band for this speed";
        } else if (missing.isEmpty()) {
            match(filter, rule, band.get());
            remark(scope, band.get());
        }
    }

    private void match(Predicate<ClassRule> filter, Rule rule, BandRule band) {
        List<Support> supports = machine.support().map(List::of).orElse(List.of(Support.RIGID, Support.FLEXIBLE));
        List<String> without = new ArrayList<>();
        for (Support support : supports) {
            List<ClassRule> fitting = rules(filter, rule, support, Fit.MET);
            fitting.forEach(fit -> take(fit, support, band));
            if (fitting.isEmpty()) {
                without.add(support.toString());
                rules(filter, rule, support, Fit.OPEN).forEach(open -> missing.addAll(open.missing(machine)));
            }
        }
        if (!fits()) {
            refusal = standard + " has no group or class for it";
        } else if (!without.isEmpty()) {
            remarks.add("on " + String.join(" or ", without) + " support " + standard
                    + " has no group or class for it");
        }
    }

    private List<ClassRule> rules(Predicate<ClassRule> filter, Rule rule, Support support, Fit wanted) {
        return tables.classes(standard).stream().filter(filter)
                .filter(candidate -> rule.fit(candidate, machine, support) == wanted).collect(Collectors.toList());
    }

    private void take(ClassRule rule, Support support, BandRule band) {
        for (LimitRow row : tables.limits()) {
            if (row.holdsFor(rule, support)) {
                criteria.add(new Criterion(row, band.band()));
            }
        }
        String because = rule.because(machine);
        reasons.add(standard + " " + rule.group() + (because.isEmpty() ? "" : ": " + because));
        if (!rule.remark().isEmpty()) {
            remarks.add(rule.remark());
        }
    }

    private void remark(ScopeRule scope, BandRule band) {
        if (!fits()) {
            return;
        }
        if (machine.kind().isEmpty()) {
            remarks.add("kind of machine not given: classed by rated power, as a machine that is not electrical");
        }
        if (machine.ratedPowerWatts().isEmpty() && !scope.power().isAny()) {
            remarks.add("rated power not given: " + standard + " covers a rated power " + scope.power().bounds());
        }
        if (machine.speed().isEmpty()) {
            remarks.add("speed not given: " + standard + " covers a speed " + scope.speed().bounds() + "; band "
                    + band.band() + (band.speed().isAny() ? "" : " as for a speed " + band.speed().bounds()));
        }
        if (machine.support().isEmpty() && criteria.stream().anyMatch(criterion -> criterion.support().isPresent())) {
            remarks.add("support not given: judged as rigid and as flexible, the worse zone decides");
        }
    }
}
