package dev.vibra.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class BlockCutterTest {
    private final List<String> blocks = new ArrayList<>();

    private void push(BlockCutter cutter, double... samples) {
        for (int done = 0; done < samples.length;) {
            done += cutter.fill(samples, done, samples.length - done);
            if (cutter.isFull()) {
                blocks.add(Arrays.toString(cutter.block()));
            }
        }
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void blocksOverlapByWhatTheStepLeaves() {
        BlockCutter cutter = new BlockCutter(3, 2);
        assertEquals(2, cutter.fill(new double[] {9, 1, 2, 9}, 1, 2));
        assertEquals(0, cutter.fill(new double[0], 0, 0));
        push(cutter, 3, 4, 5, 6, 7, 8);
        assertEquals(List.of("[1.0, 2.0, 3.0]", "[3.0, 4.0, 5.0]", "[5.0, 6.0, 7.0]"), blocks);
        cutter.reset();
        push(cutter, 1, 1, 1);
        assertEquals("[1.0, 1.0, 1.0]", blocks.get(3));
    }

    @Test
    void aFullBlockIsSeenOnce() {
        BlockCutter cutter = new BlockCutter(2, 2);
        assertEquals(2, cutter.fill(new double[] {1, 2, 3}, 0, 3));
        assertEquals(1, cutter.fill(new double[] {1, 2, 3}, 2, 1));
        assertEquals(false, cutter.isFull());
    }

    @Test
    void lengthAndStepAreChecked() {
        assertRefused("block length must be at least 1: 0", () -> new BlockCutter(0, 1));
        assertRefused("step must be within 1.0 to 4.0: 5.0", () -> new BlockCutter(4, 5));
        assertRefused("step must be within 1.0 to 4.0: 0.0", () -> new BlockCutter(4, 0));
    }
}
