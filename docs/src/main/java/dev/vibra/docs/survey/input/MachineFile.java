package dev.vibra.docs.survey.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads {@code machine.json}. A wrong field never stops the reading: a point with an error is left out, a gear or the
 * balancing job likewise, and the machine remembers which facts were given wrong.
 */
public final class MachineFile {
    /** Name of the file in a survey folder. */
    public static final String NAME = "machine.json";

    private static final int MOST_MEGABYTES = 16;

    private MachineFile() {}

    /**
     * Reads the description in a survey folder, and baselines from earlier results that it names.
     *
     * @param folder the survey folder
     * @return what could be read and what was wrong
     */
    public static MachineReading in(Path folder) {
        Path file = folder.resolve(NAME);
        if (Files.notExists(file)) {
            return failed(List.of(new Problem(NAME, 0, "", "is required in the survey folder and not there")));
        }
        try {
            return EarlierResults.into(parse(NAME, SmallFile.read(file, MOST_MEGABYTES)), folder);
        } catch (SmallFile.Unusable e) {
            return failed(List.of(new Problem(NAME, 0, "", e.getMessage())));
        }
    }

    /**
     * Reads a description from the bytes of a file.
     *
     * @param file name of the file for the messages
     * @param bytes content of the file, JSON in UTF-8
     * @return what could be read and what was wrong
     */
    public static MachineReading parse(String file, byte[] bytes) {
        Problems problems = new Problems(file);
        return FieldReader.ofFile(bytes, problems)
                .flatMap(fields -> fields.taken(() -> Optional.of(MachineReader.read(fields))))
                .orElseGet(() -> failed(problems.byLine()));
    }

    private static MachineReading failed(List<Problem> problems) {
        return new MachineReading(Optional.empty(), Map.of(), List.of(), Map.of(), problems);
    }
}
