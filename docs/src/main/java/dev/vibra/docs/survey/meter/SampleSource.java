package dev.vibra.docs.survey.meter;

import dev.vibra.io.RecordingInput;
import dev.vibra.io.RecordingReader;
import dev.vibra.io.SampleFormat;
import dev.vibra.quantity.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Optional;

/** Samples in m/s², block by block. */
interface SampleSource extends AutoCloseable {
    /** Returns the sample rate in Hz. */
    double sampleRateHertz();

    /** Says where the samples come from and how they are stored, as in {@code fan.wav, 16-bit whole numbers}. */
    String words();

    /** Returns true if samples are fractions of a full scale, that is the option's scale. */
    boolean hasFullScale();

    /**
     * Reads the next samples.
     *
     * @return number of samples, 0 at the end
     * @throws BadSampleException if a sample is no number, or not whole
     * @throws IOException if nothing can be read
     */
    int read(double[] block) throws IOException;

    @Override
    void close();

    /** The samples end here, for a reason. */
    final class BadSampleException extends IOException {
        private static final long serialVersionUID = 1;

        BadSampleException(String message) {
            super(message);
        }
    }

    /** Opens a file, or standard input. */
    static SampleSource of(MeterOptions options, InputStream in) {
        if (options.source().equals(MeterOptions.RAW)) {
            return new RawSource(in, options);
        }
        RecordingInput input = RecordingInput.of(Path.of(options.source())).withScale(options.scale());
        if (options.channel().isPresent()) {
            input = input.withChannel(options.channel().getAsInt());
        }
        if (options.rate().isPresent()) {
            input = input.withSampleRate(options.rate().getAsDouble());
        }
        return new FileSource(options.source(), input.sampleFormat(), input.open(options.unit()), options);
    }

    /** A WAV or CSV file; its reader names what is wrong with it. */
    record FileSource(String name, Optional<SampleFormat> format, RecordingReader reader, MeterOptions options)
            implements SampleSource {
        @Override
        public double sampleRateHertz() {
            return reader.sampleRateHertz();
        }

        @Override
        public String words() {
            return Path.of(name).getFileName() + ", " + (format.isPresent() ? format.get().toString() : "text")
                    + scaled(hasFullScale(), options);
        }

        @Override
        public boolean hasFullScale() {
            return format.filter(SampleFormat::isFractionOfFullScale).isPresent();
        }

        @Override
        public int read(double[] block) {
            return reader.read(block, 0, block.length);
        }

        @Override
        public void close() {
            reader.close();
        }
    }

    /** Says what a value of the source stands for. */
    static String scaled(boolean isFraction, MeterOptions options) {
        Unit unit = options.unit();
        String scale = Shown.number(options.scale());
        return isFraction ? " of ±" + Shown.number(Math.abs(options.scale())) + " " + unit + " full scale"
                : options.scale() == 1 ? " in " + unit : ", times " + scale + " " + unit;
    }
}
