package dev.vibra.transform;

import dev.vibra.internal.Require;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;

/**
 * Plans that were made, kept for whoever asks for the same again; of too many, the one that was asked for longest ago
 * goes. Making the tables of a long transform takes as long as using them a few times.
 *
 * <pre>{@code
 * PlanCache plans = PlanCache.ofSize(16);                  // one per thread, as plans are
 * for (Waveform wave : waves) {
 *     wave.velocity(Band.of(10, 1000), plans).rms();       // its tables are made once
 * }
 * }</pre>
 *
 * <p>Belongs to its maker: the library keeps none of its own. Not thread-safe. Holds the memory of its plans: about 3
 * MB for a transform of 100,000 samples.
 */
public final class PlanCache {
    /** In the order in which they were asked for. */
    private final Map<Key, Object> plans = new LinkedHashMap<>(16, 0.75f, true);
    private final int size;

    private PlanCache(int size) {
        this.size = Require.count("size", size, 1, 1 << 20);
    }

    /**
     * Makes an empty cache.
     *
     * @param size most plans kept, 1 to 2²⁰
     * @return the cache
     * @throws IllegalArgumentException if the size is out of range
     */
    public static PlanCache ofSize(int size) {
        return new PlanCache(size);
    }

    /**
     * Returns the plan of a kind with given settings, made if it isn't there.
     *
     * @param <P> kind of plan
     * @param kind class of the plan
     * @param settings what it is made of, equal for plans that may stand for each other: a record of its arguments
     * @param make makes the plan; not called if there is one
     * @return the plan, which whoever asks for the same is given as well
     */
    public <P> P get(Class<P> kind, Object settings, Supplier<? extends P> make) {
        Objects.requireNonNull(make, "make");
        Key key = new Key(Objects.requireNonNull(kind, "kind"), Objects.requireNonNull(settings, "settings"));
        Object plan = plans.get(key);
        if (plan == null) {
            plan = Objects.requireNonNull(make.get(), "plan made");
            plans.put(key, plan);
            if (plans.size() > size) {
                plans.remove(plans.keySet().iterator().next());
            }
        }
        return kind.cast(plan);
    }

    /** What a plan is found by. */
    private record Key(Class<?> kind, Object settings) {
        /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
        @Override
        public boolean equals(Object other) {
            return other instanceof Key that && kind == that.kind && settings.equals(that.settings);
        }

        @Override
        public int hashCode() {
            return Objects.hash(kind, settings);
        }
    }

    /** Returns how many plans are kept, as in {@code 3 of 16 plans}. */
    @Override
    public String toString() {
        return plans.size() + " of " + size + " plans";
    }
}
