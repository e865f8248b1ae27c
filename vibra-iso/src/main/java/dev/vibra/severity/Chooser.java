package dev.vibra.severity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
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
                return open(standard, attempt);
            }
            refusals.add(attempt.refusal());
        }
        return none("no criterion applies: " + String.join("; ", refusals), List.of());
    }

    Choice onRequest(CriterionRequest request) {
        List<String> named = tables.standards().stream().filter(request::names).collect(Collectors.toList());
        if (named.isEmpty()) {
            return refused(request, "standards in the tables are " + String.join(", ", tables.standards()));
        }
        String standard = named.get(0);
        if (tables.classes(standard).stream().noneMatch(rule -> request.namesGroup(rule.group()))) {
            return refused(request, standard + " has " + tables.classes(standard).stream()
                    .map(ClassRule::group).distinct().collect(Collectors.joining(", ")));
        }
        Attempt attempt = request.group().isPresent()
                ? Attempt.byName(tables, standard, machine, rule -> request.namesGroup(rule.group()))
                : Attempt.byRule(tables, standard, machine, rule -> true);
        if (attempt.fits()) {
            return requested(standard, attempt);
        }
        return attempt.isOpen() ? open(standard, attempt) : refused(request, attempt.refusal());
    }

    private Choice chosen(Attempt attempt, List<String> refusals) {
        List<String> reasons = new ArrayList<>(List.of(attempt.reason()));
        reasons.addAll(refusals);
        return new Choice(List.copyOf(attempt.criteria()), String.join("; ", reasons), remarks(attempt), List.of());
    }

    private Choice requested(String standard, Attempt attempt) {
        List<Criterion> criteria = List.copyOf(attempt.criteria());
        Attempt byRule = Attempt.byRule(tables, standard, machine, rule -> true);
        if (byRule.criteria().equals(attempt.criteria())) {
            return new Choice(criteria, "as requested, " + byRule.reason(), remarks(attempt), List.of());
        }
        List<String> remarks = new ArrayList<>(List.of("by the rule of the standard: " + outcome(byRule)));
        remarks.addAll(remarks(attempt));
        return new Choice(criteria, "as requested, " + attempt.designation(), remarks, List.of());
    }

    private static String outcome(Attempt attempt) {
        if (attempt.fits()) {
            return attempt.reason();
        }
        return attempt.isOpen() ? "not determined without " + String.join(" and ", attempt.missing())
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

    private Choice open(String standard, Attempt attempt) {
        Set<String> missing = new LinkedHashSet<>(attempt.missing());
        if (machine.kind().isEmpty()) {
            missing.add("kind of machine");
        }
        return new Choice(List.of(), "not determined: " + standard + " can't be applied without "
                + String.join(" and ", missing), tables.seeAlso(machine), List.copyOf(missing));
    }

    private Choice none(String reason, List<String> remarks) {
        List<String> all = new ArrayList<>(remarks);
        all.addAll(tables.seeAlso(machine));
        return new Choice(List.of(), reason, all, List.of());
    }

    private List<String> remarks(Attempt attempt) {
        List<String> remarks = new ArrayList<>(attempt.remarks());
        remarks.addAll(tables.seeAlso(machine));
        return remarks;
    }
}
