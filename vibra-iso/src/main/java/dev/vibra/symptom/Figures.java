package dev.vibra.symptom;

import java.util.List;
import java.util.stream.Collectors;

/** Figures of a question as they stand in the table, taken one after the other. */
final class Figures {
    private static final String WHOLE = "[0-9]{1,4}";
    private static final String NUMBER = "[0-9]{1,6}(\\.[0-9]{1,6})?";

    private final String code;
    private final String kind;
    private final List<String> texts;
    private int next;

    Figures(String code, String kind, List<String> texts) {
        this.code = code;
        this.kind = kind;
        this.texts = texts;
    }

    String code() {
        return code;
    }

    int whole(String name, int lowest, int highest) {
        String text = take(name);
        int value = text.matches(WHOLE) ? Integer.parseInt(text) : -1;
        if (value < lowest || value > highest) {
            throw failure(name, "a whole number from " + lowest + " to " + highest, text);
        }
        return value;
    }

    double number(String name, double lowest, double highest) {
        String text = take(name);
        double value = text.matches(NUMBER) ? Double.parseDouble(text) : -1;
        if (!(value >= lowest && value <= highest)) {
            throw failure(name, "a number from " + lowest + " to " + highest, text);
        }
        return value;
    }

    /** The number, or what holds where the table gives none. */
    double numberOr(String name, double lowest, double highest, double other) {
        return next < texts.size() ? number(name, lowest, highest) : other;
    }

    /** One of some things, by its words. */
    <T> T choice(String name, List<T> allowed) {
        String text = take(name);
        return allowed.stream().filter(one -> one.toString().equals(text)).findFirst().orElseThrow(() -> failure(name,
                allowed.stream().map(Object::toString).collect(Collectors.joining(", ", "one of ", "")), text));
    }

    void end() {
        if (next < texts.size()) {
            throw new IllegalArgumentException(code + ": \"" + kind + "\" takes no more figures: " + texts.get(next));
        }
    }

    private String take(String name) {
        return next < texts.size() ? texts.get(next++) : "";
    }

    private IllegalArgumentException failure(String name, String rule, String text) {
        return new IllegalArgumentException(code + ": " + name + " of \"" + kind + "\" must be " + rule + ": "
                + (text.isEmpty() ? "it is missing" : text));
    }
}
