package dev.vibra.severity;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Which machines a group or class of a standard takes. */
record ClassRule(String standard, String group, KindSet kinds, Range power, Range shaftHeight, Support support,
        boolean chosenByItself, String remark) {

    static ClassRule read(TableText.Row row) {
        return new ClassRule(row.text("standard"), row.text("class"), row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)),
                row.read("shaft height mm", text -> Range.parse(Range.Fact.SHAFT_HEIGHT, text)),
                row.read("support", LimitRow::support), row.read("chosen", ClassRule::chosen), row.text("remark"));
    }

    private static boolean chosen(String text) {
        if (!text.equals("by itself") && !text.equals("on request")) {
            throw new IllegalArgumentException("chosen must be one of by itself, on request: " + text);
        }
        return text.equals("by itself");
    }

    Fit fit(Machine machine, Support wanted) {
        return fitByName(machine, wanted).and(power.fit(machine)).and(shaftHeight.fit(machine));
    }

    /** Only what a name of the class can't settle: kind of machine and support. */
    Fit fitByName(Machine machine, Support wanted) {
        return kinds.holds(machine) && (support == null || support == wanted) ? Fit.MET : Fit.NOT_MET;
    }

    /** Names of the facts that would have to be known to tell whether the rule is met. */
    Set<String> missing(Machine machine) {
        return Range.open(List.of(power, shaftHeight), machine);
    }

    /** The conditions that decided, in words. */
    String because(Machine machine) {
        return List.of(shaftHeight, power).stream()
                .filter(range -> !range.isAny() && range.fact().of(machine).isPresent())
                .map(range -> range.fact() + " " + range.fact().printed(range.fact().of(machine).getAsDouble()) + " ("
                        + range.bounds() + ")")
                .collect(Collectors.joining(", "));
    }
}
