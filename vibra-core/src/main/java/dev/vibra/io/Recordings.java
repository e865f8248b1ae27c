package dev.vibra.io;

import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Reads and writes recordings; the kind of file is told by its name, {@code .wav} or {@code .csv} (also {@code .txt}),
 * and where it ends otherwise by what it holds.
 *
 * <p>WAV: whole numbers of 16, 24 or 32 bits and floating point of 32 or 64 bits, plain or extensible header, also
 * RF64. Whole numbers count as fractions of full scale, -1 to 1: {@link #sampleFormat} tells which they are, and the
 * volts of a converter are its full scale in volts times them.
 *
 * <p>CSV: one column of values, or time in seconds and a column of values for each channel, in UTF-8 or another
 * encoding of single bytes. A field may have up to 1000 characters, a row up to 1000 numbers.
 * <ul>
 * <li>Lines that begin with {@code #} and lines of blanks are skipped; a first line without any number is a header,
 * which names the channels if it has as many fields as there are columns.
 * <li>The separator of columns is the first of semicolon, tab, comma and blanks that the first line with numbers
 * holds.
 * <li>A comma within a number is a decimal comma, where the comma doesn't separate columns. A number with both point
 * and comma is refused, and so is one column of whole numbers with a comma whose first parts count up: those are two
 * columns.
 * <li>Time must rise evenly: no time may lie more than a quarter of a step beside its place, so that a lost line is
 * found. The first time is the start of the recording.
 * </ul>
 *
 * <p>These are the short ways to a file; {@link RecordingInput} reads from streams, channels and buffers too, several
 * channels at once, a range, or block by block.
 */
public final class Recordings {
    /** As many bytes from the start of a file tell what it is. */
    static final int HEAD_BYTES = 512;
    /** A format is one row; text comes last, since anything without control characters is text. */
    private static final List<RecordingFormat> FORMATS = List.of(new WavFormat(), new CsvFormat());

    private Recordings() {}

    /**
     * Reads a recording of one channel: WAV, or text with the columns time and value.
     *
     * @param file file to read
     * @param unit unit of the values
     * @return the recording
     * @throws RecordingFileException if the file can't be read, is malformed, or has more than one channel
     */
    public static Waveform read(Path file, Unit unit) {
        return read(file, unit, 1);
    }

    /**
     * Reads a recording of one channel whose values are turned into a unit by a factor: WAV, or CSV with the columns
     * time and value.
     *
     * @param file file to read
     * @param unit unit of the values after scaling
     * @param scale factor that turns a value of the file into the unit, finite, not zero; whole-number WAV samples
     *     count as fractions of full scale, -1 to 1
     * @return the recording
     * @throws RecordingFileException if the file can't be read, is malformed, or has more than one channel
     * @throws IllegalArgumentException if the scale is out of range
     */
    public static Waveform read(Path file, Unit unit, double scale) {
        return RecordingInput.of(file).withScale(scale).read(unit);
    }

    /**
     * Reads one channel of a file that may hold several.
     *
     * @param file file to read
     * @param unit unit of the values after scaling
     * @param scale factor that turns a value of the file into the unit, finite, not zero
     * @param channel number of the channel from 1; text holds one only
     * @return the recording
     * @throws RecordingFileException if the file can't be read, is malformed or has no such channel
     * @throws IllegalArgumentException if scale or channel are out of range
     */
    public static Waveform read(Path file, Unit unit, double scale, int channel) {
        return RecordingInput.of(file).withScale(scale).withChannel(channel).read(unit);
    }

    /**
     * Tells how the samples of a file are stored.
     *
     * @param file file to look at
     * @return sample format; empty if as text
     * @throws RecordingFileException if the file can't be read or its header is malformed
     */
    public static Optional<SampleFormat> sampleFormat(Path file) {
        return RecordingInput.of(file).sampleFormat();
    }

    /**
     * Reads one column of values from a CSV file with a sample rate that the file doesn't tell.
     *
     * @param file file to read
     * @param unit unit of the values after scaling
     * @param scale factor that turns a value of the file into the unit, finite, not zero
     * @param sampleRateHertz sample rate in Hz, finite, above zero
     * @return the recording
     * @throws RecordingFileException if the file can't be read or is malformed, is a WAV file (which tells its own
     *     rate) or has more than one column
     * @throws IllegalArgumentException if scale or sample rate are out of range
     */
    public static Waveform readColumn(Path file, Unit unit, double scale, double sampleRateHertz) {
        return RecordingInput.of(file).withScale(scale).withSampleRate(sampleRateHertz).read(unit);
    }

    /**
     * Writes a recording as 64-bit float WAV or as CSV with time and value, whole or not at all. Both keep every digit.
     *
     * @param wave recording
     * @param file file to write; an existing one is replaced
     * @param unit unit to write the values in
     * @throws RecordingFileException if the file can't be written, or the sample rate of a WAV file isn't a whole
     *     number of Hz
     * @throws IllegalArgumentException if the unit measures another quantity
     */
    public static void write(Waveform wave, Path file, Unit unit) {
        Objects.requireNonNull(wave, "wave");
        Objects.requireNonNull(unit, "unit");
        byEnding(RecordingFileException.nameOf(Objects.requireNonNull(file, "file")))
                .orElseThrow(() -> new RecordingFileException(file, "name must end in " + endings()))
                .write(wave, file, unit);
    }

    private static Optional<RecordingFormat> byEnding(String name) {
        String lowerCase = name.toLowerCase(Locale.ROOT);
        for (RecordingFormat format : FORMATS) {
            for (String ending : format.endings()) {
                if (lowerCase.endsWith(ending)) {
                    return Optional.of(format);
                }
            }
        }
        return Optional.empty();
    }

    /** Finds the format by the name's ending, else by the first bytes, which aren't taken. */
    static RecordingFormat formatOf(ByteReader in) throws IOException {
        Optional<RecordingFormat> known = byEnding(in.name());
        if (known.isPresent()) {
            return known.get();
        }
        byte[] head = in.head(HEAD_BYTES);
        for (RecordingFormat format : FORMATS) {
            if (format.begins(head)) {
                return format;
            }
        }
        throw in.problem("must be a recording: its name doesn't end in " + endings()
                + ", and it begins like none of them");
    }

    /** As in {@code .wav, .csv or .txt}. */
    private static String endings() {
        List<String> all = FORMATS.stream().flatMap(format -> format.endings().stream()).toList();
        return String.join(", ", all.subList(0, all.size() - 1)) + " or " + all.get(all.size() - 1);
    }
}
