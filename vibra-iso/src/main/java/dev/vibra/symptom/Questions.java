package dev.vibra.symptom;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;

/** The kinds of questions by name, as the table of faults asks them. */
public final class Questions {
    private static final Map<String, Function<Figures, Question>> KINDS = kinds();

    private Questions() {}

    private static Map<String, Function<Figures, Question>> kinds() {
        Map<String, Function<Figures, Question>> kinds = new TreeMap<>();
        kinds.put("high", OrderQuestions.High::of);
        kinds.put("leads", OrderQuestions.Leads::of);
        kinds.put("ratio", OrderQuestions.Ratio::of);
        kinds.put("row", OrderQuestions.Row::of);
        kinds.put("halves", OrderQuestions.Halves::of);
        kinds.put("rose", OrderQuestions.Rose::of);
        kinds.put("axial", HousingQuestions.Axial::of);
        kinds.put("directional", HousingQuestions.Directional::of);
        kinds.put("local", HousingQuestions.Local::of);
        kinds.put("both-sides", HousingQuestions.BothSides::of);
        kinds.put("phase-directions", PhaseQuestions.Directions::of);
        kinds.put("phase-ends", PhaseQuestions.Ends::of);
        kinds.put("phase-coupling", PhaseQuestions.Across::of);
        kinds.put("natural", WaveQuestions.Natural::of);
        kinds.put("flattened", WaveQuestions.Flattened::of);
        kinds.put("wanders", WaveQuestions.Wanders::of);
        kinds.put("rate-high", RateQuestions.High::of);
        kinds.put("rate-leads", RateQuestions.Leads::of);
        kinds.put("rate-rose", RateQuestions.Rose::of);
        kinds.put("rate-multiples", RateQuestions.Multiples::of);
        kinds.put("rate-family", RateQuestions.Family::of);
        kinds.put("sidebands", SidebandQuestions.OfRate::of);
        kinds.put("sidebands-line", SidebandQuestions.OfOrder::of);
        kinds.put("sidebands-rose", SidebandQuestions.Rose::of);
        kinds.put("knocks", Knocks::of);
        kinds.put("element", BearingQuestions.Element::of);
        kinds.put("carried", figures -> new BearingQuestions.Carried());
        kinds.put("stranger-high", figures -> new StrangerQuestions.High());
        kinds.put("stranger-leads", figures -> new StrangerQuestions.Leads());
        kinds.put("stranger-rose", figures -> new StrangerQuestions.Rose());
        kinds.put("test", Observed::of);
        return kinds;
    }

    /**
     * Makes a question of its text.
     *
     * @param code code of the symptom
     * @param asks kind of question and its figures, as in {@code ratio 2 1 0.5}; {@code test} for what a crew finds out
     * @return the question
     * @throws IllegalArgumentException if there is no such kind or a figure is missing or out of range
     */
    public static Question parse(String code, String asks) {
        Objects.requireNonNull(code, "code");
        List<String> words = Arrays.asList(Objects.requireNonNull(asks, "asks").strip().split("\\s+"));
        Function<Figures, Question> kind = KINDS.get(words.get(0));
        if (kind == null) {
            throw new IllegalArgumentException(code + ": kind of question must be one of "
                    + String.join(", ", KINDS.keySet()) + ": " + words.get(0));
        }
        Figures figures = new Figures(code, words.get(0), words.subList(1, words.size()));
        Question question = kind.apply(figures);
        figures.end();
        return question;
    }
}
