package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Walks the standards of the tables in their order and takes the first that fits, or the one asked for. */
final class Chooser {
    private final CriterionTables tables;
    private final Machine machine;

    Chooser(CriterionTables tables, Machine machine) {
        this.tables = tables;
        this.machine = machine;
    }

    Choice byItself() {
        Machine judged = withPump(machine);
        List<String> near = new ArrayList<>();
        for (String standard : tables.standards()) {
            Predicate<ClassRule> filter = byRule(standard, judged).and(ClassRule::chosenByItself);
            List<ScopeRule> scopes = tables.scopes(standard, judged);
            if (scopes.isEmpty() || tables.classes(standard).stream().noneMatch(ClassRule::chosenByItself)) {
                continue;
            }
            Attempt.Result result = ScopeRule.refusal(scopes, judged).<Attempt.Result>map(Attempt.Refuses::new)
                    .orElseGet(() -> Attempt.byRule(tables, standard, judged, filter));
            if (result instanceof Attempt.Fits fits && fits.without().isEmpty()) {
                return chosen(fits, near, judged);
            }
            if (result instanceof Lacks lacks) {
                return open(lacks, near);
            }
            near.add(result instanceof Attempt.Refuses refuses ? refuses.because()
                    : Attempt.onlyOn(standard, ((Attempt.Fits) result).matches().get(0).support()));
        }
        String kind = machine.kind().map(MachineKind::toString).orElse("not known");
        return none(near.isEmpty() ? "no criterion applies by itself to a machine of kind " + kind
                : "no criterion applies: " + String.join("; ", near), List.of());
    }

    /** A motor rigidly coupled to a pump belongs to it: ISO 10816-7:2009, pumps with integrated motor. */
    private static Machine withPump(Machine machine) {
        boolean belongs = machine.kind().filter(MachineKind.ELECTRIC_MOTOR::equals).isPresent()
                && machine.coupling().filter(Coupling.RIGID::equals).isPresent()
                && machine.coupledTo().filter(MachineKind.PUMP::equals).isPresent();
        return belongs ? machine.withKind(MachineKind.PUMP) : machine;
    }

    Choice onRequest(CriterionRequest request) {
        Optional<String> named = tables.standards().stream().filter(request::names).findFirst();
        if (named.isEmpty()) {
            return refused(request, "standards in the tables are " + String.join(", ", tables.standards()));
        }
        String standard = named.get();
        return request.duty().isPresent() ? byDuty(request, standard) : onRequest(request, request, standard);
    }

    private Choice byDuty(CriterionRequest request, String standard) {
        List<DutyRule> rules = tables.duties(standard).stream().filter(rule -> request.namesDuty(rule.duty()))
                .toList();
        if (rules.isEmpty()) {
            return refused(request, tables.duties(standard).isEmpty() ? standard + " has no duties in the tables"
                    : "duties of " + standard + " are " + tables.dutyNames(standard));
        }
        for (DutyRule rule : rules) {
            if (rule.power().fit(machine) == Fit.MET) {
                return onRequest(request, request.resolved(rule.group()), standard);
            }
        }
        Set<String> unknown = DutyRule.missing(rules, machine);
        return unknown.isEmpty() ? refused(request, standard + " has no group for that duty at this power")
                : open(new Lacks(standard, unknown, String.join(" and ", unknown), Set.of()), List.of());
    }

    /** {@code asked} is the request as the user made it, {@code request} the one without a duty. */
    private Choice onRequest(CriterionRequest asked, CriterionRequest request, String standard) {
        List<String> groups = tables.classes(standard).stream().map(ClassRule::group).distinct().toList();
        if (groups.stream().noneMatch(request::namesGroup)) {
            return refused(asked, standard + " has " + String.join("; ", groups));
        }
        Machine judged = inKind(standard);
        Attempt.Result result = groups.stream().anyMatch(request::namesWholly)
                ? Attempt.byName(tables, standard, judged, rule -> request.namesWholly(rule.group()))
                : Attempt.byRule(tables, standard, judged, narrowed(request, standard, judged));
        if (result instanceof Attempt.Fits fits) {
            return requested(fits);
        }
        return result instanceof Lacks lacks ? open(lacks, List.of())
                : refused(asked, ((Attempt.Refuses) result).because());
    }

    /** The machine as the standard takes it: as one of a kind that it covers, whatever it is. */
    private Machine inKind(String standard) {
        return List.of(machine, withPump(machine)).stream()
                .filter(each -> !tables.scopes(standard, each).isEmpty()).findFirst()
                .orElseGet(() -> machine.withKind(tables.standIn(standard)));
    }

    private Predicate<ClassRule> narrowed(CriterionRequest request, String standard, Machine judged) {
        if (request.group().isEmpty()) {
            return byRule(standard, judged);
        }
        Predicate<ClassRule> named = rule -> request.namesGroup(rule.group());
        boolean other = tables.classes(standard).stream().anyMatch(named.and(rule -> !rule.byName()));
        return other ? named.and(rule -> !rule.byName()) : named;
    }

    /** Without a group named: the classes that don't have to be, and of these those that a duty may stand for. */
    private Predicate<ClassRule> byRule(String standard, Machine judged) {
        List<DutyRule> all = tables.duties(standard);
        List<DutyRule> duties = all.stream().filter(duty -> duty.power().fit(judged) != Fit.NOT_MET).toList();
        return rule -> !rule.byName()
                && (all.isEmpty() || duties.stream().anyMatch(duty -> duty.standsFor(rule.group())));
    }

