package dev.vibra.survey;

import dev.vibra.balance.Corrections;
import dev.vibra.balance.GradeProbability;
import dev.vibra.balance.Verification;
import dev.vibra.balance.tolerance.GradeReached;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a balancing job asks for next. */
final class BalancingAdvice {
    private BalancingAdvice() {}

    static List<String> of(BalancingSurvey balancing) {
        List<String> advice = new ArrayList<>();
        doubts(balancing).ifPresent(advice::add);
        if (balancing.verification().isPresent()) {
            Verification proof = balancing.verification().get();
            proof.gradeReached().filter(reached -> !reached.held()).map(BalancingAdvice::notReached)
                    .ifPresent(advice::add);
            proof.gradeProbability().flatMap(BalancingAdvice::unsettled).ifPresent(advice::add);
        } else {
            balancing.corrections().flatMap(Corrections::presentGrade).filter(GradeReached::held)
                    .ifPresent(grade -> advice.add("The rotor holds " + grade.tolerance().grade()
                            + " before any correction: look for another cause of the vibration before metal goes on."));
            balancing.corrections().filter(job -> job.presentGrade().filter(GradeReached::held).isEmpty())
                    .ifPresent(job -> advice.add("Only then fit the masses that the balancing job names, and prove them by"
                            + " a final run."));
        }
        return advice;
    }

    private static Optional<String> doubts(BalancingSurvey balancing) {
        boolean doubted = balancing.corrections().filter(c -> !c.remarks().isEmpty()).isPresent()
                || balancing.verification().filter(v -> !v.remarks().isEmpty()).isPresent();
        return doubted ? Optional.of("Clear the doubts of the balancing job before metal goes on the rotor.")
                : Optional.empty();
    }

    private static String notReached(GradeReached reached) {
        return "Balance grade " + reached.tolerance().grade() + " was not reached: the job names the masses that would"
                + " come next.";
    }

    private static Optional<String> unsettled(GradeProbability probability) {
        if (probability.moreReadings().isEmpty()) {
            return Optional.of("Whether the balance grade was reached can't be settled by more readings of this"
                    + " state: it lies too near the limit, or the coefficients are too uncertain.");
        }
        int more = probability.moreReadings().getAsInt();
        return more == 0 ? Optional.empty() : Optional.of("Read the final state " + more
                + " more time(s) to settle whether the balance grade was reached.");
    }
}
