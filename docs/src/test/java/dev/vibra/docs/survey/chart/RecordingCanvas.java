package dev.vibra.docs.survey.chart;

import java.util.ArrayList;
import java.util.List;

/** Remembers what was drawn, to be asked where it lies. */
final class RecordingCanvas implements Canvas {
    /** A text and the room that it needs at most. */
    record Text(String text, double left, double top, double right, double bottom) {
        boolean meets(Text other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    final List<Text> texts = new ArrayList<>();
    final List<double[]> points = new ArrayList<>();

    static RecordingCanvas of(Figure figure) {
        RecordingCanvas canvas = new RecordingCanvas();
        figure.drawOn(canvas);
        return canvas;
    }

    @Override
    public void stroke(Lines lines, Pen pen) {
        for (int i = 0; i < lines.size(); i++) {
            points.add(new double[] {lines.x(i), lines.y(i)});
        }
    }

    @Override
    public void fill(Lines outlines, int colour) {
        stroke(outlines, Look.THIN);
    }

    @Override
    public void circle(double x, double y, double radius, Pen pen) {
        points.add(new double[] {x - radius, y - radius});
        points.add(new double[] {x + radius, y + radius});
    }

    @Override
    public void disc(double x, double y, double radius, int colour) {
        circle(x, y, radius, Look.THIN);
    }

    @Override
    public void text(String text, double x, double y, Lettering letters) {
        double begin = letters.offset(text);
        double end = begin + letters.width(text);
        double above = 0.8 * letters.size();
        double below = 0.22 * letters.size();
        if (!text.isBlank()) {
            texts.add(letters.upright() ? new Text(text, x - above, y - end, x + below, y - begin)
                    : new Text(text, x + begin, y - above, x + end, y + below));
        }
    }
}
