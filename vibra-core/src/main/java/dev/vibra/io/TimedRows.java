package dev.vibra.io;

import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/**
 * Time and values of a text file, line by line, after a first walk through the file that found where its times begin
 * and end.
 */
final class TimedRows implements Frames {
    private final ByteReader in;
    private final CsvRows rows;
    private final TimeAxis axis;
    private long next;

    /** The row that was looked at for the number of columns hasn't been taken yet. */
    private boolean isAhead;

    TimedRows(ByteReader in, TimeAxis axis) throws IOException {
        this.in = in;
        this.axis = axis;
        rows = new CsvRows(in, false);
        isAhead = rows.next();
    }

    /** Walks through a file once. */
    static TimeAxis axisOf(ByteReader in) throws IOException {
        CsvRows rows = new CsvRows(in, false);
        if (!rows.next()) {
            throw in.problem("file holds no numbers");
        }
        double first = rows.value(0);
        double last;
        long count = 0;
        do {
            last = rows.value(0);
            count++;
        } while (rows.next());
        return TimeAxis.of(first, last, count, in);
    }

    static void check(TimeAxis axis, long number, double seconds, long line, ByteReader in) {
        if (!axis.holds(number, seconds)) {
            throw in.problem("line " + line + ": time must rise evenly, here to about " + axis.placeOf(number) + " s: "
                    + seconds);
        }
    }

    @Override
    public int channels() {
        return rows.columns() - 1;
    }

    @Override
    public List<String> names() {
        return rows.names();
    }

    @Override
    public double sampleRateHertz() {
        return axis.sampleRateHertz();
    }

    @Override
    public double startSeconds() {
        return axis.startSeconds();
    }

    @Override
    public OptionalLong length() {
        return OptionalLong.of(axis.steps() + 1);
    }

    @Override
    public long assuredLength() {
        return axis.steps() + 1;
    }

    private boolean advance() throws IOException {
        if (next > axis.steps()) {
            return false;
        }
        if (!isAhead && !rows.next()) {
            throw in.problem("file was cut while it was read");
        }
        isAhead = false;
        check(axis, next, rows.value(0), rows.line(), in);
        next++;
        return true;
    }

    @Override
    public int read(RecordedChannel[] wanted, double[][] out, int offset, int count) throws IOException {
        int done = 0;
        for (; done < count && advance(); done++) {
            for (int c = 0; c < wanted.length; c++) {
                int column = wanted[c].number();
                out[c][offset + done] = rows.si(wanted[c], rows.value(column), rows.line(), column);
            }
        }
        return done;
    }

    @Override
    public long skip(long count) throws IOException {
        long done = 0;
        while (done < count && advance()) {
            done++;
        }
        return done;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