    private Choice chosen(Attempt.Fits fits, List<String> near, Machine judged) {
        FitWords words = new FitWords(tables, fits);
        List<String> reasons = new ArrayList<>(List.of(words.reason()));
        reasons.addAll(near);
        List<String> remarks = new ArrayList<>(words.remarks());
        if (!judged.equals(machine)) {
            remarks.add("motor rigidly coupled to a pump: judged as a part of the pump");
        }
        return choice(fits, String.join("; ", reasons), remarks, null);
    }

    private Choice requested(Attempt.Fits fits) {
        FitWords words = new FitWords(tables, fits);
        Optional<OutOfScope> outside = outside(fits.standard()).map(reason -> new OutOfScope(reason, byItself()));
        List<String> remarks = new ArrayList<>();
        outside.ifPresent(one -> remarks.add("out of scope: " + one));
        Optional<String> rule = otherByRule(fits);
        rule.ifPresent(outcome -> remarks.add("by the rule of the standard: " + outcome));
        remarks.addAll(words.remarks());
        return choice(fits, "as requested, " + (rule.isPresent() ? words.designation() : words.reason()), remarks,
                outside.orElse(null));
    }

    /** Why the machine lies outside a standard that was asked for; empty if nothing that is known says so. */
    private Optional<String> outside(String standard) {
        Machine judged = tables.scopes(standard, machine).isEmpty() ? withPump(machine) : machine;
        List<ScopeRule> scopes = tables.scopes(standard, judged);
        return scopes.isEmpty()
                ? machine.kind().map(kind -> standard + " does not cover a machine of kind " + kind)
                : ScopeRule.refusal(scopes, judged);
    }

    /** What the standard itself would take in place of a class that was named against its rule. */
    private Optional<String> otherByRule(Attempt.Fits fits) {
        if (fits.matches().stream().allMatch(match -> match.rule().byName())) {
            return Optional.empty();
        }
        Attempt.Result byRule = Attempt.byRule(tables, fits.standard(), fits.machine(),
                byRule(fits.standard(), fits.machine()));
        if (byRule instanceof Attempt.Fits other) {
            return criteria(other).containsAll(criteria(fits)) ? Optional.empty()
                    : Optional.of(new FitWords(tables, other).reason());
        }
        return Optional.of(byRule instanceof Lacks lacks ? "not determined without " + lacks.inWords()
                : ((Attempt.Refuses) byRule).because());
    }

    private static List<Criterion> criteria(Attempt.Fits fits) {
        return fits.matches().stream().flatMap(match -> match.set().criteria().stream()).distinct().toList();
    }

    private Choice choice(Attempt.Fits fits, String reason, List<String> remarks, OutOfScope outside) {
        List<String> all = new ArrayList<>(remarks);
        tables.seeAlso(machine).stream().filter(remark -> !remark.startsWith(fits.standard())).forEach(all::add);
        return new Choice(fits.matches().stream().map(Attempt.Match::set).toList(),
                new FitWords(tables, fits).undecided(), reason, all, List.of(), alternatives(criteria(fits)), outside);
    }

    /** What else fits, standard by standard: classes by its rule, or else those that have to be named. */
    private List<CriterionRequest> alternatives(Collection<Criterion> chosen) {
        List<CriterionRequest> alternatives = new ArrayList<>();
        for (String standard : tables.standards()) {
            List<ScopeRule> scopes = tables.scopes(standard, machine);
            if (!scopes.isEmpty() && ScopeRule.refusal(scopes, machine).isEmpty()) {
                Predicate<ClassRule> beside = byRule(standard, machine).and(ClassRule::isNamedBeside);
                List.<Predicate<ClassRule>>of(beside, ClassRule::byName).stream()
                        .map(filter -> Attempt.byRule(tables, standard, machine, filter))
                        .filter(result -> result instanceof Attempt.Fits fits && isOther(criteria(fits), chosen))
                        .findFirst().ifPresent(result -> alternatives.add(request((Attempt.Fits) result)));
            }
        }
        return alternatives;
    }

    /** Neither chosen already nor what was narrowed down to it. */
    private static boolean isOther(List<Criterion> criteria, Collection<Criterion> chosen) {
        return !chosen.containsAll(criteria) && (chosen.isEmpty() || !criteria.containsAll(chosen));
    }

    private static CriterionRequest request(Attempt.Fits fits) {
        List<String> groups = fits.matches().stream().map(match -> match.rule().group()).distinct().toList();
        boolean byName = fits.matches().get(0).rule().byName();
        String named = groups.size() > 1 && !byName ? "" : String.join(", ", GroupNames.shared(groups));
        CriterionRequest request = CriterionRequest.of(fits.standard());
        return named.isEmpty() ? request : request.withGroup(named);
    }

    private Choice refused(CriterionRequest request, String because) {
        Choice own = byItself();
        return none("request " + request + " refused: " + because,
                own.hasCriterion() ? List.of("without the request: " + own.reason()) : List.of());
    }

    private Choice open(Lacks lacks, List<String> near) {
        Set<String> missing = new LinkedHashSet<>(lacks.missing());
        if (machine.kind().isEmpty()) {
            missing.add("kind of machine");
        }
        List<String> reasons = new ArrayList<>(List.of(lacks.standard() + " can't be applied without "
                + lacks.inWords() + (machine.kind().isEmpty() ? " and kind of machine" : "")));
        if (!lacks.assumed().isEmpty()) {
            reasons.add("not given either, but not needed: " + String.join(", ", lacks.assumed()));
        }
        reasons.addAll(near);
        return without(String.join("; ", reasons), List.of(), List.copyOf(missing));
    }

    private Choice none(String reason, List<String> remarks) {
        return without(reason, remarks, List.of());
    }

    private Choice without(String reason, List<String> remarks, List<String> missing) {
        List<String> all = new ArrayList<>(remarks);
        all.addAll(tables.seeAlso(machine));
        return new Choice(List.of(), List.of(), reason, all, missing, alternatives(List.of()), null);
    }
}
