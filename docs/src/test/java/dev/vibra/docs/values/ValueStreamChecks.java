package dev.vibra.docs.values;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import dev.vibra.docs.values.ObjectStream.Spot;
import java.io.IOException;
import java.io.InvalidObjectException;
import java.io.Serializable;
import java.lang.reflect.Array;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What holds for each serialisable value, whatever stands in the stream that it is read from: a number that the factory
 * refuses is refused again, and nothing outside the value holds its arrays. A class that extends this one lists modules and
 * samples of their types.
 */
abstract class ValueStreamChecks {
    private static final String ANSWERS = "is accepted";
    private static final String REFUSED = "is refused";
    private static final double[] NOT_FINITE = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    private static final double[] FINITE = {-1, -0.0, Double.MIN_VALUE, Double.MAX_VALUE};
    private static final double[] COUNTS = {-1, Integer.MIN_VALUE};
    private static final double[] LARGE_COUNTS = {0, Integer.MAX_VALUE};
    private static final int SPOTS_OF_A_FIELD = 5;

    /** Modules whose types are to be covered, such as "vibra-core". */
    abstract Set<String> modules();

    /** At least one instance of each serialisable type; two where a field may be absent. */
    abstract List<Serializable> samples();

    /** Fields ("Type.field", arrays "Type.field[]") in which a number that isn't finite means something. */
    Set<String> mayBeNotFinite() {
        return Set.of();
    }

    /** Whole-number fields ("Type.field") that may be negative. */
    Set<String> mayBeNegative() {
        return Set.of();
    }

    @Test
    void eachSerialisableTypeHasASample() {
        Set<String> roots = samples().stream().map(s -> s.getClass().getName()).collect(Collectors.toSet());
        Set<String> seen = new TreeSet<>();
        samples().forEach(sample -> seen.addAll(ObjectStream.of(sample).classes));
        Set<String> missing = new TreeSet<>();
        int types = 0;
        for (JavaClass type : serialisable()) {
            types++;
            boolean open = type.getModifiers().contains(JavaModifier.PUBLIC);
            if (!(open ? roots : seen).contains(type.getName())) {
                missing.add(type.getName());
            }
        }
        assertTrue(types > 20, "types: " + types);
        assertEquals(Set.of(), missing);
    }

    @TestFactory
    Stream<DynamicTest> numbersInTheStreamAreChecked() {
        return samples().stream().map(s -> dynamicTest(s.getClass().getSimpleName(), () -> {
            List<String> faults = new ArrayList<>();
            ObjectStream stream = ObjectStream.of(s);
            for (Spot spot : fewOfEachField(stream.spots)) {
                faults.addAll(faultsAt(stream, spot));
            }
            assertEquals("", String.join("\n", faults));
        }));
    }

    @TestFactory
    Stream<DynamicTest> nothingOutsideHoldsWhatAValueHolds() {
        return samples().stream().map(s -> dynamicTest(s.getClass().getSimpleName(), () -> {
            ObjectStream stream = ObjectStream.of(s);
            for (int handle : stream.changeable) {
                Object[] got = stream.readWithBackReference(handle);
                byte[] before = ObjectStream.write(got[0]);
                if (spoilt(got[1])) {
                    assertArrayEquals(before, ObjectStream.write(got[0]), "changed from outside by "
                            + got[1].getClass().getSimpleName());
                }
            }
        }));
    }

    @TestFactory
    Stream<DynamicTest> aValueComesBackAsItWas() {
        return samples().stream().map(s -> dynamicTest(s.getClass().getSimpleName(), () -> {
            byte[] bytes = ObjectStream.write(s);
            Object back = ObjectStream.read(bytes);
            assertEquals(s.toString(), back.toString());
            assertArrayEquals(bytes, ObjectStream.write(back));
        }));
    }

