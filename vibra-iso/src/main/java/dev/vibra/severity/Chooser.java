package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Walks the standards of the tables in their order and takes the first that fits, or the one asked for. */
final class Chooser {
    private final CriterionTables tables;
    private final Machine machine;

    Chooser(CriterionTables tables, Machine machine) {
        this.tables = tables;
        this.machine = machine;
    }

    Choice byItself() {
        List<String> refusals = new ArrayList<>();
        for (String standard : tables.standards()) {
            if (tables.classes(standard).stream().noneMatch(ClassRule::chosenByItself)) {
                continue;
            }
            Attempt attempt = Attempt.byRule(tables, standard, machine, ClassRule::chosenByItself);
            if (attempt.fits()) {
                return chosen(attempt, refusals);
            }
            if (attempt.isOpen()) {
                return open(standard, attempt, refusals);
            }
            refusals.add(attempt.refusal());
        }
        return none("no criterion applies: " + (refusals.isEmpty() ? "the tables have none that is chosen by itself"
                : String.join("; ", refusals)), List.of());
    }

    Choice onRequest(CriterionRequest request) {
        List<String> named = tables.standards().stream().filter(request::names).collect(Collectors.toList());
        if (named.isEmpty()) {
            return refused(request, "standards in the tables are " + String.join(", ", tables.standards()));
        }
        String standard = named.get(0);
        return request.duty().isPresent() ? byDuty(request, standard) : onRequest(request, request, standard);
    }

    private Choice byDuty(CriterionRequest request, String standard) {
        List<DutyRule> all = tables.duties(standard);
        List<DutyRule> rules = all.stream().filter(rule -> request.namesDuty(rule.duty())).toList();
        if (rules.isEmpty()) {
            return refused(request, all.isEmpty() ? standard + " has no duties in the tables" : "duties of " + standard
                    + " are " + all.stream().map(DutyRule::duty).distinct().collect(Collectors.joining(", ")));
        }
        for (DutyRule rule : rules) {
            if (rule.power().fit(machine) == Fit.MET) {
                return onRequest(request, request.resolved(rule.group()), standard);
            }
        }
        Set<String> unknown = new LinkedHashSet<>(DutyRule.missing(rules, machine));
        if (unknown.isEmpty()) {
            return refused(request, standard + " has no group for that duty at this power");
        }
        Set<String> assumed = new LinkedHashSet<>();
        for (DutyRule rule : rules) {
            Attempt attempt = attempt(request.resolved(rule.group()), standard);
            unknown.addAll(attempt.missing());
            assumed.addAll(attempt.assumed());
        }
        assumed.removeAll(unknown);
        return open(standard, unknown, String.join(" and ", unknown), assumed, List.of());
    }

    /** {@code asked} is the request as the user made it, {@code request} the one without a duty. */
    private Choice onRequest(CriterionRequest asked, CriterionRequest request, String standard) {
        List<String> groups = groups(standard);
        if (groups.stream().noneMatch(request::namesGroup)) {
            return refused(asked, standard + " has " + String.join(", ", groups));
        }
        Attempt attempt = attempt(request, standard);
        if (attempt.fits()) {
            return requested(standard, attempt);
        }
        return attempt.isOpen() ? open(standard, attempt, List.of()) : refused(asked, attempt.refusal());
    }

    private Attempt attempt(CriterionRequest request, String standard) {
        return groups(standard).stream().anyMatch(request::namesWholly)
                ? Attempt.byName(tables, standard, machine, rule -> request.namesWholly(rule.group()))
                : Attempt.byRule(tables, standard, machine, request.group().isEmpty() ? byRuleOf(standard)
                        : rule -> request.namesGroup(rule.group()));
    }

    private List<String> groups(String standard) {
        return tables.classes(standard).stream().map(ClassRule::group).distinct().toList();
    }

    private Choice chosen(Attempt attempt, List<String> refusals) {
        List<String> reasons = new ArrayList<>(List.of(attempt.reason()));
        reasons.addAll(refusals);
        return choice(attempt.criteria(), String.join("; ", reasons), remarks(attempt), List.of());
    }

