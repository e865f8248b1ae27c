package dev.vibra.score;

import dev.vibra.diagnosis.Finding;
import dev.vibra.evidence.Share;
import dev.vibra.internal.Require;
import dev.vibra.point.PointSurvey;
import dev.vibra.survey.MachineSurvey;
import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What surveys said of points whose faults are known. Each fault of each labelled point is one row:
 * <pre>{@code
 * Scorecard card = Scorecard.empty();
 * card = card.with("fan 3", survey, Map.of("DE-H", Label.of("rolling-bearing-outer-race"), "FE-H", Label.healthy()));
 * card.defects().share(LabelOutcome.RIGHT);         // 1 of 1 (2.5 to 100.0 %)
 * card.healthy().share(LabelOutcome.FALSE_ALARM);   // 0 of 1 (0.0 to 97.5 %)
 * }</pre>
 *
 * <p>Only findings at the labelled point count, whatever the bearing they name there; zones are no findings. A fault
 * that is named is {@code right}, even if something else is said beside it: that is told as an extra of the row and
 * listed with the wrong ones. Where the fault isn't named, another one that is named makes it a {@code wrong code},
 * even if a finding that can't be told apart from the right one stands beside it. A healthy point is {@code right} only
 * where every element of a bearing was found absent: silence is {@code not determined}, so that knowing less never
 * scores more.
 *
 * <p>Rows of one machine, or of one recording cut into pieces, aren't independent: bounds are then too narrow.
 *
 * @param rows what was scored, in the order of the surveys and their points
 * @param notScored what could not be scored, and is in no count
 * @see "C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404-413: bounds of the shares"
 */
public record Scorecard(List<ScoredLabel> rows, List<NotScored> notScored) implements Serializable {
    /**
     * Copies the lists.
     *
     * @param rows see the record
     * @param notScored see the record
     */
    public Scorecard {
        rows = Require.copy("rows", rows);
        notScored = Require.copy("notScored", notScored);
    }

    /** {@return a card without any row} */
    public static Scorecard empty() {
        return new Scorecard(List.of(), List.of());
    }

    /**
     * Adds the labelled points of a machine; those without a label are noted as not scored.
     *
     * @param machine name that tells the machine from all others
     * @param survey survey of the machine
     * @param labels label by point id
     * @return a card with the rows
     * @throws IllegalArgumentException if a label names no point of the survey
     */
    public Scorecard with(String machine, MachineSurvey survey, Map<String, Label> labels) {
        return with(machine, Objects.requireNonNull(survey, "survey").points(), survey.findings(), labels);
    }

    /**
     * Adds the labelled points of a machine; those without a label are noted as not scored.
     *
     * @param machine name that tells the machine from all others
     * @param points results of its points
     * @param findings findings of the machine
     * @param labels label by point id
     * @return a card with the rows
     * @throws IllegalArgumentException if a label names none of the points
     */
    public Scorecard with(String machine, List<PointSurvey> points, List<Finding> findings,
            Map<String, Label> labels) {
        Objects.requireNonNull(labels, "labels");
        List<String> ids = Require.copy("points", points).stream().map(one -> one.point().id()).toList();
        labels.keySet().stream().filter(id -> !ids.contains(id)).findFirst().ifPresent(id -> {
            throw new IllegalArgumentException("labels must name points of " + machine + " ("
                    + String.join(", ", ids) + "): " + id);
        });
        Stream<ScoredLabel> scored = points.stream().filter(one -> labels.containsKey(one.point().id()))
                .flatMap(one -> new PointScore(machine, one, findings, labels.get(one.point().id())).rows().stream());
        List<String> unlabelled = ids.stream().filter(id -> !labels.containsKey(id)).toList();
        return new Scorecard(Stream.concat(rows.stream(), scored).toList(), unlabelled.isEmpty() ? notScored
                : noted(new NotScored(machine, unlabelled, "no label")));
    }

    /**
     * Notes what could not be scored.
     *
     * @param one machine or points with the reason
     * @return a card with the note
     */
    public Scorecard without(NotScored one) {
        Objects.requireNonNull(one, "one");
        return new Scorecard(rows, noted(one));
    }

    private List<NotScored> noted(NotScored one) {
        return Stream.concat(notScored.stream(), Stream.of(one)).toList();
    }

    /** {@return the rows of points with a fault} */
    public Scorecard defects() {
        return only(row -> !row.isHealthy());
    }

    /** {@return the rows of healthy points} */
    public Scorecard healthy() {
        return only(ScoredLabel::isHealthy);
    }

    /**
     * Selects the rows of one label.
     *
     * @param label code of a fault, or {@code healthy}
     * @return a card of these rows
     */
    public Scorecard ofLabel(String label) {
        Objects.requireNonNull(label, "label");
        return only(row -> row.label().equals(label));
    }

    private Scorecard only(Predicate<ScoredLabel> wanted) {
        return new Scorecard(rows.stream().filter(wanted).toList(), notScored);
    }

    /** {@return all labels that rows have, sorted} */
    public List<String> labels() {
        return List.copyOf(new TreeSet<>(rows.stream().map(ScoredLabel::label).toList()));
    }

    /**
     * Counts the rows of one outcome.
     *
     * @param outcome the outcome
     * @return number of rows
     */
    public int count(LabelOutcome outcome) {
        Objects.requireNonNull(outcome, "outcome");
        return (int) rows.stream().filter(row -> row.outcome() == outcome).count();
    }

    /**
     * Holds the rows of one outcome against those that weren't refused, since what was refused could become neither
     * right nor wrong.
     *
     * @param outcome the outcome
     * @return its count of the rows that weren't refused; that of {@code refused} of all rows
     */
    public Share share(LabelOutcome outcome) {
        Objects.requireNonNull(outcome, "outcome");
        int judged = rows.size() - (outcome == LabelOutcome.REFUSED ? 0 : count(LabelOutcome.REFUSED));
        return new Share(count(outcome), judged);
    }

    /** {@return rows in which something is said that the label contradicts, be it beside the right fault} */
    public List<ScoredLabel> wrong() {
        return rows.stream().filter(ScoredLabel::isWrong).toList();
    }

    /**
     * Returns the card as a table of outcomes by label, with the shares of points with a fault and of healthy ones,
     * then each wrong row and each open one with its evidence, then what was not scored.
     *
     * @return several lines without a line end at the end
     */
    public String describe() {
        return new ScoreTable(this).text();
    }

    /** Returns the counts in one line, as in {@code 14 labels: 9 right; 3 found, not named; 2 not determined}. */
    @Override
    public String toString() {
        String counts = Arrays.stream(LabelOutcome.values()).filter(outcome -> count(outcome) > 0)
                .map(outcome -> count(outcome) + " " + outcome).collect(Collectors.joining("; "));
        return rows.size() + (rows.size() == 1 ? " label" : " labels") + (counts.isEmpty() ? "" : ": " + counts);
    }
}
