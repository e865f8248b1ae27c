package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What counts as a number, and when two texts agree. */
class ExpectedTextTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        // half a unit of the last digit printed, both ends included
        "3.54                       | 3.5355339059327378",
        "3.60                       | 3.605",
        "3.60                       | 3.595",
        "1480                       | 1479.5",
        "0.00                       | -0.004",
        "-3.5                       | -3.46",
        "−3.5                       | -3.5",
        "+3.5                       | 3.5",
        // the same double, as JDK 17 and JDK 25 print it
        "2.0E23                     | 1.9999999999999998E23",
        "4.31e-3                    | 0.0043149",
        "4.31E-3                    | 4.309e-3",
        "2e23                       | 2.4E23",
        // units, glued or not, and other text
        "4.31 mm/s rms (10–1000 Hz) | 4.3122 mm/s  rms (10–1000 Hz)",
        "4.31mm/s                   | 4.3122mm/s",
        "1x                         | 1.0x",
        "4.31 ± 0.22 mm/s rms       | 4.308 ± 0.2249 mm/s rms",
        "102,400 samples            | 102400 samples",
        "102,400 samples            | 102,400.4 samples",
        "double[2] { 3.0, 4.0 }     | double[2] { 3.04, 3.96 }",
        "(-3.0, 4)                  | (-3.04, 4)",
        "x=-3.0                     | x=-3.01",
        "ISO 20816-3:2022           | ISO 20816-3:2022",
        // not one number, or none at all
        "17.0.15                    | 17.0.15",
        "x1                         | x1",
        "NaN                        | NaN",
        "3.60 ± 0.1                 | 3.5",
        "3.60 ± 0.1                 | 3.7",
        "3.60 mm/s ± 0.1            | 3.5 mm/s",
        "2e3 ± 1e2                  | 2100",
        "[1.0, 2.0] ± 0.5           | [1.5, 2.5]",
        "4.31 ± 0.22 ± 0            | 4.31 ± 0.22",
        "small ± a bit              | small ± a bit",
    })
    void agree(String expected, String actual) {
        assertTrue(ExpectedText.value(expected).agrees(actual));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "3.60                       | 3.6051",
        "3.60                       | 3.5949",
        "1480                       | 1479.4",
        "3.5                        | -3.5",
        "4.31e-3                    | 0.0043151",
        "4.31 mm/s                  | 4.31 m/s",
        "4.31 mm/s                  | 4.31mm/s",
        "4.31                       | 4.31 mm/s",
        "4.31 mm/s                  | 4.31",
        "3,54                       | 3.54",
        "1,005                      | 1,5",
        "10–1000 Hz                 | 10-1000 Hz",
        "10-1000 Hz                 | 10 -1000 Hz",
        "17.0.15                    | 17.0.16",
        "1.2.3                      | 1.24.3",
        "x1                         | x2",
        "x1.0                       | x1.01",
        "NaN                        | 0.0",
        "0.0                        | NaN",
        "0.0 ± 1e99                 | NaN",
        "Infinity                   | -Infinity",
        "1e9999                     | Infinity",
        "3.60 ± 0.1                 | 3.701",
        "3.60 ± 0                   | 3.601",
        "4.31 ± 0.22                | 4.31 ± 0.22",
        "4.31 ± 0.22 ± 0            | 4.31 ± 0.221",
        "'3.54'                     | three",
    })
    void differ(String expected, String actual) {
        assertFalse(ExpectedText.value(expected).agrees(actual));
    }

    @Test
    void printedTextKnowsNoTolerance() {
        assertTrue(ExpectedText.printed("4.31 ± 0.22").agrees("4.31 ± 0.22"));
        assertFalse(ExpectedText.printed("4.31 ± 0.22").agrees("4.31"));
    }

    @Test
    void hugeExponentIsText() {
        assertFalse(ExpectedText.value("1e999999999").agrees("1"));
        assertTrue(ExpectedText.value("1e999999999").agrees("1e999999999"));
    }

    @Test
    void toleranceNeedsANumber() {
        assertTrue(ExpectedText.value("small ± 3").hasIdleTolerance());
        assertFalse(ExpectedText.value("4 ± 3").hasIdleTolerance());
        assertFalse(ExpectedText.value("small").hasIdleTolerance());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "3.60                       | 3.5355339059327378  | 3.54",
        "3.60 ± 0.01                | 3.5355339059327378  | 3.54 ± 0.01",
        "3.60 mm/s rms (10 Hz)      | 3.5355 mm/s rms (10 Hz) | 3.54 mm/s rms (10 Hz)",
        "4.31e-3                    | 0.0053456           | 5.35e-03",
        "7                          | 3.5355              | 4",
        "1,005 samples              | 1,006 samples       | 1,006 samples",
        "1,005                      | 1006.4              | 1006.4",
        "4.31 mm/s                  | 4.32 m/s            | 4.32 m/s",
        "4.31                       | NaN                 | NaN",
        "{ 1.00, 2.00 }             | { 1.001, 2.5004 }   | { 1.00, 2.50 }",
        "3.60 ± 0.00001             | 3.5355339059327378  | 3.5355339059327378 ± 0.00001",
    })
    void renewedTextAgreesInThePagesOwnDigits(String expected, String actual, String renewed) {
        assertEquals(renewed, ExpectedText.value(expected).renewed(actual));
        assertTrue(ExpectedText.value(renewed).agrees(actual));
    }
}
