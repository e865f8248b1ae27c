package dev.vibra.docs.survey.output;

import dev.vibra.diagnosis.Decider;
import dev.vibra.diagnosis.FaultPattern;
import dev.vibra.diagnosis.Faults;
import dev.vibra.fault.Counts;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes the page of the reference: nothing in it but what the engine weighs with, and figures of simulated machines. */
final class PatternPage {
    private static final int SYMPTOMS = 8;

    private final Map<String, List<String>> captions;
    private final List<String> lines = new ArrayList<>();

    private PatternPage(Map<String, List<String>> captions) {
        this.captions = captions;
    }

    /** Captions of the spectrum, and of the wave where there is one, by id of the fault. */
    static String text(Map<String, List<String>> captions) {
        PatternPage page = new PatternPage(captions);
        page.head();
        Faults.reference().forEach(page::section);
        page.foot();
        return String.join("\n", page.lines) + "\n";
    }

    static String picture(String id, boolean wave) {
        return "pattern-" + id.replace('/', '-') + (wave ? "-wave" : "") + ".png";
    }

    private void add(String... more) {
        lines.addAll(List.of(more));
    }

    private void head() {
        Counts.Draws draws = Counts.standard().draws();
        add("# Fault patterns: the reference", "",
                "What the library weighs faults on, and how much each symptom is worth. This page is written by the suite from the",
                "table of faults and the counts that the engine itself reads (`FaultPatternsTest` with `-Dpages.renew=true`), so the",
                "two can't disagree.", "",
                "**Where the counts come from.** Not from plants: nobody has published counted likelihoods. " + whole(draws.machines())
                + " simulated machines,",
                "sound and with one fault each, of random layout, support, resonance, load, sensor and noise, were surveyed as yours",
                "would be, and each symptom was asked for. *With it* and *without* say how many of the machines with the fault, and",
                "of the sound ones, showed it; a machine that was measured too little to show it isn't counted. Symptoms stand by what",
                "they tell in the mean; one that is rarer with the fault than without speaks against it where it is seen. Simulated",
                "machines are kinder than plants: take the order seriously and no percentage literally.", "",
                "**What decides** is worked out for each pair as if nothing had been measured yet: what the counts let expect most",
                "information of, the gentlest first. A survey tells what still decides on *your* machine",
                "([what to measure next](what-to-measure-next.md)). The figures are drawn from one simulated machine each; another",
                "machine with the same fault may look otherwise, and that is the point of the counts.", "",
                "The same in JShell:", "", "```java", "import dev.vibra.diagnosis.*",
                "Faults.reference().size()        // ==> " + Faults.reference().size(),
                "var bow = Faults.pattern(\"bent-shaft\")", "bow.mimics().get(0).words()      // ==> \""
                + Faults.pattern("bent-shaft").mimics().get(0).words() + "\"",
                "bow.symptoms().forEach(System.out::println)", "```", "", "```text");
        Faults.pattern("bent-shaft").symptoms().forEach(one -> add(one.toString()));
        add("```", "", "| fault | id | at each |", "|---|---|---|");
        Faults.reference().forEach(one -> add("| [" + Words.capital(one.words()) + "](#" + anchor(one) + ") | `" + one.id()
                + "` | " + one.site() + " |"));
    }

    /** As the sites that show Markdown make it of a heading. */
    private static String anchor(FaultPattern one) {
        return one.words().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9 -]", "").replace(' ', '-');
    }

    private static String whole(int number) {
        return String.format(Locale.ROOT, "%,d", number);
    }

    private void section(FaultPattern one) {
        add("", "## " + Words.capital(one.words()), "", "`" + one.id() + "`, looked for at each " + one.site()
                + "; findings have the code `" + one.code() + "`.", "");
        List<String> told = captions.getOrDefault(one.id(), List.of());
        for (int i = 0; i < told.size(); i++) {
            add("![" + told.get(i) + "](figures/" + picture(one.id(), i > 0) + ")", "", "*" + told.get(i) + "*", "");
        }
        if (one.symptoms().isEmpty()) {
            add("Nothing counted tells of it.", "");
        } else {
            add("| symptom | with it | without |", "|---|---|---|");
            one.symptoms().stream().limit(SYMPTOMS).forEach(symptom -> add("| " + symptom.words() + " | "
                    + share(symptom.seenWith(), symptom.allWith()) + " | "
                    + share(symptom.seenWithout(), symptom.allWithout()) + " |"));
            add("");
        }
        add("Looks like:", "");
        one.mimics().forEach(this::mimic);
        add("", "Source: " + one.source() + ".");
    }

    private static String share(int seen, int all) {
        return seen + " of " + all + " (" + Math.round(100.0 * seen / Math.max(1, all)) + " %)";
    }

    private void mimic(FaultPattern.Mimic one) {
        add("- **" + Words.capital(one.words()) + "**" + (one.decidedBy().isEmpty()
                ? ". Nothing that was counted tells the two apart." : ". What decides:"));
        one.decidedBy().stream().map(PatternPage::decider).forEach(text -> add("  - " + text));
    }

    private static String decider(Decider one) {
        return Words.capital(one.measurement()) + ": " + one.meaning() + ".";
    }

    private void foot() {
        add("", "## What this can't tell", "",
                "Faults that aren't in the table: film bearings, planetary gears, synchronous and DC machines, converters, cavitation.",
                "How often a fault is met at all: every fault counts as likely as every other beforehand, unless you say otherwise",
                "(`Diagnosis.of(evidence, priors)`). What a symptom is worth on a machine unlike those that were simulated. How two",
                "faults at once change each other. A finding supports qualified staff and does not replace them.");
    }

    static String caption(PatternExample example, boolean wave) {
        String what = example.point().dominantLines().stream().limit(3).map(Object::toString)
                .collect(Collectors.joining("; "));
        return (wave ? "The wave at the same point" : Words.capital(example.form()) + ", simulated (seed "
                + example.seed() + "), point " + example.point().point().id() + (what.isEmpty() ? "" : "; largest lines: " + what))
                + ".";
    }
}
