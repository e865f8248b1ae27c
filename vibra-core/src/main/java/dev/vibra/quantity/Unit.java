package dev.vibra.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Unit of a sample or a level where it enters or leaves the library; inside, everything is SI.
 *
 * <p>{@code value in SI = value in this unit · toSi()}. Exact by definition: standard gravity 9.80665 m/s² (3rd CGPM,
 * 1901) and the inch 25.4 mm (international yard and pound agreement, 1959).
 */
public enum Unit {
    /** Metre per second squared. */
    M_PER_S2(Quantity.ACCELERATION, "m/s²", "m/s2", 1),
    /** Standard gravity, 9.80665 m/s². */
    G(Quantity.ACCELERATION, "g", "g", 9.80665),
    /** Thousandth of standard gravity. */
    MILLI_G(Quantity.ACCELERATION, "mg", "mg", 9.80665e-3),
    /** Millimetre per second squared. */
    MM_PER_S2(Quantity.ACCELERATION, "mm/s²", "mm/s2", 1e-3),
    /** Inch per second squared. */
    IN_PER_S2(Quantity.ACCELERATION, "in/s²", "in/s2", 0.0254),
    /** Metre per second. */
    M_PER_S(Quantity.VELOCITY, "m/s", "m/s", 1),
    /** Millimetre per second. */
    MM_PER_S(Quantity.VELOCITY, "mm/s", "mm/s", 1e-3),
    /** Inch per second. */
    IN_PER_S(Quantity.VELOCITY, "in/s", "in/s", 0.0254),
    /** Metre. */
    M(Quantity.DISPLACEMENT, "m", "m", 1),
    /** Millimetre. */
    MM(Quantity.DISPLACEMENT, "mm", "mm", 1e-3),
    /** Micrometre. */
    UM(Quantity.DISPLACEMENT, "µm", "um", 1e-6),
    /** Inch. */
    IN(Quantity.DISPLACEMENT, "in", "in", 0.0254),
    /** Thousandth of an inch, 25.4 µm. */
    MIL(Quantity.DISPLACEMENT, "mil", "mil", 25.4e-6),
    /** Volt. */
    V(Quantity.VOLTAGE, "V", "V", 1),
    /** Millivolt. */
    MV(Quantity.VOLTAGE, "mV", "mV", 1e-3);

    private final Quantity quantity;
    private final String symbol;
    private final String plainSymbol;
    private final double toSi;

    Unit(Quantity quantity, String symbol, String plainSymbol, double toSi) {
        this.quantity = quantity;
        this.symbol = symbol;
        this.plainSymbol = plainSymbol;
        this.toSi = toSi;
    }

    /**
     * Returns what this unit measures.
     *
     * @return the quantity
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the symbol as printed, for example {@code m/s²}.
     *
     * @return the printed symbol
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Returns the symbol in plain letters for files, for example {@code m/s2} or {@code um}.
     *
     * @return the symbol in ASCII
     */
    public String plainSymbol() {
        return plainSymbol;
    }

    /**
     * Returns the factor that turns a value in this unit into SI.
     *
     * @return SI units in one of this unit
     */
    public double toSi() {
        return toSi;
    }

    /**
     * Finds a unit by its printed or plain symbol, upper and lower case told apart.
     *
     * @param symbol symbol, for example {@code mm/s} or {@code µm}
     * @return the unit
     * @throws IllegalArgumentException if no unit has that symbol; the message lists all symbols
     */
    public static Unit ofSymbol(String symbol) {
        Objects.requireNonNull(symbol, "symbol");
        String wanted = symbol.replace('\u03bc', '\u00b5'); // Greek letter mu, where the micro sign is meant.
        List<String> known = new ArrayList<>();
        for (Unit unit : values()) {
            if (unit.symbol.equals(wanted) || unit.plainSymbol.equals(wanted)) {
                return unit;
            }
            known.add(unit.plainSymbol);
        }
        throw new IllegalArgumentException("unit must be one of " + String.join(", ", known) + ": " + symbol);
    }

    /** Returns the printed symbol. */
    @Override
    public String toString() {
        return symbol;
    }
}
