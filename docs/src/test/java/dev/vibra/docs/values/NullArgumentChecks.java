package dev.vibra.docs.values;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * A null argument of a public method or constructor is answered by its name, not by the place where it broke something:
 * each reference parameter in turn is null, the others are drawn from samples and from what methods give. A class that
 * extends this one lists packages and samples.
 */
abstract class NullArgumentChecks {
    private static final int TRIES = 100;
    private static final int KEPT = 6;
    private static final double[] NUMBERS = {1, 24.7, 0.1, 50, 0.01, 100, -3, 0.5};
    private static final int[] COUNTS = {1, 2, 4, 64, 8, 3};
    private static final int[] LENGTHS = {256, 1, 2, 10, 64};

    private final Random random = new Random(11);
    private final Map<Class<?>, List<Object>> pool = new HashMap<>();

    /** Modules whose classes are asked, such as "vibra-core". */
    abstract Set<String> modules();

    /** Values to draw arguments from. */
    abstract List<?> samples();

    /** Classes that are left out, by simple name. */
    Set<String> leftOut() {
        return Set.of();
    }

    @Test
    void nullArgumentsAreNamed() {
        List<Executable> all = executables();
        samples().forEach(this::keep);
        for (int round = 0; round < 3; round++) {
            all.forEach(executable -> draw(executable, -1).ifPresent(call -> outcome(executable, call)));
        }
        Set<String> faults = new TreeSet<>();
        int asked = 0;
        for (Executable executable : all) {
            for (int i = 0; i < executable.getParameterCount(); i++) {
                if (!executable.getParameterTypes()[i].isPrimitive()) {
                    String answer = answerToNull(executable, i);
                    asked += answer.equals("named") ? 1 : 0;
                    if (!answer.equals("named") && !answer.isEmpty()) {
                        faults.add(name(executable) + ", parameter " + (i + 1) + ": " + answer);
                    }
                }
            }
        }
        assertTrue(asked > 100, "asked: " + asked);
        assertEquals("", String.join("\n", faults));
    }

    /** Empty if no valid arguments beside the null were found, so that something else was refused first. */
    private String answerToNull(Executable executable, int parameter) {
        for (int t = 0; t < TRIES; t++) {
            Optional<Object[]> call = draw(executable, parameter);
            Throwable thrown = call.isEmpty() ? new IllegalArgumentException() : outcome(executable, call.get());
            if (thrown == null) {
                return "accepted";
            }
            if (thrown instanceof NullPointerException) {
                String message = String.valueOf(thrown.getMessage());
                return message.matches("[a-z]\\w*") && !message.equals("null") ? "named" : message;
            }
        }
        return "";
    }

    private List<Executable> executables() {
        return new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(place -> modules().stream().anyMatch(m -> place.contains("/" + m + "/")
                        || place.contains("/" + m + "-")))
                .importPackages("dev.vibra").stream()
                .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC) && !type.isEnum()
                        && !type.getPackageName().endsWith(".internal") && !type.getPackageName().endsWith(".io")
                        && !leftOut().contains(type.getSimpleName()))
                .map(type -> type.reflect())
                .flatMap(type -> Stream.concat(Arrays.stream(type.getDeclaredMethods()),
                        Modifier.isAbstract(type.getModifiers()) ? Stream.empty()
                                : Arrays.stream(type.getConstructors())))
                .filter(e -> Modifier.isPublic(e.getModifiers()) && !e.isSynthetic() && !e.getName().equals("equals"))
                .map(Executable.class::cast).sorted(Comparator.comparing(Executable::toString)).toList();
    }

    /** Target and arguments; empty if none is known of some type. */
    private Optional<Object[]> draw(Executable executable, int nullAt) {
        Type[] types = executable.getGenericParameterTypes();
        Object[] call = new Object[types.length + 1];
        boolean bound = executable instanceof Method && !Modifier.isStatic(executable.getModifiers());
        call[types.length] = bound ? value(executable.getDeclaringClass()) : "none";
        for (int i = 0; i < types.length; i++) {
            call[i] = i == nullAt ? null : value(types[i]);
            if (i != nullAt && call[i] == null) {
                return Optional.empty();
            }
        }
        return Optional.ofNullable(call[types.length]).map(target -> call);
    }

    /** What was thrown; null if there was an answer, which is kept as an argument of other calls. */
    private Throwable outcome(Executable executable, Object[] call) {
        Object[] arguments = Arrays.copyOf(call, call.length - 1);
        try {
            keep(executable instanceof Method method ? method.invoke(call[arguments.length], arguments)
                    : ((Constructor<?>) executable).newInstance(arguments));
            return null;
        } catch (InvocationTargetException e) {
            return e.getCause();
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(name(executable), e);
        }
    }

    private void keep(Object value) {
        Object kept = value instanceof Optional<?> optional ? optional.orElse(null) : value;
        if (kept != null && kept.getClass().getName().startsWith("dev.vibra.")) {
            List<Object> known = pool.computeIfAbsent(kept.getClass(), type -> new ArrayList<>());
            if (known.size() < KEPT) {
                known.add(kept);
            }
        }
    }

    private Object value(Type type) {
        if (type instanceof ParameterizedType list) {
            Class<?> raw = (Class<?>) list.getRawType();
            Object element = Collection.class.isAssignableFrom(raw) ? value(list.getActualTypeArguments()[0]) : null;
            return element == null || !raw.isAssignableFrom(List.class) ? null : List.of(element);
        }
        return type instanceof WildcardType wild ? value(wild.getUpperBounds()[0])
                : type instanceof Class<?> plain ? value(plain) : null;
    }

    private Object value(Class<?> type) {
        if (type == double.class || type == Double.class) {
            return NUMBERS[random.nextInt(NUMBERS.length)];
        }
        if (type == int.class || type == Integer.class) {
            return COUNTS[random.nextInt(COUNTS.length)];
        }
        if (type == double[].class) {
            boolean positive = random.nextBoolean();
            return DoubleStream.generate(() -> positive ? 0.1 + random.nextDouble() : random.nextGaussian())
                    .limit(LENGTHS[random.nextInt(LENGTHS.length)]).toArray();
        }
        if (type.isArray()) {
            Object element = value(type.getComponentType());
            Object array = element == null ? null : Array.newInstance(type.getComponentType(), 1);
            if (array != null) {
                Array.set(array, 0, element);
            }
            return array;
        }
        return type == long.class ? (Object) 5L : type == boolean.class ? (Object) random.nextBoolean()
                : type == String.class ? "word" : type == DoubleStream.class ? DoubleStream.of(1, 2)
                : type.isEnum() ? type.getEnumConstants()[random.nextInt(type.getEnumConstants().length)] : known(type);
    }

    private Object known(Class<?> type) {
        List<Object> fitting = pool.entrySet().stream().filter(entry -> type.isAssignableFrom(entry.getKey()))
                .sorted(Comparator.comparing(entry -> entry.getKey().getName()))
                .flatMap(entry -> entry.getValue().stream()).toList();
        return type == Object.class || fitting.isEmpty() ? null : fitting.get(random.nextInt(fitting.size()));
    }

    private static String name(Executable executable) {
        return executable.getDeclaringClass().getSimpleName() + "."
                + executable.getName().substring(executable.getName().lastIndexOf('.') + 1) + "("
                + String.join(", ", Arrays.stream(executable.getParameterTypes()).map(Class::getSimpleName).toList())
                + ")";
    }
}
