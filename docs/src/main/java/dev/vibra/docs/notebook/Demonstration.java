package dev.vibra.docs.notebook;

import dev.vibra.docs.survey.demo.DemoMachine;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.machine.MachineDescription;
import dev.vibra.signal.Waveform;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * The demonstration machine: {@code Survey.of(demo().machine(), demo().recordings(), demo().tachometers())} surveys it.
 *
 * @param machine its description
 * @param recordings recording by the id of its point
 * @param tachometers recording of the tachometer by the id of its point
 */
public record Demonstration(MachineDescription machine, Map<String, Waveform> recordings,
        Map<String, Waveform> tachometers) {
    /**
     * Copies the recordings.
     *
     * @param machine see the record
     * @param recordings see the record
     * @param tachometers see the record
     */
    public Demonstration {
        recordings = Collections.unmodifiableMap(new LinkedHashMap<>(recordings));
        tachometers = Collections.unmodifiableMap(new LinkedHashMap<>(tachometers));
    }

    /** Reads the machine that is packed with the program. */
    static Demonstration read() {
        try {
            return DemoMachine.unpacked(folder -> {
                MachineReading reading = MachineFile.in(folder);
                return new Demonstration(reading.machine().orElseThrow(), reading.recordings(folder),
                        reading.tachometers(folder));
            });
        } catch (IOException e) {
            throw new UncheckedIOException("the demonstration machine can't be unpacked: " + e.getMessage(), e);
        }
    }

    /**
     * Finds a recording.
     *
     * @param id id of a point in letters of either case, as in {@code fe-h}
     * @return its recording
     * @throws IllegalArgumentException if there is no such point
     */
    public Waveform recording(String id) {
        return recordings.entrySet().stream().filter(entry -> entry.getKey().equalsIgnoreCase(id))
                .map(Map.Entry::getValue).findFirst().orElseThrow(() -> new IllegalArgumentException(
                "id must be one of " + ids() + ": " + id));
    }

    private String ids() {
        return String.join(", ", recordings.keySet()).toLowerCase(Locale.ROOT);
    }

    /** Returns the name of the machine and the ids of its recordings. */
    @Override
    public String toString() {
        return machine.name() + ": recordings " + ids();
    }
}
