package dev.vibra.severity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Why the classes of a standard fit a machine, and what was assumed, in words. */
final class FitWords {
    private final CriterionTables tables;
    private final String standard;
    private final Machine machine;
    private final List<Attempt.Match> matches;
    private final List<Support> without;

    FitWords(CriterionTables tables, Attempt.Fits fits) {
        this.tables = tables;
        this.standard = fits.standard();
        this.machine = fits.machine();
        this.matches = fits.matches();
        this.without = fits.without();
    }

    /** Standard and classes, with the facts that decided. */
    String reason() {
        Map<String, Set<String>> groups = new LinkedHashMap<>();
        matches.forEach(match -> groups.computeIfAbsent(match.rule().because(machine), unused -> new LinkedHashSet<>())
                .add(match.rule().group()));
        return groups.entrySet().stream().map(entry -> standard + " " + GroupNames.together(entry.getValue())
                + (entry.getKey().isEmpty() ? "" : ": " + entry.getKey())).collect(Collectors.joining("; "));
    }

    /** Standard and classes without the facts that decided. */
    String designation() {
        return standard + " " + GroupNames.together(distinct(match -> match.rule().group()));
    }

    /** The facts that would tell which of the classes, or which support, holds. */
    List<String> undecided() {
        List<String> facts = new ArrayList<>();
        if (distinct(Attempt.Match::support).size() > 1) {
            facts.add("support");
        }
        boolean several = matches.stream().collect(Collectors.groupingBy(Attempt.Match::support)).values().stream()
                .anyMatch(onOne -> onOne.stream().map(match -> match.rule().group()).distinct().count() > 1);
        if (several) {
            facts.add(partedBy());
        }
        return facts;
    }

    /** Classes that differ in more than one way are told apart by their group only. */
    private String partedBy() {
        boolean simple = groups().stream().noneMatch(group -> group.contains(", "));
        return simple ? tables.partedBy(standard) : "group";
    }

    private List<String> groups() {
        return GroupNames.toldApart(distinct(match -> match.rule().group()));
    }

    List<String> remarks() {
        Set<String> remarks = new LinkedHashSet<>();
        noteUndecided(remarks);
        noteUnknown(remarks);
        if (!without.isEmpty()) {
            remarks.add("on " + without.get(0) + " support " + standard + " has no group or class for it");
        }
        if (machine.kind().filter(MachineKind::isElectrical).isPresent()
                && machine.coupling().filter(Coupling.RIGID::equals).isPresent()) {
            remarks.add("rigidly coupled: the part for the driven machine counts, too");
        }
        boolean same = distinct(match -> match.rule().remark()).size() == 1;
        matches.stream().map(Attempt.Match::rule).filter(rule -> !rule.remark().isEmpty())
                .forEach(rule -> remarks.add((same ? "" : rule.group() + ": ") + rule.remark()));
        return List.copyOf(remarks);
    }

    private void noteUndecided(Set<String> remarks) {
        List<String> facts = undecided();
        if (facts.isEmpty()) {
            return;
        }
        String duties = facts.contains(partedBy()) && !tables.duties(standard).isEmpty()
                ? "; duties are " + tables.dutyNames(standard) : "";
        if (matches.size() > Verdict.WORSE_DECIDES) {
            remarks.add(String.join(" and ", facts) + " not given: " + matches.size()
                    + " sets of limits may hold, and there is a zone only where all agree" + duties);
        } else {
            List<String> between = facts.contains("support")
                    ? distinct(Attempt.Match::support).stream().map(support -> "as " + support).toList()
                    : groups().stream().map(group -> "by " + group).toList();
            remarks.add(String.join(" and ", facts) + " not given: judged " + String.join(" and ", between)
                    + ", the worse zone decides" + duties);
        }
    }

    private void noteUnknown(Set<String> remarks) {
        if (machine.kind().isEmpty()) {
            remarks.add("kind of machine not given: judged as one that is neither electrical nor a pump nor a fan");
        }
        List<ScopeRule> scopes = tables.scopes(standard, machine);
        if (machine.ratedPowerWatts().isEmpty()) {
            scopes.stream().map(ScopeRule::power).filter(power -> !power.isAny()).findFirst().ifPresent(power -> remarks
                    .add("rated power not given: " + standard + " covers a rated power " + power.bounds()));
        }
        if (machine.speed().isEmpty()) {
            remarks.add("speed not given: " + scopes.stream().map(ScopeRule::speed).filter(speed -> !speed.isAny())
                    .findFirst().map(speed -> standard + " covers a speed " + speed.bounds() + "; ").orElse("")
                    + band(matches.get(0).band()));
        }
    }

    private String band(BandRule band) {
        return "band " + band.band(machine) + (band.speed().isAny() ? "" : " as for a speed " + band.speed().bounds());
    }

    private <T> List<T> distinct(Function<Attempt.Match, T> of) {
        return matches.stream().map(of).distinct().toList();
    }
}
