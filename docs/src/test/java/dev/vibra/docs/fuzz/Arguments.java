package dev.vibra.docs.fuzz;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.lang.reflect.Array;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.Type;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.complex.Complex;

/** Makes arguments of any type: out of the pool, by calls of the library, or of nothing; some of them hostile. */
final class Arguments {
    private static final int DEEPEST = 4;
    private static final double[] REALS = {0.01, 0.1, 0.25, 0.5, 1, 1.5, 2, 3, 5, 10, 25, 30, 50, 100, 200, 1000, 1500,
            2560, 10_000,
        25_600};
    private static final int[] LENGTHS = {0, 1, 2, 3, 4, 7, 16, 64, 100, 1000, 1024, 4096};

    private final Api api;
    private final Pool pool;
    private final Dice dice;
    private final int hostileOneIn;
    private final Path folder;

    Arguments(Api api, Pool pool, Dice dice, int hostileOneIn, Path folder) {
        this.api = api;
        this.pool = pool;
        this.dice = dice;
        this.hostileOneIn = hostileOneIn;
        this.folder = folder;
    }

    Object[] of(Executable call, int depth) {
        Type[] types = call.getGenericParameterTypes();
        if (types.length != call.getParameterCount()) {
            types = call.getParameterTypes();
        }
        Object[] out = new Object[types.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = of(types[i], depth);
        }
        return out;
    }

    /** What an instance method is called on; null if there is nothing. */
    Object receiver(Executable call) {
        return call instanceof Method && !Modifier.isStatic(call.getModifiers()) ? own(call.getDeclaringClass(), 0)
                : null;
    }

    private boolean hostile() {
        return dice.oneIn(hostileOneIn);
    }

    private Object of(Type type, int depth) {
        Class<?> raw = Api.raw(type);
        if (raw.isPrimitive()) {
            return primitive(raw);
        } else if (hostile() && dice.oneIn(4)) {
            return null;
        } else if (raw.isArray()) {
            return array(raw.getComponentType(), depth);
        } else if (raw.isEnum()) {
            return dice.pick(raw.getEnumConstants());
        }
        Object known = ofJdk(raw, type, depth);
        return known != null ? known : own(raw, depth);
    }

    private Object primitive(Class<?> type) {
        if (type == boolean.class) {
            return dice.oneIn(2);
        } else if (type == double.class) {
            return real();
        } else if (type == float.class) {
            return (float) real();
        } else if (type == long.class) {
            return hostile() ? dice.pick(Long.MAX_VALUE, Long.MIN_VALUE, -1L, 0L, 1L << 40) : (long) integer();
        } else if (type == char.class) {
            return (char) dice.below(300);
        }
        int value = integer();
        return type == int.class ? (Object) value : type == short.class ? (Object) (short) value
                : (Object) (byte) value;
    }

    private double real() {
        return hostile() ? Hostile.real(dice) : dice.oneIn(4) ? dice.between(0, 100) : REALS[dice.below(REALS.length)];
    }

    private int integer() {
        return hostile() ? Hostile.integer(dice) : dice.oneIn(4) ? dice.pick(64, 100, 256, 1024, 4096) : dice.below(12);
    }

    private String text() {
        return hostile() ? Hostile.text(dice) : dice.pick("P1", "drive end", "velocity-rms-10-1000Hz", "ISO 20816-3",
                "G6.3", "a");
    }

    private Object array(Class<?> component, int depth) {
        int length = component == double.class || component == float.class || component == int.class
                || component == short.class
                ? LENGTHS[dice.below(LENGTHS.length)] : dice.below(4);
        if (component == double.class) {
            return signal(length);
        }
        Object out = Array.newInstance(component, length);
        for (int i = 0; i < length; i++) {
            Object one = of(component, depth + 1);
            if (one == null && !component.isPrimitive() && !hostile()) {
                return Array.newInstance(component, 0);
            }
            Array.set(out, i, one);
        }
        return out;
    }

    private double[] signal(int length) {
        double[] out = new double[length];
        int kind = dice.below(6);
        double scale = REALS[dice.below(REALS.length)];
        for (int i = 0; i < length; i++) {
            out[i] = kind == 0 ? 0 : kind == 1 ? scale : kind == 2 ? i * scale
                    : scale * (Math.sin(0.3 * i) + 0.2 * dice.real());
        }
        if (length > 0 && hostile()) {
            out[dice.below(length)] = Hostile.real(dice);
        }
        return out;
    }

