package dev.vibra.docs.survey.chart;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;
import java.util.Locale;

/** Writes the data of a figure as JSON that can't end the script element in which it stands. */
final class PlotJson {
    private static final MathContext DIGITS = new MathContext(12);
    private static final int LARGEST_16 = Short.MAX_VALUE;
    /** Outlines of spectra: equal steps of the logarithm, 0.04 % each, down to this power of ten below the largest. */
    private static final int DECADES = 12;
    private static final int STEPS = 65534;
    /** Values at a time: a multiple of three, so that the parts of base64 fit together without padding. */
    private static final int PART = 3 * 1024;

    private final Appendable out;

    PlotJson(Appendable out) {
        this.out = out;
    }

    /** A part of the object that writes itself. */
    private interface Part {
        void write() throws IOException;
    }

    void write(PlotData.Curve curve, PlotData.Shown shown) throws IOException {
        out.append("{\"kind\":").append(curve.spectrum() ? "\"spectrum\"" : "\"waveform\"");
        field("x", () -> title(curve.x()));
        field("y", () -> title(curve.y()));
        field("first", () -> number(curve.first()));
        field("step", () -> number(curve.step()));
        field("group", () -> number(curve.group()));
        field("shown", () -> list(List.of(shown.low(), shown.high()), this::number));
        if (shown.speed() > 0) {
            field("speed", () -> number(shown.speed()));
        }
        if (shown.reference() > 0) {
            field("reference", () -> reference(shown));
        }
        field("lines", () -> list(shown.lines(), this::line));
        field("lanes", () -> list(shown.lanes(), this::lane));
        field("scale", () -> number(curve.largest() / (curve.spectrum() ? 1 : LARGEST_16)));
        String coding = !curve.spectrum() ? "int16" : curve.group() > 1 ? "log16" : "float32";
        field(coding, () -> values(curve.shares().of, coding));
        out.append('}');
    }

    private void field(String name, Part value) throws IOException {
        out.append(",\"").append(name).append("\":");
        value.write();
    }

    private void title(AxisTitle title) throws IOException {
        out.append("{\"title\":");
        text(title.toString());
        field("quantity", () -> text(title.quantity()));
        field("unit", () -> text(title.unit().equals("1") ? "" : title.unit()));
        out.append('}');
    }

    private void reference(PlotData.Shown shown) throws IOException {
        out.append("{\"level\":");
        number(shown.reference());
        field("name", () -> text(shown.referenceName()));
        out.append('}');
    }

    private void line(SnapLine line) throws IOException {
        out.append("{\"x\":");
        number(line.hertz());
        field("y", () -> number(line.level()));
        field("name", () -> text(line.name()));
        out.append('}');
    }

    private void lane(Lane lane) throws IOException {
        out.append("{\"label\":");
        text(lane.label());
        field("marks", () -> list(lane.marks(), this::mark));
        out.append('}');
    }

    private void mark(Lane.Mark mark) throws IOException {
        out.append("{\"x\":");
        number(mark.hertz());
        field("text", () -> text(mark.text()));
        field("found", () -> out.append(Boolean.toString(mark.found())));
        out.append('}');
    }

    /** Takes what writes one item of a list. */
    private interface Writer<T> {
        void write(T item) throws IOException;
    }

    private <T> void list(List<T> items, Writer<T> writer) throws IOException {
        out.append('[');
        String between = "";
        for (T item : items) {
            out.append(between);
            writer.write(item);
            between = ",";
        }
        out.append(']');
    }

    /** The same digits on every JDK, which {@code Double.toString} has not. */
    private void number(double value) throws IOException {
        BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
        boolean whole = rounded.scale() < 0 && rounded.scale() > -DIGITS.getPrecision();
        out.append(whole ? rounded.toPlainString() : rounded.toString());
    }

    private void values(float[] shares, String coding) throws IOException {
        out.append('"');
        for (int begin = 0; begin < shares.length; begin += PART) {
            int end = Math.min(shares.length, begin + PART);
            ByteBuffer bytes = ByteBuffer.allocate((end - begin) * (coding.equals("float32") ? 4 : 2))
                    .order(ByteOrder.LITTLE_ENDIAN);
            for (int i = begin; i < end; i++) {
                switch (coding) {
                    case "float32" -> bytes.putFloat(shares[i]);
                    case "int16" -> bytes.putShort((short) Math.round((double) shares[i] * LARGEST_16));
                    default -> bytes.putShort((short) logarithmic(shares[i]));
                }
            }
            out.append(Base64.getEncoder().encodeToString(bytes.array()));
        }
        out.append('"');
    }

    /** 0 for nothing, else 1 for the least share and one more for each step above it. */
    private static int logarithmic(float share) {
        double steps = STEPS + StrictMath.log10(share) * STEPS / DECADES;
        return steps >= 0 ? 1 + (int) Math.round(steps) : 0;
    }

    /** Escapes what JSON, a script element, and old readers of scripts take for something else. */
    private void text(String text) throws IOException {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean harmless = c >= ' ' && c != '"' && c != '\\' && c != '<' && c != '>' && c != '&' && c != '\u007f'
                    && !Character.isSurrogate(c) && c != '\u2028' && c != '\u2029';
            if (harmless) {
                out.append(c);
            } else {
                out.append("\\u").append(hex(c));
            }
        }
        out.append('"');
    }

    private static String hex(char c) {
        return String.format(Locale.ROOT, "%04x", (int) c);
    }
}