    private Choice requested(String standard, Attempt attempt) {
        Attempt byRule = Attempt.byRule(tables, standard, machine, byRuleOf(standard));
        if (byRule.isAmbiguous() || byRule.criteria().equals(attempt.criteria())) {
            return choice(attempt.criteria(), "as requested, " + attempt.reason(), remarks(attempt), List.of());
        }
        List<String> remarks = new ArrayList<>(List.of("by the rule of the standard: " + outcome(byRule)));
        remarks.addAll(remarks(attempt));
        return choice(attempt.criteria(), "as requested, " + attempt.designation(), remarks, List.of());
    }

    private Choice choice(Collection<Criterion> criteria, String reason, List<String> remarks,
            Collection<String> missing) {
        return new Choice(List.copyOf(criteria), reason, remarks, List.copyOf(missing), alternatives(criteria));
    }

    /** Every standard with classes on request that fit, but not what is chosen already. */
    private List<CriterionRequest> alternatives(Collection<Criterion> chosen) {
        List<CriterionRequest> alternatives = new ArrayList<>();
        for (String standard : tables.standardsOnRequest()) {
            if (tables.scope(standard, machine).isPresent()) {
                Attempt attempt = Attempt.byRule(tables, standard, machine, ClassRule::onRequestOnly);
                if (attempt.isAmbiguous() || attempt.fits() && !chosen.containsAll(attempt.criteria())) {
                    alternatives.add(request(standard, attempt));
                }
            }
        }
        return alternatives;
    }

    /** Beside classes that are chosen by themselves, those on request have to be named. */
    private Predicate<ClassRule> byRuleOf(String standard) {
        boolean byItself = tables.classes(standard).stream().anyMatch(ClassRule::chosenByItself);
        return rule -> !byItself || !rule.onRequestOnly();
    }

    private static CriterionRequest request(String standard, Attempt attempt) {
        CriterionRequest request = CriterionRequest.of(standard);
        List<String> groups = attempt.criteria().stream().map(Criterion::groupLabel).distinct().toList();
        return groups.size() == 1 ? request.withGroup(groups.get(0)) : request;
    }

    private static String outcome(Attempt attempt) {
        if (attempt.fits()) {
            return attempt.reason();
        }
        return attempt.isOpen() ? "not determined without " + attempt.lacking()
                : attempt.refusal();
    }

    private Choice refused(CriterionRequest request, String because) {
        Choice own = byItself();
        List<String> remarks = new ArrayList<>();
        if (own.hasCriterion()) {
            remarks.add("without the request: " + own.reason());
        }
        return none("request " + request + " refused: " + because, remarks);
    }

    private Choice open(String standard, Attempt attempt, List<String> refusals) {
        return open(standard, attempt.missing(), attempt.lacking(), attempt.assumed(), refusals);
    }

    private Choice open(String standard, Collection<String> unknown, String lacking, Set<String> assumed,
            List<String> refusals) {
        Set<String> missing = new LinkedHashSet<>(unknown);
        StringBuilder reason = new StringBuilder("not determined: " + standard + " can't be applied without "
                + lacking);
        if (machine.kind().isEmpty()) {
            missing.add("kind of machine");
            reason.append(" and kind of machine");
        }
        if (!assumed.isEmpty()) {
            reason.append("; not given either, but not needed: ").append(String.join(", ", assumed));
        }
        refusals.forEach(refusal -> reason.append("; ").append(refusal));
        return choice(List.of(), reason.toString(), tables.seeAlso(machine), missing);
    }

    private Choice none(String reason, List<String> remarks) {
        List<String> all = new ArrayList<>(remarks);
        all.addAll(tables.seeAlso(machine));
        return choice(List.of(), reason, all, List.of());
    }

    private List<String> remarks(Attempt attempt) {
        List<String> remarks = new ArrayList<>(attempt.remarks());
        remarks.addAll(tables.seeAlso(machine));
        return remarks;
    }
}