    private Object ofJdk(Class<?> raw, Type type, int depth) {
        if (raw == String.class || raw == CharSequence.class) {
            return text();
        } else if (raw == Object.class) {
            return dice.oneIn(3) ? text() : pool.pick(Object.class, dice).orElse("a");
        } else if (raw == Double.class || raw == Number.class) {
            return real();
        } else if (raw == Integer.class) {
            return integer();
        } else if (raw == Path.class) {
            return folder.resolve(dice.pick("a.wav", "a.csv", "none.wav", "x.bin", "no/a.csv"));
        } else if (raw == Instant.class) {
            return hostile() ? dice.pick(Instant.MIN, Instant.MAX, Instant.EPOCH) : Instant.ofEpochSecond(1_700_000_000L
                    + 86_400L * dice.below(1000));
        } else if (raw == Duration.class) {
            return Duration.ofMillis(integer());
        } else if (raw == Complex.class) {
            return new Complex(real(), real());
        } else if (raw == DoubleStream.class) {
            return DoubleStream.of(signal(dice.below(20)));
        } else if (raw == InputStream.class || raw == ReadableByteChannel.class || raw == ByteBuffer.class) {
            return bytes(raw);
        }
        return generic(raw, type, depth);
    }

    private Object bytes(Class<?> raw) {
        byte[] wav = WavFiles.sound(dice, 2000);
        return raw == InputStream.class ? new ByteArrayInputStream(wav) : raw == ByteBuffer.class ? ByteBuffer.wrap(wav)
                : Channels.newChannel(new ByteArrayInputStream(wav));
    }

    private Object generic(Class<?> raw, Type type, int depth) {
        Type[] of = type instanceof ParameterizedType given ? given.getActualTypeArguments() : new Type[] {String.class,
            String.class, String.class};
        if (raw == OptionalDouble.class) {
            return dice.oneIn(2) ? OptionalDouble.empty() : OptionalDouble.of(real());
        } else if (raw == OptionalInt.class) {
            return dice.oneIn(2) ? OptionalInt.empty() : OptionalInt.of(integer());
        } else if (raw == OptionalLong.class) {
            return dice.oneIn(2) ? OptionalLong.empty() : OptionalLong.of(integer());
        } else if (raw == Optional.class) {
            return dice.oneIn(2) ? Optional.empty() : Optional.ofNullable(of(of[0], depth + 1));
        } else if (raw == List.class || raw == Collection.class || raw == Iterable.class) {
            return list(of[0], depth);
        } else if (raw == Set.class) {
            return new LinkedHashSet<>(list(of[0], depth));
        } else if (raw == Map.class) {
            Map<Object, Object> map = new LinkedHashMap<>();
            list(of[0], depth).forEach(key -> map.put(key, of(of[1], depth + 1)));
            return map;
        }
        return raw.isInterface() && !api.isOwn(raw) ? callback(raw, of, depth) : null;
    }

    private List<Object> list(Type of, int depth) {
        List<Object> out = new ArrayList<>();
        for (int i = dice.below(4); i > 0; i--) {
            Object one = of(of, depth + 1);
            if (one != null || hostile()) {
                out.add(one);
            }
        }
        return out;
    }

    /** A function that answers with something of the type it should; the last type of a generic one. */
    private Object callback(Class<?> type, Type[] of, int depth) {
        return Proxy.newProxyInstance(Arguments.class.getClassLoader(), new Class<?>[] {type}, (self, method, given) ->
                switch (method.getName()) {
                    case "toString" -> "callback";
                    case "hashCode" -> 1;
                    case "equals" -> self == given[0];
                    default -> method.getReturnType() == void.class ? null
                            : answer(method.getReturnType() == Object.class
                            ? of[of.length - 1] : method.getGenericReturnType(), depth);
                });
    }

    /** A function without an answer fails, in a way that is told. */
    private Object answer(Type type, int depth) {
        Object answer = of(type, depth + 1);
        if (answer == null) {
            throw new IllegalStateException("callback has no answer");
        }
        return answer;
    }

    /** A value of the library, made anew at times and where there is none; null if it can't be made. */
    private Object own(Class<?> type, int depth) {
        for (int i = dice.oneIn(20) ? 1 : 0; depth < DEEPEST && (i > 0 || pool.pick(type, dice).isEmpty())
                && i < 4; i++) {
            List<Executable> makers = api.makers(type);
            if (!makers.isEmpty()) {
                make(dice.pick(makers), depth);
            }
        }
        boolean toImplement = type.isInterface() && api.makers(type).isEmpty() && depth < DEEPEST;
        return pool.pick(type, dice).orElseGet(() -> toImplement ? callback(type, new Type[] {Object.class}, depth)
                : null);
    }

    private void make(Executable maker, int depth) {
        try {
            boolean bound = maker instanceof Method && !Modifier.isStatic(maker.getModifiers());
            Object on = bound ? own(maker.getDeclaringClass(), depth + 1) : null;
            if (on != null || !bound) {
                Object[] given = of(maker, depth + 1);
                Object made = ApiTarget.invoke(maker, on, given);
                pool.absorb(ApiCall.holdsStrangeText(given) ? null : made, dice);
            }
        } catch (ReflectiveOperationException | RuntimeException | OutOfMemoryError e) {
            // Then there is one value less; calls that are looked at say what is wrong with it.
        }
    }
}
