package dev.vibra.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.vibra.quantity.Unit;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class SimultaneousRecordingTest {
    private static final Waveform A = Waveform.of(Unit.G, 100, 1, 2, 3);
    private static final Waveform B = Waveform.of(Unit.MM_PER_S, 100, 4, 5, 6);

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void channelsAreFoundByNumberAndName() {
        SimultaneousRecording both = SimultaneousRecording.of(List.of(A, B)).withNames(List.of("DE-H", "DE-V"));
        assertEquals(A, both.channel(1));
        assertEquals(B, both.channel("DE-V"));
        assertEquals(100, both.sampleRateHertz());
        assertEquals(3, both.length());
        assertEquals("2 channels (DE-H, DE-V) of 3 samples at 100 Hz, 0.03000 s", both.toString());
        SimultaneousRecording part = both.part(1, 2);
        assertEquals(0.01, part.startSeconds());
        assertEquals(B.part(1, 2), part.channel("DE-V"));
        assertRefused("number must be from 1 to 2: 3", () -> both.channel(3));
        assertRefused("name must be one of [DE-H, DE-V]: \\u001bX", () -> both.channel("\u001bX"));
    }

    @Test
    void whatDoesNotBelongTogetherIsRefused() {
        assertRefused("number of channels must be at least 1: 0", () -> SimultaneousRecording.of(List.of()));
        assertRefused("sample rates of channels must be the same: 100.0 and 50.0 Hz",
                () -> SimultaneousRecording.of(List.of(A, Waveform.of(Unit.G, 50, 1, 2, 3))));
        assertRefused("starts of channels must be the same: 0.0 and 1.0 s",
                () -> SimultaneousRecording.of(List.of(A, B.startingAt(1))));
        assertRefused("lengths of channels must be the same: 3 and 2 samples",
                () -> SimultaneousRecording.of(List.of(A, B.part(0, 2))));
        assertRefused("names must be one for each of 2 channels: 1",
                () -> SimultaneousRecording.of(List.of(A, B)).withNames(List.of("a")));
        assertRefused("names must differ: a, a",
                () -> SimultaneousRecording.of(List.of(A, B)).withNames(List.of("a", "a")));
        assertRefused("name must not be blank: \" \"",
                () -> SimultaneousRecording.of(List.of(A, B)).withNames(List.of("a", " ")));
    }

    @Test
    void itIsStoredAndReadBack() throws Exception {
        SimultaneousRecording both = SimultaneousRecording.of(List.of(A, B));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        new ObjectOutputStream(bytes).writeObject(both);
        assertEquals(both, new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject());
    }
}
