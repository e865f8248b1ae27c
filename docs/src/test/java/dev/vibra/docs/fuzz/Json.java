package dev.vibra.docs.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** JSON that may be wrong: the fields of an object can stand twice, and a value can be any text. */
final class Json {
    private final List<Map.Entry<String, Object>> fields = new ArrayList<>();

    /** Text that is written as it stands, without quotes. */
    record Raw(String text) {}

    /** A value at its place, by its number in an object or in a list. */
    private record Slot(Json object, List<Object> list, int index) {
        Object value() {
            return object == null ? list.get(index) : object.fields.get(index).getValue();
        }

        void put(Object value) {
            if (object == null) {
                list.set(index, value);
            } else {
                object.fields.set(index, Map.entry(object.fields.get(index).getKey(), value));
            }
        }

        void again(String name) {
            if (object == null) {
                list.add(index, copy(list.get(index)));
            } else {
                object.fields.add(Map.entry(name.isEmpty() ? object.fields.get(index).getKey() : name, copy(value())));
            }
        }

        void remove() {
            (object == null ? list : object.fields).remove(index);
        }
    }

    Json with(String name, Object value) {
        fields.add(Map.entry(name, value));
        return this;
    }

    /** With the field in one case of so many. */
    Json maybe(Dice dice, int count, String name, Object value) {
        return dice.oneIn(count) ? with(name, value) : this;
    }

    static List<Object> list(Object... items) {
        return new ArrayList<>(List.of(items));
    }

    /** Breaks one thing somewhere. */
    void mutate(Dice dice) {
        List<Slot> slots = new ArrayList<>();
        collect(this, slots);
        if (slots.isEmpty()) {
            return;
        }
        Slot slot = dice.pick(slots);
        switch (dice.below(14)) {
            case 0, 1, 2, 3 -> slot.put(slot.value() instanceof Number ? new Raw(Hostile.number(dice))
                    : Hostile.text(dice));
            case 4 -> slot.put(new Raw(Hostile.number(dice)));
            case 5 -> slot.put(dice.pick(new Raw("null"), true, "", list(), new Json(), -1, new Raw("")));
            case 6, 7 -> slot.put(copy(dice.pick(slots).value()));
            case 8 -> slot.put(nested(dice, slot.value()));
            case 9, 10 -> slot.remove();
            case 11 -> slot.again("");
            case 12 -> slot.again(dice.oneIn(2) ? Hostile.text(dice) : "pionts");
            default -> slot.put(Hostile.token(dice, 2000));
        }
    }

    private static void collect(Object value, List<Slot> slots) {
        if (value instanceof Json object) {
            for (int i = 0; i < object.fields.size(); i++) {
                slots.add(new Slot(object, null, i));
                collect(object.fields.get(i).getValue(), slots);
            }
        } else if (value instanceof List<?> items) {
            @SuppressWarnings("unchecked")
            List<Object> list = (List<Object>) items;
            for (int i = 0; i < list.size(); i++) {
                slots.add(new Slot(null, list, i));
                collect(list.get(i), slots);
            }
        }
    }

    private static Object copy(Object value) {
        if (value instanceof Json object) {
            Json copy = new Json();
            object.fields.forEach(field -> copy.with(field.getKey(), copy(field.getValue())));
            return copy;
        }
        return value instanceof List<?> items ? new ArrayList<>(items.stream().map(Json::copy).toList()) : value;
    }

    /** As text, so that this class needs no stack for it. */
    private static Raw nested(Dice dice, Object value) {
        boolean lists = dice.oneIn(2);
        int depth = 1 + dice.size(3000);
        StringBuilder out = new StringBuilder((lists ? "[" : "{\"a\":").repeat(depth));
        write(value, out);
        return new Raw(out.append((lists ? "]" : "}").repeat(depth)).toString());
    }

    @Override
    public String toString() {
        StringBuilder out = new StringBuilder();
        write(this, out);
        return out.toString();
    }

    private static void write(Object value, StringBuilder out) {
        if (value instanceof Json object) {
            out.append('{');
            for (int i = 0; i < object.fields.size(); i++) {
                out.append(i == 0 ? "\n" : ",\n");
                write(object.fields.get(i).getKey(), out);
                out.append(": ");
                write(object.fields.get(i).getValue(), out);
            }
            out.append('}');
        } else if (value instanceof List<?> items) {
            out.append('[');
            for (int i = 0; i < items.size(); i++) {
                out.append(i == 0 ? "" : ", ");
                write(items.get(i), out);
            }
            out.append(']');
        } else if (value instanceof String text) {
            quote(text, out);
        } else {
            out.append(value instanceof Raw raw ? raw.text : value);
        }
    }

    private static void quote(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c < ' ' || Character.isSurrogate(c)) {
                out.append(String.format("\\u%04x", (int) c));
            } else {
                out.append(c);
            }
        }
        out.append('"');
    }
}
