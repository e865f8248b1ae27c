package dev.vibra.docs.fuzz;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/** Random calls of all that is public, some with hostile arguments; what comes out serves as an argument again. */
final class ApiTarget implements Target {
    /** Calls of one input. */
    static final int CALLS = 100;
    private static final int WARMING = Integer.getInteger("fuzz.warming", 60);
    private static final long WARMING_SEED = 20_260_304;

    private final Api api = new Api();
    private final Path folder;
    private final Set<String> called = new TreeSet<>();
    private final Set<String> answered = new TreeSet<>();
    private Pool common = new Pool();
    private int warmed;

    ApiTarget(Path folder) {
        this.folder = folder;
    }

    /** Values to start from, made by calls without hostile arguments. */
    private Pool common() {
        for (; warmed < WARMING; warmed++) {
            Pool pool = common.immutable();
            try {
                new Episode(this, WARMING_SEED + warmed, Integer.MAX_VALUE).attempt(pool, outcome -> { });
            } catch (AssertionError e) {
                // The same calls are looked at in the inputs.
            }
            common = pool.immutable();
        }
        return common;
    }

    @Override
    public String name() {
        return "api";
    }

    @Override
    public Cost limit() {
        return new Cost(Long.MAX_VALUE, 0, 1e9); // each call has its own
    }

    @Override
    public Input input(Dice dice) {
        return new Episode(this, dice.bits(), dice.oneIn(3) ? 50 : 5);
    }

    /** What was called, and how much of it ever answered. */
    String coverage() {
        return api.types().size() + " public types, " + api.calls().size() + " constructors and methods, "
                + called.size()
                + " called, " + answered.size() + " answered, " + common.types()
                        + " types in the pool; never answered: "
                + api.calls().stream().map(Api::name).filter(name -> !answered.contains(name)).toList();
    }

    /** Calls what is public; exceptions of the called come out unwrapped. */
    static Object invoke(Executable call, Object on, Object[] arguments) throws ReflectiveOperationException {
        try {
            return call instanceof Constructor<?> constructor ? constructor.newInstance(arguments)
                    : ((Method) call).invoke(on, arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            } else if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e;
        }
    }

    /**
     * Calls in a row, each of what the ones before gave; nothing of them is kept.
     *
     * @param seed seed of all choices
     * @param hostileOneIn one in so many arguments is hostile
     */
    private record Episode(ApiTarget target, long seed, int hostileOneIn) implements Input {
        @Override
        public String shown() {
            return CALLS + " calls";
        }

        @Override
        public long size() {
            return CALLS;
        }

        @Override
        public void attempt(Consumer<String> outcomes) {
            attempt(target.common().immutable(), outcomes);
        }

        /** Puts what the calls give into the pool. */
        void attempt(Pool pool, Consumer<String> outcomes) {
            Dice dice = new Dice(seed);
            Arguments arguments = new Arguments(target.api, pool, dice, hostileOneIn, target.folder);
            List<AssertionError> findings = new ArrayList<>();
            for (int i = 0; i < CALLS; i++) {
                Executable call = dice.pick(target.api.calls());
                try {
                    outcomes.accept(target.one(call, arguments, pool, dice));
                } catch (AssertionError e) {
                    outcomes.accept("against what is promised");
                    findings.add(e);
                }
            }
            if (!findings.isEmpty()) {
                findings.stream().skip(1).forEach(findings.get(0)::addSuppressed);
                throw findings.get(0);
            }
        }
    }

    private String one(Executable call, Arguments arguments, Pool pool, Dice dice) {
        Object on = arguments.receiver(call);
        boolean bound = call instanceof Method && !Modifier.isStatic(call.getModifiers());
        if (bound && (on == null || Proxy.isProxyClass(on.getClass()))) {
            return "no receiver";
        }
        called.add(Api.name(call));
        ApiCall made = new ApiCall(call, on, arguments.of(call, 0));
        Object result = made.run();
        if (!made.holdsStrangeText()) {
            pool.absorb(result, dice);
        }
        if (made.answered()) {
            answered.add(Api.name(call));
        }
        return made.outcome();
    }
}
