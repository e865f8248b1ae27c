package dev.vibra.docs.fuzz;

import dev.vibra.balance.Balancing;
import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.signal.Waveform;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** All that the library offers: public types, and what can be called on them. */
final class Api {
    /** One class of each module; its place is where the others are. */
    private static final List<Class<?>> OF_MODULES =
            List.of(Waveform.class, BearingDiagnosis.class, Balancing.class, Survey.class);

    private final List<Class<?>> types = new ArrayList<>();
    private final List<Executable> calls = new ArrayList<>();
    private final Map<Class<?>, List<Executable>> products = new HashMap<>();
    private final Map<Class<?>, List<Executable>> makers = new HashMap<>();

    /** Finds them on the class path. */
    Api() {
        OF_MODULES.forEach(one -> names(one).filter(name -> !name.startsWith("dev.vibra.internal.")).sorted()
                .map(Api::load).filter(Api::isPublic).forEach(types::add));
        for (Class<?> type : types) {
            Stream.of(type.isInterface() || Modifier.isAbstract(type.getModifiers()) ? new Constructor<?>[0]
                    : type.getConstructors()).forEach(calls::add);
            Stream.of(type.getMethods()).filter(method -> method.getDeclaringClass() == type && !method.isSynthetic())
                    .forEach(calls::add);
        }
        calls.removeIf(call -> call.getDeclaringClass().isEnum()
                && call.getName().equals("valueOf")); // the JDK's own words
        calls.sort(Comparator.comparing(Executable::toGenericString)); // reflection promises no order
        calls.forEach(call -> products.computeIfAbsent(product(call), type -> new ArrayList<>()).add(call));
    }

    List<Class<?>> types() {
        return types;
    }

    List<Executable> calls() {
        return calls;
    }

    boolean isOwn(Class<?> type) {
        return type.getName().startsWith("dev.vibra.");
    }

    /** What gives a value of a type, or of one beneath it. */
    List<Executable> makers(Class<?> type) {
        return makers.computeIfAbsent(type, wanted -> products.entrySet().stream()
                .filter(entry -> wanted.isAssignableFrom(entry.getKey()) && isOwn(entry.getKey()))
                .flatMap(entry -> entry.getValue().stream()).sorted(Comparator.comparing(Executable::toGenericString))
                        .toList());
    }

    /** As in {@code Waveform.of(Unit, double, double[])}. */
    static String name(Executable call) {
        String types = String.join(", ", Arrays.stream(call.getParameterTypes()).map(Class::getSimpleName).toList());
        String type = call.getDeclaringClass().getName().replaceAll(".*\\.", "").replace('$', '.');
        return call instanceof Constructor ? "new " + type + "(" + types + ")" : type + "." + call.getName() + "("
                + types + ")";
    }

    /** What comes out: of an optional or a list what is inside. */
    private static Class<?> product(Executable call) {
        Type type = call instanceof Method method ? method.getGenericReturnType() : call.getDeclaringClass();
        while (type instanceof ParameterizedType of && !((Class<?>) of.getRawType()).getName()
                .startsWith("dev.vibra")) {
            type = of.getActualTypeArguments()[of.getActualTypeArguments().length - 1];
        }
        return raw(type);
    }

    /** The class of a type; of a variable Object. */
    static Class<?> raw(Type type) {
        if (type instanceof Class<?> one) {
            return one;
        } else if (type instanceof ParameterizedType of) {
            return (Class<?>) of.getRawType();
        } else if (type instanceof WildcardType wild) {
            return raw(wild.getUpperBounds()[0]);
        }
        return type instanceof GenericArrayType array ? raw(array.getGenericComponentType()).arrayType() : Object.class;
    }

    private static boolean isPublic(Class<?> type) {
        for (Class<?> one = type; one != null; one = one.getEnclosingClass()) {
            if (!Modifier.isPublic(one.getModifiers()) || one.isAnonymousClass()) {
                return false;
            }
        }
        return true;
    }

    private static Class<?> load(String name) {
        try {
            return Class.forName(name);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Stream<String> names(Class<?> one) {
        try {
            URI place = one.getProtectionDomain().getCodeSource().getLocation().toURI();
            if (Files.isDirectory(Path.of(place))) {
                return names(Path.of(place)).stream();
            }
            try (FileSystem jar = FileSystems.newFileSystem(Path.of(place))) {
                return names(jar.getPath("/")).stream();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<String> names(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.map(file -> root.relativize(file).toString()).filter(name -> name.endsWith(".class")
                    && name.startsWith("dev") && !name.endsWith("-info.class"))
                    .map(name -> name.substring(0, name.length() - 6).replaceAll("[/\\\\]", ".")).toList();
        }
    }
}
