package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Oracles: the grammar as a regular expression, and the JDK's parser. */
class NumberTextProperties {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d+)?");
    private static final Pattern PAIR = Pattern.compile("\\d+,\\d+");
    private static final Pattern LIKE = Pattern.compile("[\\d.,+eE-]*\\d[\\d.,+eE-]*");

    private static void assertRead(String text) {
        double expected = NUMBER.matcher(text).matches() ? Double.parseDouble(text.replace(',', '.')) : Double.NaN;
        double found = new NumberText().parse(("x" + text + "9").getBytes(StandardCharsets.ISO_8859_1), 1, 1 + text.length());
        assertEquals(Double.doubleToRawLongBits(expected), Double.doubleToRawLongBits(found), text);
    }

    @Provide
    Arbitrary<String> scraps() {
        return Arbitraries.strings().withChars("0159.,+-eE x").ofMaxLength(9);
    }

    @Property(tries = 20_000)
    void anyScrapIsReadByTheGrammar(@ForAll("scraps") String text) {
        assertRead(text);
        assertEquals(PAIR.matcher(text).matches(), NumberText.isPair(text.getBytes(StandardCharsets.ISO_8859_1), 0, text.length()), text);
        assertEquals(LIKE.matcher(text).matches(), NumberText.isLikeNumber(text), text);
    }

    @Provide
    Arbitrary<String> decimals() {
        return Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(22).flatMap(digits ->
                Arbitraries.integers().between(0, digits.length()).flatMap(point ->
                        Arbitraries.integers().between(-330, 330).map(exponent -> (exponent % 2 == 0 ? "-" : "")
                                + digits.substring(0, point) + "." + digits.substring(point)
                                + (exponent % 3 == 0 ? "" : "e" + exponent))));
    }

    @Property(tries = 20_000)
    void decimalsAreRoundedAsTheJdkDoes(@ForAll("decimals") String text) {
        assertRead(text);
    }

    /** Halves between two doubles and their neighbours in the 17th to 19th digit, which are the hardest to round. */
    @Property(tries = 20_000)
    void nearTiesAreRounded(@ForAll double value, @ForAll @IntRange(min = 17, max = 21) int digits) {
        if (Double.isInfinite(2 * value)) {
            return;
        }
        BigDecimal half = new BigDecimal(value).add(new BigDecimal(Math.nextUp(value))).divide(BigDecimal.valueOf(2));
        for (RoundingMode way : new RoundingMode[] {RoundingMode.DOWN, RoundingMode.UP}) {
            assertRead(half.round(new MathContext(digits, way)).toString());
        }
        long whole = (1L << 53) + digits;
        assertRead(Long.toString(2 * whole + 1));
        assertRead(2 * whole + 1 + "00e-2");
        assertRead("000." + "0".repeat(digits) + whole);
    }

    @Property(tries = 5000)
    void whatTheJdkWritesIsReadBack(@ForAll double value) {
        assertRead(Double.toString(value));
        assertRead(Float.toString((float) value));
    }

    @Property(tries = 5000)
    void shortDecimalsAreRead(@ForAll int whole, @ForAll short places) {
        assertRead(whole + "e" + places % 40);
        assertRead(new BigDecimal(BigInteger.valueOf(whole), places % 25).toPlainString());
    }
}
