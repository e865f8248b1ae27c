package dev.vibra.docs.fuzz;

import com.sun.management.ThreadMXBean;
import dev.vibra.io.RecordingFileException;
import dev.vibra.spectrum.PeakList;
import java.lang.management.ManagementFactory;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** One call: an answer, or an exception that is told and names what was wrong; anything else is an AssertionError. */
final class ApiCall {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final double LONGEST_SECONDS = 5;
    private static final int LONGEST_MESSAGE = 600;
    private static final int LONGEST_TEXT = 1500;
    /** Squares of larger ones are no numbers. */
    private static final double LARGEST_SAMPLE = 1e150;
    private static final Pattern IDENTITY = Pattern.compile("[A-Za-z$]@[0-9a-f]{5,8}\\b");
    private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity|null)\\b");
    /** Of an argument or of what lies in it: the words of the virtual machine have none where nobody checked. */
    private static final Pattern NAME = Pattern.compile("^[a-z][A-Za-z0-9]*\\b");
    /** What the documentation says may be infinite. */
    private static final Set<String> MAY_BE_INFINITE = Set.of("Contribution.degreesOfFreedom()",
            "CorrectionSolver.conditionNumber()", "CorrectionSolver.planeConflict()",
            "PlaneFitting.allGrams()",
            "PlaneFitting.eachGrams()", "UncertaintyBudget.effectiveDegreesOfFreedom()");
    /** They take as much memory as they are asked for, and say so. */
    private static final Set<String> MAY_RUN_OUT = Set.of("WaveformBuilder.reserve(int)");
    private static final Set<Class<?>> TOLD = Set.of(IllegalArgumentException.class, IllegalStateException.class,
            IndexOutOfBoundsException.class, UnsupportedOperationException.class, RecordingFileException.class);

    private final Executable call;
    private final Object on;
    private final Object[] given;
    private final String before;
    private String outcome = "";

    ApiCall(Executable call, Object on, Object[] given) {
        this.call = call;
        this.on = on;
        this.given = given;
        this.before = shown(); // arrays may be written to
    }

    String outcome() {
        return outcome;
    }

    boolean answered() {
        return outcome.equals("answer");
    }

    /** Calls and returns the answer, or null after an exception that is told. */
    Object run() {
        long start = System.nanoTime();
        Object result = null;
        try {
            result = ApiTarget.invoke(call, on, given);
            outcome = "answer";
        } catch (Throwable e) {
            judge(e);
            outcome = e.getClass().getSimpleName();
        }
        if ((System.nanoTime() - start) / 1e9 > LONGEST_SECONDS) {
            requireQuick();
        }
        if (answered()) {
            check(result);
        }
        return result;
    }

    /** By the clock it took long; others may have used the machine, so that the time of the processor decides. */
    private void requireQuick() {
        long start = THREADS.getCurrentThreadCpuTime();
        try {
            ApiTarget.invoke(call, on, given);
        } catch (Throwable e) {
            // Judged already.
        }
        double seconds = (THREADS.getCurrentThreadCpuTime() - start) / 1e9;
        if (seconds > LONGEST_SECONDS) {
            throw broken("takes long", seconds + " s", null);
        }
    }

    /** Values keep the texts that they are given, and what prints them elsewhere shows them as escapes. */
    boolean holdsStrangeText() {
        return holdsStrangeText(given);
    }

    static boolean holdsStrangeText(Object[] given) {
        return holds(given, value -> value instanceof String text && Shown.firstUnprintable(text) >= 0);
    }

    private void judge(Throwable e) {
        if (e instanceof NullPointerException) {
            judgeNull(e);
        } else if (e instanceof OutOfMemoryError && MAY_RUN_OUT.contains(Api.name(call))) {
            return;
        } else if (!TOLD.contains(e.getClass())) {
            throw broken("throws " + e.getClass().getSimpleName(), String.valueOf(e.getMessage()), e);
        } else if (!holdsStrangeText()) { // which may come back to the caller that gave it
            try {
                Shown.require("the message", e.getMessage(), LONGEST_MESSAGE);
            } catch (AssertionError wrong) {
                throw broken("throws " + e.getClass().getSimpleName() + ", " + wrong.getMessage().split(":", 2)[0],
                        wrong.getMessage(), e);
            }
        }
    }

    private void judgeNull(Throwable e) {
        String message = String.valueOf(e.getMessage());
        if (!holds(given, Objects::isNull)) {
            throw broken("throws NullPointerException without a null", message, e);
        }
        boolean named = !message.startsWith("Cannot ") && NAME.matcher(message).find();
        if (!named) {
            throw broken("throws NullPointerException that names no argument", message, e);
        }
    }

    private static boolean holds(Object value, Predicate<Object> sought) {
        if (value instanceof Object[] array) {
            return Arrays.stream(array).anyMatch(one -> holds(one, sought));
        } else if (value instanceof Map<?, ?> map) {
            return holds(map.keySet(), sought) || holds(map.values(), sought);
        }
        return value instanceof Collection<?> all ? all.stream().anyMatch(one -> holds(one, sought))
                : sought.test(value);
    }

    private void check(Object result) {
        if (call instanceof Method method && method.getReturnType() != void.class && result == null) {
            throw broken("answers null", "", null);
        }
        if (result instanceof Double number) {
            checkNumber(number);
        } else if (result instanceof OptionalDouble number) {
            number.ifPresent(this::checkNumber);
        } else if (result instanceof double[] array) {
            Arrays.stream(array).limit(5000).forEach(this::checkNumber);
        } else if (result instanceof Optional<?> one) {
            one.ifPresent(this::checkText);
        } else if (result != null) {
            checkText(result);
        }
    }

    private void checkNumber(double number) {
        boolean told = number == Double.POSITIVE_INFINITY && MAY_BE_INFINITE.contains(Api.name(call));
        if (!Double.isFinite(number) && !told && hasOnlyNumbers()) {
            throw broken("answers with no number", String.valueOf(number), null);
        }
    }

    /** What goes in are samples that anything can be worked out of. */
    private boolean hasOnlyNumbers() {
        return Arrays.stream(given).allMatch(one -> !(one instanceof double[] array) || Arrays.stream(array)
                .allMatch(value -> Math.abs(value) <= LARGEST_SAMPLE));
    }

    private void checkText(Object result) {
        String name = result.getClass().getName();
        if (!name.startsWith("dev.vibra.") || name.contains("$$Lambda")) {
            return;
        }
        String text;
        try {
            text = result.toString();
        } catch (RuntimeException e) {
            throw broken("answers what can't be printed", String.valueOf(e.getMessage()), e);
        }
        boolean table = result instanceof PeakList;
        if (text == null || text.isBlank() || text.contains("\n") && !table && !holdsStrangeText()
                || IDENTITY.matcher(text).find() || text.length() > LONGEST_TEXT && !table) {
            throw broken("answers what isn't one line", String.valueOf(text), null);
        }
        if (NO_NUMBER.matcher(text).find()) {
            throw broken("answers what holds no number", text, null);
        }
    }

    private AssertionError broken(String how, String detail, Throwable cause) {
        return new AssertionError(Api.name(call) + " " + how + ": " + Shown.escaped(detail, 300) + "; called "
                + before, cause);
    }

    private String shown() {
        StringBuilder out = new StringBuilder(on == null ? "" : "on " + one(on) + " ").append("with (");
        for (Object one : given) {
            out.append(out.charAt(out.length() - 1) == '(' ? "" : ", ").append(one(one));
        }
        return out.append(')').toString();
    }

    private static String one(Object value) {
        try {
            String text = value instanceof double[] array ? array.length + " doubles "
                    + Arrays.toString(Arrays.copyOf(array,
                    Math.min(5, array.length))) : value instanceof String ? "\"" + value + "\"" : String.valueOf(value);
            return Shown.escaped(text, 160);
        } catch (RuntimeException e) {
            return "(can't be printed)";
        }
    }
}
