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

    private BlockCutter cutter(int length, int step) {
        return new BlockCutter(length, step, block -> blocks.add(Arrays.toString(block)));
    }

    private static void assertRefused(String message, Executable call) {
        assertEquals(message, assertThrows(IllegalArgumentException.class, call).getMessage());
    }

    @Test
    void blocksOverlapByWhatTheStepLeaves() {
        BlockCutter cutter = cutter(3, 2);
        cutter.push(new double[] {9, 1, 2, 9}, 1, 2);
        cutter.push(new double[0], 0, 0);
        assertEquals(List.of(), blocks);
        cutter.push(new double[] {3, 4, 5, 6, 7, 8}, 0, 6);
        assertEquals(List.of("[1.0, 2.0, 3.0]", "[3.0, 4.0, 5.0]", "[5.0, 6.0, 7.0]"), blocks);
        cutter.reset();
        cutter.push(new double[] {1, 1, 1}, 0, 3);
        assertEquals("[1.0, 1.0, 1.0]", blocks.get(3));
    }

    @Test
    void samplesBeforeABadOneCount() {
        BlockCutter cutter = cutter(2, 2);
        assertRefused("samples[1] must be finite: NaN", () -> cutter.push(new double[] {1, Double.NaN, 3}, 0, 3));
        cutter.push(new double[] {2}, 0, 1);
        assertEquals(List.of("[1.0, 2.0]"), blocks);
        assertRefused("samples must lie inside the array of length 2: offset 1, length 2",
                () -> cutter.push(new double[2], 1, 2));
    }

    /** A receiver that refuses a block loses that block only. */
    @Test
    void theStreamGoesOnAfterABlockWasRefused() {
        BlockCutter cutter = new BlockCutter(2, 2, block -> {
            if (block[0] < 0) {
                throw new IllegalStateException("refused");
            }
            blocks.add(Arrays.toString(block));
        });
        assertThrows(IllegalStateException.class, () -> cutter.push(new double[] {-1, 0}, 0, 2));
        cutter.push(new double[] {1, 2}, 0, 2);
        assertEquals(List.of("[1.0, 2.0]"), blocks);
    }

    @Test
    void lengthAndStepAreChecked() {
        assertRefused("block length must be at least 1: 0", () -> cutter(0, 1));
        assertRefused("step must be within 1.0 to 4.0: 5.0", () -> cutter(4, 5));
        assertRefused("step must be within 1.0 to 4.0: 0.0", () -> cutter(4, 0));
    }
}
