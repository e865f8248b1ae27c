package dev.vibra.docs.survey.input;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** Builds a value by its {@code with} methods out of what was given. */
final class Chain<T> {
    private T value;

    Chain(T begin) {
        value = begin;
    }

    <V> Chain<T> with(Optional<V> given, BiFunction<T, V, T> add) {
        given.ifPresent(one -> value = add.apply(value, one));
        return this;
    }

    <V> Chain<T> with(List<V> given, BiFunction<T, V, T> add) {
        given.forEach(one -> value = add.apply(value, one));
        return this;
    }

    T value() {
        return value;
    }
}
