package dev.vibra.io;

import java.nio.ByteBuffer;
import java.util.Optional;

/** How one sample is stored in a WAV file. Whole numbers stand for fractions of full scale, -1 to just below 1. */
public enum SampleFormat {
    /** 16-bit whole number. */
    INTEGER_16(1, 2) {
        @Override
        void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            if (step == 2) {
                loop(bytes, first, 2, out, offset, count);
            } else {
                loop(bytes, first, step, out, offset, count);
            }
        }

        private static void loop(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            for (int i = 0; i < count; i++) {
                out[offset + i] = bytes.getShort(first + i * step) * 0x1p-15;
            }
        }

        @Override
        void put(ByteBuffer bytes, double value) {
            bytes.putShort((short) Math.rint(value * 0x1p15));
        }
    },
    /** 24-bit whole number. */
    INTEGER_24(1, 3) {
        @Override
        void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            for (int i = 0, place = first; i < count; i++, place += step) {
                int low = Short.toUnsignedInt(bytes.getShort(place));
                out[offset + i] = (bytes.get(place + 2) << 16 | low) * 0x1p-23;
            }
        }

        @Override
        void put(ByteBuffer bytes, double value) {
            int whole = (int) Math.rint(value * 0x1p23);
            bytes.putShort((short) whole);
            bytes.put((byte) (whole >> 16));
        }
    },
    /** 32-bit whole number. */
    INTEGER_32(1, 4) {
        @Override
        void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            if (step == 4) {
                loop(bytes, first, 4, out, offset, count);
            } else {
                loop(bytes, first, step, out, offset, count);
            }
        }

        private static void loop(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            for (int i = 0; i < count; i++) {
                out[offset + i] = bytes.getInt(first + i * step) * 0x1p-31;
            }
        }

        @Override
        void put(ByteBuffer bytes, double value) {
            bytes.putInt((int) (long) Math.rint(value * 0x1p31));
        }
    },
    /** 32-bit floating point. */
    FLOAT_32(3, 4) {
        @Override
        void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            if (step == 4) {
                loop(bytes, first, 4, out, offset, count);
            } else {
                loop(bytes, first, step, out, offset, count);
            }
        }

        private static void loop(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            for (int i = 0; i < count; i++) {
                out[offset + i] = bytes.getFloat(first + i * step);
            }
        }

        @Override
        void put(ByteBuffer bytes, double value) {
            bytes.putFloat((float) value);
        }
    },
    /** 64-bit floating point. */
    FLOAT_64(3, 8) {
        @Override
        void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            if (step == 8) {
                loop(bytes, first, 8, out, offset, count);
            } else {
                loop(bytes, first, step, out, offset, count);
            }
        }

        private static void loop(ByteBuffer bytes, int first, int step, double[] out, int offset, int count) {
            for (int i = 0; i < count; i++) {
                out[offset + i] = bytes.getDouble(first + i * step);
            }
        }

        @Override
        void put(ByteBuffer bytes, double value) {
            bytes.putDouble(value);
        }
    };

    private final int tag;
    private final int bytesPerSample;

    SampleFormat(int tag, int bytesPerSample) {
        this.tag = tag;
        this.bytesPerSample = bytesPerSample;
    }

    /**
     * Tells whether stored values are fractions of full scale, -1 to just below 1, as whole numbers are, and not values
     * in a unit. Those of a converter become volts by its full scale in volts.
     *
     * @return true for whole numbers, false for floating point
     */
    public boolean isFractionOfFullScale() {
        return tag == 1;
    }

    /**
     * Reads samples of a little-endian buffer; its position doesn't matter. One loop in two calls, as the compiler makes
     * a faster one where it sees that samples lie side by side.
     *
     * @param first place of the first one
     * @param step bytes from one to the next
     */
    abstract void decode(ByteBuffer bytes, int first, int step, double[] out, int offset, int count);

    /** Writes one sample that {@link #holds}. */
    abstract void put(ByteBuffer bytes, double value);

    /** Returns the format tag of the header: 1 for whole numbers, 3 for floating point. */
    int tag() {
        return tag;
    }

    /** Returns the size of a sample. */
    int bytesPerSample() {
        return bytesPerSample;
    }

    /** Tells whether a value can be stored without being clipped or lost. */
    boolean holds(double value) {
        if (tag == 3) {
            return this == FLOAT_64 || Math.abs(value) <= Float.MAX_VALUE;
        }
        double scaled = Math.rint(value * Math.pow(2, 8 * bytesPerSample - 1));
        double limit = Math.pow(2, 8 * bytesPerSample - 1);
        return scaled >= -limit && scaled <= limit - 1;
    }

    /** Finds a format by what the header says. */
    static Optional<SampleFormat> find(int tag, int bits) {
        for (SampleFormat format : values()) {
            if (format.tag == tag && 8 * format.bytesPerSample == bits) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }

    /** Returns the format in words, as in {@code 16-bit whole numbers}. */
    @Override
    public String toString() {
        return 8 * bytesPerSample + "-bit " + (isFractionOfFullScale() ? "whole numbers" : "floating point");
    }
}
