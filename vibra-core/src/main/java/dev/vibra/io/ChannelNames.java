package dev.vibra.io;

import dev.vibra.signal.SimultaneousRecording;
import dev.vibra.signal.Waveform;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;

/** What channels are called: as the file calls them, if it calls each one differently, else by their numbers. */
final class ChannelNames {
    private ChannelNames() {}

    static SimultaneousRecording together(RecordedChannel[] wanted, List<String> names, List<Waveform> waveforms) {
        List<String> own = new ArrayList<>();
        for (int i = 0; i < wanted.length && !names.isEmpty(); i++) {
            String name = names.get(wanted[i].number() - 1);
            if (!name.isBlank()) {
                own.add(name);
            }
        }
        boolean areNames = new HashSet<>(own).size() == wanted.length;
        SimultaneousRecording numbered = SimultaneousRecording.of(waveforms);
        return areNames ? numbered.withNames(own) : numbered;
    }
}
