package dev.vibra.docs.survey.input;

import dev.vibra.history.Visit;
import dev.vibra.machine.MachineDescription;
import dev.vibra.signal.Waveform;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What could be read of a machine description and everything that was wrong with it.
 *
 * @param machine the machine without the parts that were wrong; empty if nothing can be surveyed
 * @param sources where the recording of each point lies, by the id of the point
 * @param earlier names of files of earlier results
 * @param baselines where the baseline of a point comes from, by the id of the point; those stated aren't named
 * @param problems what was wrong, by line; empty if all is well
 * @param units word of the units in which people want to read, if it is given
 * @param runs run-ups and coast-downs
 * @param visits what earlier results tell of all points that were sound
 */
public record MachineReading(Optional<MachineDescription> machine, Map<String, RecordingSource> sources,
        List<String> earlier, Map<String, String> baselines, List<Problem> problems, Optional<String> units,
        List<SpeedRunSource> runs, List<Visit> visits) {
    /**
     * A reading that tells nothing of units and has neither run-ups nor visits.
     *
     * @param machine see the record
     * @param sources see the record
     * @param earlier see the record
     * @param baselines see the record
     * @param problems see the record
     */
    public MachineReading(Optional<MachineDescription> machine, Map<String, RecordingSource> sources,
            List<String> earlier, Map<String, String> baselines, List<Problem> problems) {
        this(machine, sources, earlier, baselines, problems, Optional.empty(), List.of(), List.of());
    }

    /** The same with what earlier results tell. */
    MachineReading with(MachineDescription newMachine, List<String> newEarlier, Map<String, String> newBaselines,
            List<Visit> newVisits, List<Problem> newProblems) {
        return new MachineReading(Optional.of(newMachine), sources, newEarlier, newBaselines, newProblems, units, runs,
                newVisits);
    }

    /**
     * Reads the recordings of all points.
     *
     * @param folder the survey folder
     * @return recording by the id of its point
     * @throws UnreadableRecordingException if one can't be read
     */
    public Map<String, Waveform> recordings(Path folder) {
        Map<String, Waveform> recordings = new LinkedHashMap<>();
        sources.forEach((point, source) -> recordings.put(point, source.read(folder).signal()));
        return recordings;
    }

    /**
     * Reads the recordings of the tachometers of the points that have one.
     *
     * @param folder the survey folder
     * @return recording of the tachometer by the id of its point
     * @throws UnreadableRecordingException if one can't be read
     */
    public Map<String, Waveform> tachometers(Path folder) {
        Map<String, Waveform> tachometers = new LinkedHashMap<>();
        sources.forEach((point, source) -> source.readTachometer(folder)
                .ifPresent(tachometer -> tachometers.put(point, tachometer)));
        return tachometers;
    }

    /**
     * Reads the reference recordings of the points that have one.
     *
     * @param folder the survey folder
     * @return reference by the id of its point
     * @throws UnreadableRecordingException if one can't be read
     */
    public Map<String, Waveform> references(Path folder) {
        Map<String, Waveform> references = new LinkedHashMap<>();
        sources.forEach((point, source) -> source.readReference(folder)
                .ifPresent(reference -> references.put(point, reference.signal())));
        return references;
    }
}
