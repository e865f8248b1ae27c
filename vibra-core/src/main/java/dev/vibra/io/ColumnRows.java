package dev.vibra.io;

import java.io.IOException;
import java.util.List;
import java.util.OptionalLong;

/** One column of values, line by line, sampled at a rate that the file doesn't tell. */
final class ColumnRows implements Frames {
    /** As many rows are looked at before the first one is handed on. */
    private static final int AHEAD = 1000;
    private static final int FEWEST_COUNTED = 3;

    private final ByteReader in;
    private final CsvRows rows;
    private final double sampleRateHertz;
    private final double[] ahead = new double[AHEAD];
    private final long[] linesAhead = new long[AHEAD];
    private final int held;
    private long next;
    private double value;
    private long line;

    ColumnRows(ByteReader in, double sampleRateHertz) throws IOException {
        this.in = in;
        this.sampleRateHertz = sampleRateHertz;
        rows = new CsvRows(in, true);
        held = lookAhead();
        if (held == 0) {
            throw in.problem("file holds no numbers");
        }
    }

    /** "0,512", "1,498", "2,530" are a counter and whole numbers, not one column with a decimal comma. */
    private int lookAhead() throws IOException {
        int count = 0;
        boolean counted = true;
        for (; count < AHEAD && rows.nextText(); count++) {
            ahead[count] = rows.value(0);
            linesAhead[count] = rows.line();
            counted &= rows.isPair() && (count == 0 || (long) ahead[count] == (long) ahead[count - 1] + 1);
        }
        if (counted && count >= FEWEST_COUNTED) {
            throw in.problem("must hold one column; the numbers before the commas count up like those of a second one");
        }
        return count;
    }

    @Override
    public int channels() {
        return 1;
    }

    @Override
    public List<String> names() {
        return List.of();
    }

    @Override
    public double sampleRateHertz() {
        return sampleRateHertz;
    }

    @Override
    public double startSeconds() {
        return 0;
    }

    @Override
    public OptionalLong length() {
        return OptionalLong.empty();
    }

    @Override
    public long assuredLength() {
        return 0;
    }

    private boolean advance() throws IOException {
        if (next < held) {
            value = ahead[(int) next];
            line = linesAhead[(int) next];
        } else if (rows.next()) {
            value = rows.value(0);
            line = rows.line();
        } else {
            return false;
        }
        next++;
        return true;
    }

    @Override
    public int read(RecordedChannel[] wanted, double[][] out, int offset, int count) throws IOException {
        int done = 0;
        for (; done < count && advance(); done++) {
            for (int c = 0; c < wanted.length; c++) {
                out[c][offset + done] = rows.si(wanted[c], value, line, 0);
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
