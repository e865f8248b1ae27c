package dev.vibra.severity;

import dev.vibra.internal.TableText;
import java.util.List;
import java.util.stream.Collectors;

/** Which machines a group or class of a standard takes. */
record ClassRule(String standard, String group, KindSet kinds, Range power, Range shaftHeight, Range speed,
        Support support, Chosen chosen, String remark) {

    /** How a class comes to be used. */
    enum Chosen {
        /** By the choice itself, where it fits. */
        BY_ITSELF,
        /** By the choice itself, where nothing else fits; not named beside a choice. */
        OTHERWISE,
        /** Only where its standard is asked for; named beside a choice. */
        ON_REQUEST,
        /** Only where it is named itself, since another class of the standard holds otherwise. */
        BY_NAME,
        /** Only where it is asked for; belongs to a standard that another one has replaced. */
        REPLACED;

        static Chosen ofName(String text) {
            return switch (text) {
                case "by itself" -> BY_ITSELF;
                case "otherwise" -> OTHERWISE;
                case "on request" -> ON_REQUEST;
                case "by name" -> BY_NAME;
                case "replaced" -> REPLACED;
                default -> throw new IllegalArgumentException(
                        "chosen must be one of by itself, otherwise, on request, by name, replaced: " + text);
            };
        }
    }

    static ClassRule read(TableText.Row row) {
        return new ClassRule(row.text("standard"), row.text("class"), row.read("kinds", KindSet::parse),
                row.read("power kW", text -> Range.parse(Range.Fact.POWER, text)),
                row.read("shaft height mm", text -> Range.parse(Range.Fact.SHAFT_HEIGHT, text)),
                row.read("speed r/min", text -> Range.parse(Range.Fact.SPEED, text)),
                row.read("support", LimitRow::support), row.read("chosen", Chosen::ofName), row.text("remark"));
    }

    boolean chosenByItself() {
        return chosen == Chosen.BY_ITSELF || chosen == Chosen.OTHERWISE;
    }

    /** Whether the standard is named beside a choice by another one. */
    boolean isNamedBeside() {
        return chosen == Chosen.BY_ITSELF || chosen == Chosen.ON_REQUEST;
    }

    boolean byName() {
        return chosen == Chosen.BY_NAME;
    }

    /** Kind and support, which nothing can stand in for. */
    boolean holdsFor(Machine machine, Support wanted) {
        return kinds.holds(machine) && (support == null || support == wanted);
    }

    /** The numbers that a class must meet; a class asked for by its full name is asked its speed only. */
    List<Range> ranges(boolean byName) {
        return byName ? List.of(speed) : List.of(shaftHeight, power, speed);
    }

    Fit fit(Machine machine, Support wanted, boolean byName) {
        if (!holdsFor(machine, wanted)) {
            return Fit.NOT_MET;
        }
        Fit fit = Fit.MET;
        for (Range range : ranges(byName)) {
            fit = fit.and(range.fit(machine));
        }
        return fit;
    }

    /** The conditions that decided, in words. */
    String because(Machine machine) {
        return ranges(false).stream()
                .filter(range -> !range.isAny() && range.fact().of(machine).isPresent())
                .map(range -> range.given(machine) + " (" + range.bounds() + ")")
                .collect(Collectors.joining(", "));
    }
}
