package dev.vibra.channel;

import dev.vibra.alarm.AlarmState;
import dev.vibra.state.Arrival;
import java.util.ArrayList;
import java.util.List;

/** Writes down all that a channel tells, with every digit. */
final class Diary implements ChannelListener {
    final List<String> lines = new ArrayList<>();

    @Override
    public void reading(Channel channel) {
        String level = channel.levels().velocity().isReadable() ? "" + channel.levels().velocity().rmsSi() : "-";
        lines.add("reading " + channel.readingBegin() + " " + channel.quality() + " " + channel.coverage() + " " + level);
    }

    @Override
    public void alarm(Channel channel, int rule, AlarmState before, AlarmState now) {
        lines.add("alarm " + rule + " " + before + " " + now);
    }

    @Override
    public void spectra(Channel channel) {
        lines.add("spectra " + channel.spectrum(0).map(s -> s.blocks() + " " + s.density(25)).orElse("none") + " "
                + channel.envelope(0).map(s -> s.blocks() + " " + s.density(3)).orElse("none"));
    }

    @Override
    public void interrupted(Channel channel, Arrival how, long samples) {
        lines.add(how + " " + samples);
    }

    List<String> of(String kind) {
        return lines.stream().filter(line -> line.startsWith(kind)).toList();
    }
}
