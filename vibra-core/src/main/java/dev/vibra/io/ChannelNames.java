package dev.vibra.io;

import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/** What channels are called: as the file calls them, if it calls each one differently, else by their numbers. */
final class ChannelNames {
    private ChannelNames() {}

    static SimultaneousRecording together(RecordedChannel[] wanted, List<String> names, List<Waveform> waveforms) {
        List<String> own = IntStream.range(0, wanted.length).filter(i -> !names.isEmpty())
                .mapToObj(i -> names.get(wanted[i].number() - 1)).toList();
        boolean areNames = !own.isEmpty() && own.stream().noneMatch(String::isBlank)
                && new HashSet<>(own).size() == own.size();
        SimultaneousRecording numbered = SimultaneousRecording.of(waveforms);
        return areNames ? numbered.withNames(own) : numbered;
    }
}
