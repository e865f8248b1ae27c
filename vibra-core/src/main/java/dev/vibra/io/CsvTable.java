package dev.vibra.io;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;

/** Time and values of a text file, all in memory: the sample rate stands in the last line. */
final class CsvTable implements Frames {
    private final ByteReader in;
    private final CsvRows rows;
    private final double[][] columns;
    private final TimeAxis axis;
    private int[] lines = new int[1 << 10];
    private int length;
    private int next;

    CsvTable(ByteReader in) throws IOException {
        this.in = in;
        rows = new CsvRows(in, false);
        if (!rows.next()) {
            throw in.problem("file holds no numbers");
        }
        columns = new double[rows.columns()][lines.length];
        do {
            add();
        } while (rows.next());
        double[] time = columns[0];
        axis = TimeAxis.of(time[0], time[length - 1], length, in);
        for (int i = 0; i < length; i++) {
            TimedRows.check(axis, i, time[i], lines[i], in);
        }
    }

    private void add() {
        if (length == lines.length) {
            int more = (int) Math.min(2L * length, FrameCollector.MOST_SAMPLES);
            if (more == length) {
                throw FrameCollector.tooMany(in, length + 1L);
            }
            lines = Arrays.copyOf(lines, more);
            for (int c = 0; c < columns.length; c++) {
                columns[c] = Arrays.copyOf(columns[c], more);
            }
        }
        for (int c = 0; c < columns.length; c++) {
            columns[c][length] = rows.value(c);
        }
        lines[length++] = (int) rows.line();
    }

    @Override
    public int channels() {
        return columns.length - 1;
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
        return OptionalLong.of(length);
    }

    @Override
    public long assuredLength() {
        return length;
    }

    @Override
    public int read(RecordedChannel[] wanted, double[][] out, int offset, int count) {
        int all = Math.min(count, length - next);
        for (int c = 0; c < wanted.length; c++) {
            int column = wanted[c].number();
            for (int i = 0; i < all; i++) {
                out[c][offset + i] = rows.si(wanted[c], columns[column][next + i], lines[next + i], column);
            }
        }
        next += all;
        return all;
    }

    @Override
    public long skip(long count) {
        int skipped = (int) Math.min(count, length - next);
        next += skipped;
        return skipped;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
