package dev.vibra.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class EvidenceTest {
    @Test
    void aRemarkCarriesFiguresThatFilesCanHold() {
        assertEquals("value of a remark must be finite: Infinity", assertThrows(IllegalArgumentException.class,
                () -> Remark.note("code", "text", Double.POSITIVE_INFINITY, 0)).getMessage());
        assertEquals("limit of a remark must be finite: NaN", assertThrows(IllegalArgumentException.class,
                () -> Remark.doubt("code", "text", 0, Double.NaN)).getMessage());
        assertThrows(NullPointerException.class, () -> Remark.note(null, "text", 0, 0));
        assertTrue(Remark.doubt("clipping", "cut off", 7, 4).disqualifying());
        assertFalse(Remark.note("mains-hum", "hum", 0.6, 0.5).disqualifying());
        assertEquals("clipping: cut off", Remark.doubt("clipping", "cut off", 7, 4).toString());
    }

    @Test
    void aConfidenceIsFoundByTheWordsItPrints() {
        for (Confidence confidence : Confidence.values()) {
            assertEquals(confidence, Confidence.ofName(confidence.toString()));
        }
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Confidence.ofName("sure")).getMessage()
                .endsWith("'supplied by the user': sure"));
    }
}
