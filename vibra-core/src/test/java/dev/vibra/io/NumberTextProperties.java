package dev.vibra.io;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Oracles: the grammar as a regular expression, and the JDK's parser. */
class NumberTextProperties {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d+)?");
    private static final Pattern PAIR = Pattern.compile("\\d+,\\d+");
    private static final Pattern LIKE = Pattern.compile("[\\d.,+eE-]*\\d[\\d.,+eE-]*");

    private static void assertRead(String text) {
        double expected = NUMBER.matcher(text).matches() ? Double.parseDouble(text.replace(',', '.')) : Double.NaN;
        double found = new NumberText().parse(("x" + text + "9").toCharArray(), 1, 1 + text.length());
        assertEquals(Double.doubleToRawLongBits(expected), Double.doubleToRawLongBits(found), text);
    }

    @Provide
    Arbitrary<String> scraps() {
        return Arbitraries.strings().withChars("0159.,+-eE x").ofMaxLength(9);
    }

    @Property(tries = 20_000)
    void anyScrapIsReadByTheGrammar(@ForAll("scraps") String text) {
        assertRead(text);
        assertEquals(PAIR.matcher(text).matches(), NumberText.isPair(text.toCharArray(), 0, text.length()), text);
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
