package dev.vibra.io;

import dev.vibra.internal.Require;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Reads and writes recordings; the kind of file is told by its name, {@code .wav} or {@code .csv} (also {@code .txt}).
 *
 * <p>WAV: whole numbers of 16, 24 or 32 bits and floating point of 32 or 64 bits, plain or extensible header, also
 * RF64. Whole numbers count as fractions of full scale, -1 to 1.
 *
 * <p>CSV: one column of values, or two of time in seconds and value.
 * <ul>
 * <li>Lines that begin with {@code #} and lines of blanks are skipped; a first line without any number is a header.
 * <li>The separator of two columns is the first of semicolon, tab, comma and blanks that the first line with numbers
 * holds.
 * <li>A comma within a number is a decimal comma, where the comma doesn't separate columns. A number with both point
 * and comma is refused, and so is one column of whole numbers with a comma whose first parts count up: those are two
 * columns.
 * <li>Time must rise evenly: no time may lie more than a quarter of a step beside its place, so that a lost line is
 * found. The first time is the start of the recording.
 * </ul>
 */
public final class Recordings {
    private Recordings() {}

    /**
     * Reads a recording of one channel: WAV, or CSV with the columns time and value.
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
        requireScale(scale);
        return isWav(file) ? WavFile.read(file).channel(0, unit, scale) : CsvFormat.readTimeAndValue(file, unit, scale);
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
        requireScale(scale);
        Require.positive("sampleRateHertz", sampleRateHertz, "Hz");
        if (isWav(file)) {
            throw new RecordingFileException(file, "a sample rate may be given for CSV only; a WAV file tells its own");
        }
        return CsvFormat.readColumn(file, unit, scale, sampleRateHertz);
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
        if (isWav(file)) {
            WavFile.write(wave, file, unit, 1, SampleFormat.FLOAT_64);
        } else {
            CsvFormat.write(wave, file, unit);
        }
    }

    static void requireScale(double scale) {
        if (!(Math.abs(scale) > 0 && Math.abs(scale) < Double.POSITIVE_INFINITY)) {
            throw Require.failure("scale", "finite and not zero", scale);
        }
    }

    private static boolean isWav(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (name.endsWith(".wav")) {
            return true;
        }
        if (name.endsWith(".csv") || name.endsWith(".txt")) {
            return false;
        }
        throw new RecordingFileException(file, "name must end in .wav, .csv or .txt");
    }
}
