package dev.vibra.alarm;

import dev.vibra.internal.Require;
import dev.vibra.internal.StateFormat;
import dev.vibra.quantity.Level;
import dev.vibra.state.Recipe;
import dev.vibra.state.Resumable;
import java.util.Objects;

/**
 * Watches one stream of readings by an {@link AlarmRule}, so that a flickering level doesn't chatter.
 *
 * <p>Not thread-safe: one per thread and stream. Updating allocates nothing. This judges readings; whether and
 * how a machine is stopped is for its protection system, under the local codes.
 */
public final class AlarmEvaluator implements Resumable<AlarmEvaluator> {
    private static final StateFormat FORMAT = new StateFormat("alarm", 1);

    private final AlarmRule rule;
    private final Watch alarm;
    private final Watch trip;

    AlarmEvaluator(AlarmRule rule) {
        this.rule = rule;
        alarm = new Watch(rule, rule.alarm().si());
        trip = new Watch(rule, rule.trip().map(Level::si).orElse(Double.POSITIVE_INFINITY));
    }

    /** One limit with its two counts. */
    private static final class Watch {
        private final AlarmRule rule;
        private final double limit;
        private final double clear;
        private int above;
        private int below;
        private boolean raised;

        Watch(AlarmRule rule, double limit) {
            this.rule = rule;
            this.limit = limit;
            this.clear = limit * (1 - rule.hysteresis());
        }

        void update(double reading) {
            above = reading > limit ? Math.min(above + 1, rule.readingsToRaise()) : 0;
            below = reading > clear ? 0 : Math.min(below + 1, rule.readingsToClear());
            if (above == rule.readingsToRaise()) {
                raised = true;
            } else if (below == rule.readingsToClear()) {
                raised = false;
            }
        }

        void reset() {
            above = 0;
            below = 0;
            raised = false;
        }

        int put(double[] out, int at) {
            out[at] = above;
            out[at + 1] = below;
            out[at + 2] = raised ? 1 : 0;
            return at + 3;
        }

        int take(double[] in, int at) {
            above = (int) StateFormat.count(in, at, rule.readingsToRaise());
            below = (int) StateFormat.count(in, at + 1, rule.readingsToClear());
            raised = StateFormat.flag(in, at + 2);
            return at + 3;
        }
    }

    /**
     * Takes the next reading.
     *
     * @param reading level of the quantity, detector and band of the rule's limits
     * @return the state after it
     * @throws IllegalArgumentException if the reading is of another kind; the state then stays
     */
    public AlarmState update(Level reading) {
        if (!Objects.requireNonNull(reading, "reading").isLike(rule.alarm())) {
            throw new IllegalArgumentException("reading must be of the quantity, detector and band of the alarm, "
                    + rule.alarm() + ": " + reading);
        }
        return updateSi(reading.si());
    }

    /**
     * Takes the next reading as a plain number, for loops that must not allocate a level.
     *
     * @param reading reading in the SI unit of the rule's quantity (m/s for velocity), finite, zero or more
     * @return the state after it
     * @throws IllegalArgumentException if the reading is not a number or out of range; the state then stays
     */
    public AlarmState updateSi(double reading) {
        Require.notNegative("reading", reading, "(SI)");
        alarm.update(reading);
        trip.update(reading);
        return state();
    }

    /** {@return the state after the last reading; normal before the first} */
    public AlarmState state() {
        return trip.raised ? AlarmState.TRIP : alarm.raised ? AlarmState.ALARM : AlarmState.NORMAL;
    }

    /** {@return the rule} */
    public AlarmRule rule() {
        return rule;
    }

    /** Forgets all readings. */
    public void reset() {
        alarm.reset();
        trip.reset();
    }

    @Override
    public Recipe<AlarmEvaluator> recipe() {
        return new Made(rule);
    }

    /** What makes such an evaluator. */
    private record Made(AlarmRule rule) implements Recipe<AlarmEvaluator> {
        private Made {
            Objects.requireNonNull(rule, "rule");
        }

        @Override
        public AlarmEvaluator make() {
            return rule.newEvaluator();
        }

        @Override
        public String toString() {
            return rule.toString();
        }
    }

    /** Another limit is another watch: counts towards the one mean nothing for the other. */
    private int code() {
        return StateFormat.settings(alarm.limit, rule.trip().isPresent() ? trip.limit : 0, rule.hysteresis(),
                rule.readingsToRaise(), rule.readingsToClear());
    }

    @Override
    public int stateLength() {
        return StateFormat.HEADER + 6;
    }

    @Override
    public int snapshotTo(double[] out, int offset) {
        return trip.put(out, alarm.put(out, FORMAT.write(out, offset, stateLength(), code())));
    }

    @Override
    public int resumeFrom(double[] in, int offset) {
        try {
            return trip.take(in, alarm.take(in, FORMAT.check(in, offset, stateLength(), code())));
        } catch (IllegalArgumentException e) {
            reset();
            throw e;
        }
    }

    /** Returns state and rule in one line. */
    @Override
    public String toString() {
        return state() + " by " + rule;
    }
}
