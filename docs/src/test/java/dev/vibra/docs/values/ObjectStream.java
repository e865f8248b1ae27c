package dev.vibra.docs.values;

import static java.io.ObjectStreamConstants.SC_EXTERNALIZABLE;
import static java.io.ObjectStreamConstants.SC_WRITE_METHOD;
import static java.io.ObjectStreamConstants.TC_ARRAY;
import static java.io.ObjectStreamConstants.TC_BLOCKDATA;
import static java.io.ObjectStreamConstants.TC_BLOCKDATALONG;
import static java.io.ObjectStreamConstants.TC_CLASS;
import static java.io.ObjectStreamConstants.TC_CLASSDESC;
import static java.io.ObjectStreamConstants.TC_ENDBLOCKDATA;
import static java.io.ObjectStreamConstants.TC_ENUM;
import static java.io.ObjectStreamConstants.TC_NULL;
import static java.io.ObjectStreamConstants.TC_OBJECT;
import static java.io.ObjectStreamConstants.TC_REFERENCE;
import static java.io.ObjectStreamConstants.TC_STRING;
import static java.io.ObjectStreamConstants.baseWireHandle;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The bytes of one serialised value, taken apart by the grammar of the Java Object Serialization Specification, 6.4.2:
 * where each number stands, and which handles lead to arrays and collections.
 */
final class ObjectStream {
    /** A number in the stream: its place, its kind (D, F, I or J) and the field that holds it. */
    record Spot(int offset, char kind, String owner, String field) {
        String name() {
            return owner.substring(owner.lastIndexOf('.') + 1) + "." + field;
        }
    }

    private record Field(char kind, String name) {}

    private record ClassDescription(String name, int flags, List<Field> fields, ClassDescription parent) {}

    final byte[] bytes;
    final List<Spot> spots = new ArrayList<>();
    final List<Integer> changeable = new ArrayList<>();
    final Set<String> classes = new TreeSet<>();
    private final List<Object> handles = new ArrayList<>();
    private final ByteBuffer in;

    private ObjectStream(byte[] bytes) {
        this.bytes = bytes;
        in = ByteBuffer.wrap(bytes);
        in.getInt();
        while (in.hasRemaining()) {
            content("", "");
        }
    }

    static ObjectStream of(Object value) {
        return new ObjectStream(write(value));
    }

    static byte[] write(Object value) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ObjectOutputStream objects = new ObjectOutputStream(out)) {
            objects.writeObject(value);
        } catch (IOException e) {
            throw new IllegalStateException(value.getClass() + " can't be written", e);
        }
        return out.toByteArray();
    }

    static Object read(byte[] bytes) throws IOException, ClassNotFoundException {
        try (ObjectInputStream objects = new ObjectInputStream(new ByteArrayInputStream(bytes))) {
            return objects.readObject();
        }
    }

    /** The stream with another number at one spot; `number` is cut to the kind of the spot. */
    byte[] with(Spot spot, double number) {
        ByteBuffer patched = ByteBuffer.wrap(bytes.clone());
        switch (spot.kind) {
            case 'D' -> patched.putDouble(spot.offset, number);
            case 'F' -> patched.putFloat(spot.offset, (float) number);
            case 'I' -> patched.putInt(spot.offset, (int) number);
            default -> patched.putLong(spot.offset, (long) number);
        }
        return patched.array();
    }

    /** The value and, beside it, what a back reference appended to the stream gets hold of. */
    Object[] readWithBackReference(int handle) throws IOException, ClassNotFoundException {
        byte[] longer = ByteBuffer.allocate(bytes.length + 5).put(bytes).put(TC_REFERENCE).putInt(handle).array();
        try (ObjectInputStream objects = new ObjectInputStream(new ByteArrayInputStream(longer))) {
            return new Object[] {objects.readObject(), objects.readObject()};
        }
    }

    private Object content(String owner, String field) {
        byte mark = in.get();
        switch (mark) {
            case TC_NULL:
                return null;
            case TC_REFERENCE:
                return handles.get(in.getInt() - baseWireHandle);
            case TC_STRING:
                return handled(text());
            case TC_CLASSDESC:
                return description();
            case TC_CLASS:
                return handled(content(owner, field));
            case TC_ENUM:
                content(owner, field);
                handled("enum");
                return content(owner, field);
            case TC_ARRAY:
                return array(owner, field);
            case TC_OBJECT:
                return object();
            case TC_BLOCKDATA:
                in.position(in.position() + 1 + (in.get(in.position()) & 0xff));
                return "data";
            case TC_BLOCKDATALONG:
                in.position(in.position() + 4 + in.getInt(in.position()));
                return "data";
            default:
                throw new IllegalStateException("mark " + mark + " at byte " + (in.position() - 1));
        }
    }

    private Object handled(Object value) {
        handles.add(value);
        return value;
    }

    private String text() {
        byte[] letters = new byte[in.getShort() & 0xffff];
        in.get(letters);
        return new String(letters, StandardCharsets.UTF_8);
    }

    private ClassDescription description() {
        String name = text();
        in.getLong();
        int place = handles.size();
        handled(null);
        int flags = in.get();
        List<Field> fields = new ArrayList<>();
        for (int left = in.getShort(); left > 0; left--) {
            char kind = (char) in.get();
            fields.add(new Field(kind, text()));
            if (kind == 'L' || kind == '[') {
                content("", "");
            }
        }
        annotation();
        var result = new ClassDescription(name, flags, fields, (ClassDescription) content("", ""));
        handles.set(place, result);
        classes.add(name);
        return result;
    }

    private void annotation() {
        while (in.get(in.position()) != TC_ENDBLOCKDATA) {
            content("", "");
        }
        in.get();
    }

    private Object object() {
        var type = (ClassDescription) content("", "");
        if (type.name.startsWith("java.util.") && !type.name.equals("java.util.CollSer")) {
            changeable.add(baseWireHandle + handles.size());
        }
        handled(type.name);
        Deque<ClassDescription> line = new ArrayDeque<>();
        for (ClassDescription c = type; c != null; c = c.parent) {
            line.push(c);
        }
        for (ClassDescription c : line) {
            if ((c.flags & SC_EXTERNALIZABLE) == 0) {
                c.fields.forEach(f -> value(f.kind, c.name, f.name));
            }
            if ((c.flags & (SC_WRITE_METHOD | SC_EXTERNALIZABLE)) != 0) {
                annotation();
            }
        }
        return type.name;
    }

    private Object array(String owner, String field) {
        var type = (ClassDescription) content("", "");
        changeable.add(baseWireHandle + handles.size());
        handled(type.name);
        char kind = type.name.charAt(1);
        for (int left = in.getInt(); left > 0; left--) {
            value(kind, owner, field + "[]");
        }
        return type.name;
    }

    private void value(char kind, String owner, String field) {
        switch (kind) {
            case 'B', 'Z' -> in.get();
            case 'C', 'S' -> in.getShort();
            case 'D', 'F', 'I', 'J' -> {
                spots.add(new Spot(in.position(), kind, owner, field));
                in.position(in.position() + (kind == 'D' || kind == 'J' ? Double.BYTES : Integer.BYTES));
            }
            default -> content(owner, field);
        }
    }
}
