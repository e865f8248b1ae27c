package dev.vibra.fault;

import dev.vibra.internal.Require;
import dev.vibra.internal.TableText;
import dev.vibra.symptom.Answer;
import dev.vibra.symptom.Evidence;
import dev.vibra.symptom.Question;
import dev.vibra.symptom.Questions;
import dev.vibra.symptom.Site;
import java.util.Objects;

/**
 * A symptom that faults are weighed on: a row of the table of faults. Immutable.
 *
 * @see "ISO 13372:2012, 9.4, symptom; ISO 13379-1:2012 (from memory, unverified)"
 */
public final class Symptom {
    private final String code;
    private final Site.Kind site;
    private final String asks;
    private final Question question;
    private final String seenAs;
    private final String by;
    private final Effort effort;

    private Symptom(String code, Site.Kind site, String asks, String seenAs, String by, Effort effort) {
        this.code = Require.notBlank("code", code);
        this.site = Objects.requireNonNull(site, "site");
        this.asks = Require.notBlank("asks", asks);
        this.question = Questions.parse(code, asks);
        this.seenAs = Require.notBlank("seen as", seenAs);
        this.by = Require.notBlank("by", by);
        this.effort = effort;
    }

    static Symptom read(TableText.Row row) {
        row.read("asks", asks -> Questions.parse(row.text("code"), asks));
        return new Symptom(row.text("code"), row.read("site", FaultTable::kind), row.text("asks"),
                row.text("seen as"), row.text("by"), row.read("effort", Effort::ofName));
    }

    /** {@return stable code, as in {@code twice-half}} */
    public String code() {
        return code;
    }

    /** {@return at which kind of site it is asked for} */
    public Site.Kind site() {
        return site;
    }

    /** {@return kind of question with its figures, as in {@code ratio 2 1 0.5}} */
    public String asks() {
        return asks;
    }

    /** {@return true if a crew answers it, by a test or an inspection, and no recording} */
    public boolean isTest() {
        return "test".equals(asks);
    }

    /** {@return true if only a reference from earlier can show it, which nobody can measure today} */
    public boolean isChange() {
        return asks.matches("(\\S+-)?rose\\b.*");
    }

    /** {@return what is there if it is seen} */
    public String seenAs() {
        return seenAs;
    }

    /** {@return how to measure it} */
    public String by() {
        return by;
    }

    /** {@return what that asks of the machine} */
    public Effort effort() {
        return effort;
    }

    /**
     * Asks for it.
     *
     * @param evidence machine and points
     * @param at site of the kind {@link #site()}
     * @return the answer
     */
    public Answer ask(Evidence evidence, Site at) {
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(at, "at");
        return question.ask(evidence, at);
    }

    /** Returns code and words. */
    @Override
    public String toString() {
        return code + ": " + seenAs;
    }
}
