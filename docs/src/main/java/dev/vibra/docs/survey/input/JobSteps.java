package dev.vibra.docs.survey.input;

import dev.vibra.balance.BalancingJob;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;

/** What a balancing job is to be told, in order: noted while fields are read, told when none of them was wrong. */
final class JobSteps {
    private final List<UnaryOperator<BalancingJob>> steps = new ArrayList<>();

    void add(UnaryOperator<BalancingJob> step) {
        steps.add(step);
    }

    <V> void add(Optional<V> given, BiFunction<BalancingJob, V, BalancingJob> step) {
        given.ifPresent(value -> steps.add(job -> step.apply(job, value)));
    }

    BalancingJob onto(BalancingJob start) {
        BalancingJob job = start;
        for (UnaryOperator<BalancingJob> step : steps) {
            job = step.apply(job);
        }
        return job;
    }
}
