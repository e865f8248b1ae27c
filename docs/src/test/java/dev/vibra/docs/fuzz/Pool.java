package dev.vibra.docs.fuzz;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Values of the library that calls gave, for later calls. */
final class Pool {
    private static final int MOST_OF_A_TYPE = 8;
    private static final int MOST_OF_A_LIST = 4;

    private final Map<Class<?>, List<Object>> values = new LinkedHashMap<>();
    private final Map<Class<?>, List<Class<?>>> within = new HashMap<>();

    /** Values that can't change, as the start of another pool. */
    Pool immutable() {
        Pool copy = new Pool();
        values.forEach((type, list) -> {
            if (Serializable.class.isAssignableFrom(type)) {
                copy.values.put(type, new ArrayList<>(list));
            }
        });
        return copy;
    }

    int types() {
        return values.size();
    }

    /** Keeps what comes from the library, also out of optionals, lists and maps. */
    void absorb(Object value, Dice dice) {
        if (value instanceof Optional<?> one) {
            one.ifPresent(content -> absorb(content, dice));
        } else if (value instanceof Map<?, ?> map) {
            absorb(map.values(), dice);
        } else if (value instanceof Collection<?> all) {
            all.stream().limit(MOST_OF_A_LIST).forEach(one -> absorb(one, dice));
        } else if (value != null && value.getClass().getName().startsWith("dev.vibra.")) {
            List<Object> list = values.computeIfAbsent(value.getClass(), type -> {
                within.clear();
                return new ArrayList<>();
            });
            if (list.size() < MOST_OF_A_TYPE) {
                list.add(value);
            } else {
                list.set(dice.below(MOST_OF_A_TYPE), value);
            }
        }
    }

    /** A value of the type or of one beneath it. */
    Optional<Object> pick(Class<?> type, Dice dice) {
        List<Class<?>> types = within.computeIfAbsent(type, wanted -> values.keySet().stream()
                .filter(wanted::isAssignableFrom)
                .<Class<?>>map(one -> one).toList());
        return types.isEmpty() ? Optional.empty() : Optional.of(dice.pick(values.get(dice.pick(types))));
    }
}
