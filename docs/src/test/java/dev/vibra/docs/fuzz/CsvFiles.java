package dev.vibra.docs.fuzz;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** Recordings as text of every kind, now and then with a line that lies. */
final class CsvFiles {
    private static final String BYTE_ORDER_MARK = "\ufeff";

    private final Dice dice;
    private final boolean honest;
    private final int columns;
    private final String separator;
    private final boolean decimalComma;
    private final String lineEnd;
    private final double step;
    private final StringBuilder text = new StringBuilder();

    private CsvFiles(Dice dice, boolean honest, int columns) {
        this.dice = dice;
        this.honest = honest;
        this.columns = columns;
        this.separator = dice.pick(",", ";", "\t", " ", "; ", "   ");
        this.decimalComma = !separator.equals(",") && dice.oneIn(3);
        this.lineEnd = dice.pick("\n", "\n", "\r\n", "\r");
        this.step = dice.pick(1.0 / 2560, 1.0 / 25600, 0.5, 1e-6, 1e-3);
    }

    /** The first column is time, but not if there is one only. */
    static byte[] mutated(Dice dice, int columns, int largest) {
        return Mutation.some(dice, new CsvFiles(dice, dice.oneIn(2), columns).file(largest));
    }

    static byte[] sound(Dice dice, int largest) {
        return new CsvFiles(dice, true, 2).file(largest);
    }

    private byte[] file(int largest) {
        if (dice.oneIn(6)) {
            text.append(BYTE_ORDER_MARK);
        }
        for (int i = dice.oneIn(4) ? dice.between(1, 3) : 0; i > 0; i--) {
            line("# " + (honest ? "made for a test" : Hostile.text(dice)));
        }
        if (dice.oneIn(2)) {
            line(columns >= 2 ? "time [s]" + (separator + "acceleration [m/s2]").repeat(columns - 1) : honest
                    ? "value" : Hostile.text(dice));
        }
        int rows = 1 + dice.size(Math.max(1, largest / 24));
        int lie = honest ? -1 : dice.below(rows);
        for (int i = 0; i < rows; i++) {
            line(i == lie ? lie(i) : row(i));
        }
        return text.toString().getBytes(charset());
    }

    private Charset charset() {
        return switch (dice.below(honest ? 2 : 8)) {
            case 2 -> StandardCharsets.UTF_16; // with its byte order mark
            case 3 -> StandardCharsets.UTF_16LE;
            case 4 -> StandardCharsets.ISO_8859_1;
            default -> StandardCharsets.UTF_8;
        };
    }

    private void line(String line) {
        text.append(line).append(lineEnd);
    }

    private String row(int index) {
        String value = number(Math.sin(0.7 * index) * 3);
        return columns == 1 ? value : number(index * step) + (separator + value).repeat(columns - 1);
    }

    private String number(double value) {
        String point = Double.toString(value);
        return decimalComma ? point.replace('.', ',') : point;
    }

    /** A line that breaks one of the rules. */
    private String lie(int index) {
        return switch (dice.below(9)) {
            case 0 -> Hostile.number(dice) + separator + Hostile.number(dice);
            case 1 -> number(index * step) + separator + Hostile.text(dice);
            case 2 -> Hostile.token(dice, dice.oneIn(20) ? 60_000 : 400) + separator + "1";
            case 3 -> number(index * step) + separator + Hostile.token(dice, dice.oneIn(20) ? 60_000 : 400);
            case 4 -> row(index) + separator + row(index);
            case 5 -> number(Hostile.real(dice)) + separator + number(Hostile.real(dice));
            case 6 -> "\"" + row(index).replace(separator, "\"" + separator + "\"");
            case 7 -> "";
            default -> Hostile.text(dice);
        };
    }
}
