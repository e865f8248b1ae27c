package dev.vibra.docs.survey.input;

import dev.vibra.io.RecordingFileException;
import dev.vibra.io.Recordings;
import dev.vibra.io.SampleFormat;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Where the recording of a point lies and how it is read.
 *
 * @param channel file and channel
 * @param unit unit of the values after scaling
 * @param scaling how the file's values become values in the unit
 * @param sampleRateHertz sample rate of a CSV file of one column, if given
 * @param tachometer tachometer that was recorded along with it, if any
 * @param measured instant of this recording, where it isn't that of the machine
 * @param reference recording of the point from a time when the machine was known to be sound, if any
 */
public record RecordingSource(Channel channel, Unit unit, Scaling scaling, Optional<Double> sampleRateHertz,
        Optional<Tachometer> tachometer, Optional<Instant> measured, Optional<Reference> reference) {
    /**
     * One channel of a file.
     *
     * @param file name of the file in the survey folder
     * @param number number of the channel, from 1; empty where the file must have one only
     */
    public record Channel(String file, Optional<Integer> number) {
        private Path in(Path folder) {
            Path path = folder.resolve(file);
            if (!Files.isRegularFile(path)) {
                throw new UnreadableRecordingException("is not in the survey folder or no file", null);
            }
            return path;
        }
    }

    /**
     * Recording of a tachometer.
     *
     * @param channel file and channel
     * @param pulsesPerRevolution pulses per revolution, at least 1
     */
    public record Tachometer(Channel channel, int pulsesPerRevolution) {}

    /**
     * Reference of a point, in the unit and by the scaling of its recording.
     *
     * @param channel file and channel
     * @param measured instant of the reference, if given
     */
    public record Reference(Channel channel, Optional<Instant> measured) {}

    /**
     * A recording in its unit.
     *
     * @param signal the recording
     * @param conversion how the file's values became values in the unit, in words
     */
    public record Recorded(Waveform signal, String conversion) {}

    /**
     * Reads the recording.
     *
     * @param folder the survey folder
     * @return the recording in its unit
     * @throws UnreadableRecordingException if it can't be read or turned into its unit
     */
    public Recorded read(Path folder) {
        return read(folder, channel);
    }

    /**
     * Reads the reference recording.
     *
     * @param folder the survey folder
     * @return the recording in its unit; empty if there is no reference
     * @throws UnreadableRecordingException if it can't be read or turned into its unit
     */
    public Optional<Recorded> readReference(Path folder) {
        return reference.map(known -> read(folder, known.channel()));
    }

    private Recorded read(Path folder, Channel from) {
        Path file = from.in(folder);
        return readable(() -> {
            Optional<SampleFormat> format = Recordings.sampleFormat(file);
            scaling.objection(format).ifPresent(reason -> {
                throw new UnreadableRecordingException(reason, null);
            });
            return new Recorded(read(file, from, unit, scaling.factor()), scaling.words(format, unit));
        });
    }

    /**
     * Reads the recording of the tachometer; the unit of its pulses doesn't matter.
     *
     * @param folder the survey folder
     * @return the recording; empty if there was no tachometer
     * @throws UnreadableRecordingException if it can't be read
     */
    public Optional<Waveform> readTachometer(Path folder) {
        return tachometer.map(known -> {
            Path file = known.channel().in(folder);
            return readable(() -> read(file, known.channel(), Unit.V, 1));
        });
    }

    private Waveform read(Path file, Channel from, Unit into, double factor) {
        if (from.number().isPresent()) {
            return Recordings.read(file, into, factor, from.number().get());
        }
        return sampleRateHertz.isPresent() ? Recordings.readColumn(file, into, factor, sampleRateHertz.get())
                : Recordings.read(file, into, factor);
    }

    /** The name of the file is said by whoever reports. */
    private static <T> T readable(Supplier<T> reading) {
        try {
            return reading.get();
        } catch (RecordingFileException e) {
            throw new UnreadableRecordingException(e.reason(), e);
        }
    }

    /** {@return all files that the recording is read from} */
    public List<String> files() {
        return Stream.of(Optional.of(channel), tachometer.map(Tachometer::channel), reference.map(Reference::channel))
                .flatMap(Optional::stream).map(Channel::file).toList();
    }
}
