package dev.vibra.docs.survey.chart;

/**
 * Path data of SVG in whole half pixels, each point told by its distance from the one before: a trace of a thousand
 * points takes some four kilobytes. Points of a straight stroke along an axis melt into one.
 *
 * @see "W3C, Scalable Vector Graphics (SVG) 2, 9.3, path data"
 */
final class SvgPath {
    /** Units to a pixel. */
    static final int FINENESS = 2;

    private final StringBuilder text = new StringBuilder();
    private char last;
    private int x;
    private int y;
    private int waitingX;
    private int waitingY;

    private SvgPath() {}

    static String of(Lines lines, boolean closed) {
        SvgPath path = new SvgPath();
        for (int i = 0; i < lines.size(); i++) {
            int toX = units(lines.x(i));
            int toY = units(lines.y(i));
            if (lines.begins(i)) {
                path.flush();
                path.end(closed && i > 0);
                path.move(toX, toY);
            } else {
                path.line(toX, toY);
            }
        }
        path.flush();
        path.end(closed && lines.size() > 0);
        return path.text.toString();
    }

    private static int units(double pixels) {
        return (int) Math.round(pixels * FINENESS);
    }

    /** Absolute, since a closed outline ends where it began. */
    private void move(int toX, int toY) {
        text.append('M').append(toX);
        number(toY, true);
        x = toX;
        y = toY;
        last = 'M';
    }

    private void end(boolean closed) {
        if (closed) {
            text.append('z');
            last = 'z';
        }
    }

    /** What goes on in the same direction along an axis waits, to be drawn as one. */
    private void line(int toX, int toY) {
        int stepX = toX - x - waitingX;
        int stepY = toY - y - waitingY;
        boolean along = waitingY == 0 && stepY == 0 && (long) waitingX * stepX >= 0
                || waitingX == 0 && stepX == 0 && (long) waitingY * stepY >= 0;
        if (!along) {
            flush();
        }
        waitingX += stepX;
        waitingY += stepY;
    }

    private void flush() {
        if (waitingX == 0 && waitingY == 0) {
            return;
        }
        char letter = waitingY == 0 ? 'h' : waitingX == 0 ? 'v' : 'l';
        boolean same = letter == last;
        if (!same) {
            text.append(letter);
            last = letter;
        }
        if (letter != 'v') {
            number(waitingX, same);
        }
        if (letter != 'h') {
            number(waitingY, same || letter == 'l');
        }
        x += waitingX;
        y += waitingY;
        waitingX = 0;
        waitingY = 0;
    }

    /** A minus parts two numbers as a blank does. */
    private void number(int value, boolean parted) {
        if (parted && value >= 0) {
            text.append(' ');
        }
        text.append(value);
    }
}
