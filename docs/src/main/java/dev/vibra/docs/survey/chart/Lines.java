package dev.vibra.docs.survey.chart;

import java.util.Arrays;

/** Strokes of a drawing or outlines of surfaces, in CSS pixels from the upper left corner; grows as it is drawn. */
final class Lines {
    private double[] x = new double[16];
    private double[] y = new double[16];
    private boolean[] begins = new boolean[16];
    private int size;

    /** Lifts the pen and puts it down elsewhere. */
    Lines move(double toX, double toY) {
        return add(toX, toY, true);
    }

    /** Draws on to a point; the first of all begins there. */
    Lines line(double toX, double toY) {
        return add(toX, toY, size == 0);
    }

    private Lines add(double toX, double toY, boolean begin) {
        if (size == x.length) {
            x = Arrays.copyOf(x, 2 * size);
            y = Arrays.copyOf(y, 2 * size);
            begins = Arrays.copyOf(begins, 2 * size);
        }
        x[size] = toX;
        y[size] = toY;
        begins[size++] = begin;
        return this;
    }

    /** One straight stroke. */
    Lines stroke(double fromX, double fromY, double toX, double toY) {
        return move(fromX, fromY).line(toX, toY);
    }

    /** Outline of a box. */
    Lines box(double left, double top, double width, double height) {
        return move(left, top).line(left + width, top).line(left + width, top + height).line(left, top + height)
                .line(left, top);
    }

    /**
     * Part of a circle, as short straight strokes; the pen is put down at its begin.
     *
     * @param from angle of the begin in radians, counter-clockwise on the paper from the right
     * @param to angle of the end
     */
    Lines arc(double centreX, double centreY, double radius, double from, double to) {
        int parts = (int) Math.max(6, Math.ceil(Math.abs(to - from) / Math.toRadians(4)));
        for (int i = 0; i <= parts; i++) {
            double turn = from + (to - from) * i / parts;
            add(centreX + radius * Math.cos(turn), centreY - radius * Math.sin(turn), i == 0);
        }
        return this;
    }

    int size() {
        return size;
    }

    double x(int index) {
        return x[index];
    }

    double y(int index) {
        return y[index];
    }

    /** True if the pen is put down here and nothing leads to it. */
    boolean begins(int index) {
        return begins[index];
    }
}