    private List<JavaClass> serialisable() {
        return new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(place -> modules().stream().anyMatch(m -> place.contains("/" + m + "/")
                        || place.contains("/" + m + "-")))
                .importPackages("dev.vibra").stream()
                .filter(type -> type.isAssignableTo(Serializable.class) && !type.isInterface() && !type.isEnum()
                        && !type.isAssignableTo(Throwable.class) && !type.isAssignableTo(Enum.class)
                        && !type.getModifiers().contains(JavaModifier.ABSTRACT))
                .toList();
    }

    private List<String> faultsAt(ObjectStream stream, Spot spot) {
        List<String> faults = new ArrayList<>();
        boolean whole = spot.kind() == 'I' || spot.kind() == 'J';
        if (whole && spot.owner().startsWith("dev.vibra.")) {
            tryEach(stream, spot, COUNTS, mayBeNegative().contains(spot.name()), faults);
            tryEach(stream, spot, LARGE_COUNTS, true, faults);
        } else if (!whole) {
            tryEach(stream, spot, NOT_FINITE, mayBeNotFinite().contains(spot.name()), faults);
            tryEach(stream, spot, FINITE, true, faults);
        }
        return faults;
    }

    private static void tryEach(ObjectStream stream, Spot spot, double[] numbers, boolean allowed,
            List<String> faults) {
        for (double number : numbers) {
            String outcome = outcome(stream.with(spot, number), stream.bytes);
            if (!outcome.equals(REFUSED) && !(allowed && outcome.equals(ANSWERS))) {
                faults.add(spot.name() + " = " + number + " " + outcome);
            }
        }
    }

    /** A number that is computed anew, whatever stands in the stream, is as good as refused. */
    private static String outcome(byte[] bytes, byte[] unharmed) {
        try {
            Object value = ObjectStream.read(bytes);
            return Arrays.equals(unharmed, ObjectStream.write(value)) ? REFUSED : asked(value);
        } catch (InvalidObjectException | IllegalArgumentException e) {
            return e.getMessage() == null || e.getMessage().isBlank() ? "is refused without a word" : REFUSED;
        } catch (IOException | ClassNotFoundException | RuntimeException | OutOfMemoryError e) {
            return "gives " + e;
        }
    }

    /** Calls all that takes no argument: an answer, or an exception that says what is wrong. */
    private static String asked(Object value) {
        for (Method method : value.getClass().getMethods()) {
            boolean ours = method.getDeclaringClass().getName().startsWith("dev.vibra.");
            if (ours && method.getParameterCount() == 0 && !Modifier.isStatic(method.getModifiers())
                    && Modifier.isPublic(method.getDeclaringClass().getModifiers())) {
                try {
                    method.invoke(value);
                } catch (InvocationTargetException e) {
                    Throwable cause = e.getCause();
                    if (!(cause instanceof IllegalArgumentException || cause instanceof IllegalStateException)) {
                        return "is accepted, then " + method.getName() + "() gives " + cause;
                    }
                } catch (IllegalAccessException e) {
                    return "can't be asked: " + e;
                }
            }
        }
        return ANSWERS;
    }

    /** Of arrays the first few elements; of lists in lists likewise. */
    private static List<Spot> fewOfEachField(List<Spot> spots) {
        Map<String, Integer> seen = new HashMap<>();
        return spots.stream().filter(s -> seen.merge(s.owner() + s.field(), 1, Integer::sum) <= SPOTS_OF_A_FIELD)
                .toList();
    }

    private static boolean spoilt(Object inside) {
        if (inside instanceof Collection<?> collection) {
            return unlessRefused(collection::clear);
        }
        if (inside instanceof Map<?, ?> map) {
            return unlessRefused(map::clear);
        }
        if (inside.getClass().isArray() && Array.getLength(inside) > 0) {
            Object other = Array.newInstance(inside.getClass().getComponentType(), 1);
            Array.set(inside, 0, Array.get(other, 0));
            return true;
        }
        return false;
    }

    private static boolean unlessRefused(Runnable change) {
        try {
            change.run();
            return true;
        } catch (UnsupportedOperationException e) {
            return false;
        }
    }
}
