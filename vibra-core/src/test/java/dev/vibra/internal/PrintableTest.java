package dev.vibra.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PrintableTest {
    @ParameterizedTest
    @ValueSource(strings = {"", "fan 3, Lüfter Süd", "a\\b", "ßçł", "轴承", "\ud83d\ude00", "4.31 mm/s"})
    void whatIsSeenStays(String text) {
        assertEquals(text, Printable.of(text));
    }

    @Test
    void whatIsNotSeenIsEscaped() {
        assertEquals("\\u001b]0;title\\u0007", Printable.of("\u001b]0;title\u0007"));
        assertEquals("a\\u000ab\\u0009c\\u000d", Printable.of("a\nb\tc\r"));
        assertEquals("\\u202egnp.exe", Printable.of("\u202egnp.exe"));
        assertEquals("\\u2028\\u2029\\u0085\\u009b\\u007f", Printable.of("\u2028\u2029\u0085\u009b\u007f"));
        assertEquals("x\\ud800y\\udc00", Printable.of("x\ud800y\udc00"));
        assertEquals("\\udb40\\udc41", Printable.of(Character.toString(0xE0041)));
    }

    /** Unicode Standard Annex 9, table 4: all explicit marks of direction. */
    @ParameterizedTest
    @ValueSource(ints = {0x061C, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068,
        0x2069})
    void marksOfDirectionAreEscaped(int mark) {
        assertEquals("\\u" + String.format(Locale.ROOT, "%04x", mark), Printable.of(Character.toString(mark)));
    }

    @Test
    void noCharacterOfAnyKindGetsThroughThatIsNotSeen() {
        for (int character = 0; character <= Character.MAX_CODE_POINT; character++) {
            String shown = Printable.of(Character.toString(character));
            assertFalse(shown.chars().anyMatch(Character::isISOControl), shown);
            assertFalse(shown.codePoints().anyMatch(c -> Character.getType(c) == Character.FORMAT
                    || Character.getType(c) == Character.SURROGATE), shown);
        }
    }

    @ParameterizedTest
    @CsvSource({"abc, 3, abc", "abcd, 3, abc…", "'', 1, ''"})
    void theLengthIsBounded(String text, int most, String shown) {
        assertEquals(shown, Printable.shortened(text, most));
    }

    @Test
    void anEscapeOrAPairIsNotCut() {
        assertEquals("ab…", Printable.shortened("ab\u202e", 7));
        assertEquals("ab\\u202e", Printable.shortened("ab\u202e", 8));
        assertEquals("ab…", Printable.shortened("ab\ud83d\ude00", 3));
        assertEquals("most must be at least 1: 0", assertThrows(IllegalArgumentException.class,
                () -> Printable.shortened("a", 0)).getMessage());
    }

    /** Quotes of a long text are made as fast as those of a short one: only what is shown is looked at. */
    @Test
    void aLongTextCostsNoMoreThanItsQuote() {
        String text = "x".repeat(100_000_000);
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
            for (int i = 0; i < 10_000; i++) {
                assertEquals(41, Printable.quoted(text).length());
            }
        });
    }
}
