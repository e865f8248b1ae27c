package dev.vibra.severity;

import dev.vibra.internal.TableText;
import dev.vibra.evidence.Confidence;
import dev.vibra.internal.Require;
import dev.vibra.quantity.Detector;
import dev.vibra.quantity.Quantity;
import dev.vibra.quantity.Unit;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One row of limits as it stands in the tables; {@code support} is null where the row holds for any.
 *
 * @param perRootSpeed whether the limits stand for the numbers over the square root of the speed in r/min
 */
record LimitRow(String standard, String clause, String group, Support support, Quantity quantity, Detector detector,
        Unit unit, List<Boundary> boundaries, boolean perRootSpeed, Confidence confidence, String note)
        implements Serializable {
    private static final String PER_ROOT_SPEED = "/sqrt(n)";

    private static final Map<String, Zone[]> BOUNDARY_COLUMNS = Map.of(
            "A/B", new Zone[] {Zone.A, Zone.B}, "B/C", new Zone[] {Zone.B, Zone.C}, "C/D", new Zone[] {Zone.C, Zone.D});

    LimitRow {
        Objects.requireNonNull(standard, "standard");
        Objects.requireNonNull(clause, "clause");
        Objects.requireNonNull(group, "group");
        Objects.requireNonNull(quantity, "quantity");
        Objects.requireNonNull(detector, "detector");
        Objects.requireNonNull(unit, "unit");
        boundaries = Require.copy("boundaries", boundaries);
        Objects.requireNonNull(confidence, "confidence");
        Objects.requireNonNull(note, "note");
    }

    /** Written out: the JDK holds the class loader of the record whose generated one ran last. */
    @Override
    public boolean equals(Object other) {
        return other instanceof LimitRow that && standard.equals(that.standard) && clause.equals(that.clause)
                && group.equals(that.group) && support == that.support && quantity == that.quantity
                && detector == that.detector && unit == that.unit && boundaries.equals(that.boundaries)
                && perRootSpeed == that.perRootSpeed && confidence == that.confidence && note.equals(that.note);
    }

    /** Hashes what {@link #equals(Object)} compares. */
    @Override
    public int hashCode() {
        return Objects.hash(standard, clause, group, support, quantity, detector, unit, boundaries,
                perRootSpeed, confidence, note);
    }

    static LimitRow read(TableText.Row row) {
        Quantity quantity = row.read("quantity", LimitRow::quantity);
        Unit unit = row.read("unit", Unit::ofSymbol);
        if (unit.quantity() != quantity) {
            throw row.failure("column 'unit': unit must measure " + quantity + ": " + unit);
        }
        return new LimitRow(row.text("standard"), row.text("clause"), row.text("class"),
                row.read("support", LimitRow::support), quantity, row.read("detector", LimitRow::detector), unit,
                boundaries(row), perRootSpeed(row), row.read("confidence", Confidence::ofName), row.text("note"));
    }

    /** The row with its limits as numbers; the speed is known if they follow it. */
    LimitRow at(Machine machine) {
        if (!perRootSpeed) {
            return this;
        }
        double divisor = Math.sqrt(machine.speed().orElseThrow().revolutionsPerMinute());
        List<Boundary> fixed = boundaries.stream()
                .map(each -> new Boundary(each.better(), each.worse(), each.limit() / divisor)).toList();
        return new LimitRow(standard, clause, group, support, quantity, detector, unit, fixed, false, confidence, note);
    }

    boolean holdsFor(ClassRule rule, Support wanted) {
        return standard.equals(rule.standard()) && group.equals(rule.group()) && (support == null || support == wanted);
    }

    /** Null stands for any. */
    static Support support(String text) {
        return text.equals("any") ? null : Support.ofName(text);
    }

    private static Quantity quantity(String text) {
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isMotion() && quantity.toString().equals(text)) {
                return quantity;
            }
        }
        throw new IllegalArgumentException("quantity must be one of displacement, velocity, acceleration: " + text);
    }

    private static Detector detector(String text) {
        for (Detector detector : Detector.values()) {
            if (detector.toString().equals(text)) {
                return detector;
            }
        }
        throw new IllegalArgumentException("detector must be one of rms, 0-peak, peak-peak: " + text);
    }

    /** A cell with "-" leaves a boundary out; the best zone is then the better side of the first one given. */
    private static List<Boundary> boundaries(TableText.Row row) {
        List<Boundary> boundaries = new ArrayList<>();
        for (String column : List.of("A/B", "B/C", "C/D")) {
            Zone[] zones = BOUNDARY_COLUMNS.get(column);
            if (!row.text(column).equals("-")) {
                boundaries.add(row.read(column, text -> new Boundary(zones[0], zones[1], number(text))));
            }
        }
        checkOrder(row, boundaries);
        return List.copyOf(boundaries);
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text.replace(PER_ROOT_SPEED, ""));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("limit must be a number or '-': " + text, e);
        }
    }

    /** All limits of a row follow the speed, or none. */
    private static boolean perRootSpeed(TableText.Row row) {
        List<String> given = BOUNDARY_COLUMNS.keySet().stream().map(row::text).filter(text -> !text.equals("-"))
                .toList();
        boolean any = given.stream().anyMatch(text -> text.endsWith(PER_ROOT_SPEED));
        if (any && !given.stream().allMatch(text -> text.endsWith(PER_ROOT_SPEED))) {
            throw row.failure("either all limits of a row must follow the speed or none: "
                    + String.join(", ", given.stream().sorted().toList()));
        }
        return any;
    }

    private static void checkOrder(TableText.Row row, List<Boundary> boundaries) {
        if (boundaries.isEmpty()) {
            throw row.failure("a row of [limits] must have a limit");
        }
        for (int i = 1; i < boundaries.size(); i++) {
            Boundary lower = boundaries.get(i - 1);
            Boundary upper = boundaries.get(i);
            if (lower.worse() != upper.better() || !(lower.limit() < upper.limit())) {
                throw row.failure("limits must rise without a gap: " + lower + ", " + upper);
            }
        }
    }
}
