package dev.vibra.severity;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The severity criteria as tables: limits, frequency bands, and the rules that choose among them.
 *
 * <p>{@link #shipped()} are the tables of the library, one text file with the limits as they are published and their
 * confidence. {@link #parse(String)} reads tables of your own in the same form, from a standard that you own for
 * example, and {@link #preferring(CriterionTables)} puts them first. Immutable.
 *
 * <p>The text has the sections {@code [standards]}, {@code [scope]}, {@code [classes]}, {@code [bands]}, {@code
 * [limits]}, and where they are needed {@code [ratings]} (names of a standard's own in place of zones), {@code
 * [operation]} (change, alarm, trip), {@code [duties]} (words that stand for a group) and {@code [see also]}; each
 * begins with a line of column names, cells stand between bars, {@code #} begins a comment. The file {@code
 * criteria.txt} beside this class shows and explains them all.
 *
 * @see "ISO 20816-3:2022; ISO 10816-3:2009; ISO 10816-1:1995, through public secondary sources"
 */
public final class CriterionTables {
    private static final String ANY = "any";
    private static final CriterionTables SHIPPED = parse(resource());

    private final TableRows rows;
    private final Map<String, List<ClassRule>> classesOf;
    private final Map<String, List<LimitRow>> limitsOf;
    private final Map<String, List<ScopeRule>> scopesOf;
    private final Map<String, List<BandRule>> bandsOf;

    private CriterionTables(TableRows rows) {
        this.rows = rows;
        classesOf = rows.classes().stream().collect(Collectors.groupingBy(ClassRule::standard));
        limitsOf = rows.limits().stream().collect(Collectors.groupingBy(LimitRow::standard));
        scopesOf = rows.scopes().stream().collect(Collectors.groupingBy(ScopeRule::standard));
        bandsOf = rows.bands().stream().collect(Collectors.groupingBy(BandRule::standard));
    }

    /** {@return the tables of the library} */
    public static CriterionTables shipped() {
        return SHIPPED;
    }

    /**
     * Reads tables from text.
     *
     * @param text tables in the form described above
     * @return the tables
     * @throws IllegalArgumentException if the text is not in that form, with line and column, or if a standard with
     *     limits lacks its row in another section
     */
    public static CriterionTables parse(String text) {
        return new CriterionTables(TableRows.parse(text));
    }

    /**
     * Puts other tables before these: where both have a standard that fits, that of the other tables is chosen.
     *
     * @param other tables to look at first
     * @return both together
     * @throws IllegalArgumentException if both have the same standard in the same edition
     */
    public CriterionTables preferring(CriterionTables other) {
        Objects.requireNonNull(other, "other");
        List<String> twice = new ArrayList<>(other.standards());
        twice.retainAll(standards());
        if (!twice.isEmpty()) {
            throw new IllegalArgumentException("standards must not be in both tables: " + String.join(", ", twice));
        }
        return new CriterionTables(other.rows.before(rows));
    }

    /**
     * Chooses the criteria that hold for a machine.
     *
     * @param machine what is known of the machine
     * @return the choice with its reason; without criteria if none holds or a fact is missing
     */
    public Choice choose(Machine machine) {
        Objects.requireNonNull(machine, "machine");
        return new Chooser(this, machine).byItself();
    }

    /**
     * Takes the criterion asked for, whether the machine lies in its scope or not, see {@link Choice#outOfScope()}.
     *
     * @param machine what is known of the machine
     * @param request standard, and edition and group if need be
     * @return the choice with its reason; without criteria if the request is refused or a fact is missing
     */
    public Choice choose(Machine machine, CriterionRequest request) {
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(request, "request");
        return new Chooser(this, machine).onRequest(request);
    }

    /**
     * Returns the standards with their editions, in the order of precedence.
     *
     * @return unmodifiable list, as in {@code ISO 20816-3:2022}
     */
    public List<String> standards() {
        return rows.names();
    }

    /**
     * Returns every row of limits with every band in which it can hold; rows and bands that follow the speed are left
     * out, since they become numbers only for a machine.
     *
     * @return unmodifiable list in the order of the tables
     */
    public List<Criterion> criteria() {
        List<Criterion> criteria = new ArrayList<>();
        for (LimitRow row : rows.limits()) {
            if (!row.perRootSpeed()) {
                bands(row.standard(), row.group()).filter(rule -> !rule.followsSpeed())
                        .map(rule -> criterion(row, rule, Machine.unknown())).forEach(criteria::add);
            }
        }
        return Collections.unmodifiableList(criteria);
    }

    /** One row for one machine, with all that the other tables say of it. */
    Criterion criterion(LimitRow row, BandRule band, Machine machine) {
        LimitRow fixed = row.at(machine);
        List<Rating> names = rows.ratings().stream().filter(rating -> rating.holdsFor(row)).toList();
        OperatingLimits operating = rows.operations().stream()
                .filter(rule -> rule.standard().equals(row.standard()) && anyOr(row.group(), rule.group())).findFirst()
                .map(rule -> rule.of(fixed.boundaries())).orElse(null);
        return new Criterion(fixed, band.band(machine), names, operating);
    }

    List<LimitRow> limits(String standard) {
        return limitsOf.getOrDefault(standard, List.of());
    }

    List<ClassRule> classes(String standard) {
        return classesOf.getOrDefault(standard, List.of());
    }

    List<DutyRule> duties(String standard) {
        return rows.duties().stream().filter(rule -> rule.standard().equals(standard)).collect(Collectors.toList());
    }

    String dutyNames(String standard) {
        return duties(standard).stream().map(DutyRule::duty).distinct().collect(Collectors.joining(", "));
    }

    /** The rows of the scope that name the machine's kind. */
    List<ScopeRule> scopes(String standard, Machine machine) {
        return scopesOf.getOrDefault(standard, List.of()).stream().filter(rule -> rule.kinds().holds(machine)).toList();
    }

    /** The kind that stands for a machine of another kind of which the standard is asked all the same. */
    MachineKind standIn(String standard) {
        List<MachineKind> kinds = scopesOf.get(standard).stream().flatMap(rule -> rule.kinds().kinds().stream())
                .toList();
        return kinds.contains(MachineKind.OTHER) ? MachineKind.OTHER : kinds.get(0);
    }

    /** The fact that tells the classes of a standard apart where several fit, as in {@code category}. */
    String partedBy(String standard) {
        return rows.standards().stream().filter(row -> row.name().equals(standard)).findFirst().orElseThrow()
                .partedBy();
    }

    /** The first rule for a class whose fit is the wanted one. */
    Optional<BandRule> band(String standard, String group, Machine machine, Fit wanted) {
        return bands(standard, group).filter(rule -> rule.speed().fit(machine) == wanted).findFirst();
    }

    /** The rules that name the class, or else those for any class. */
    private Stream<BandRule> bands(String standard, String group) {
        List<BandRule> all = bandsOf.getOrDefault(standard, List.of());
        boolean own = all.stream().anyMatch(rule -> rule.group().equals(group));
        return all.stream().filter(rule -> rule.group().equals(own ? group : ANY));
    }

    private static boolean anyOr(String group, String cell) {
        return cell.equals(ANY) || cell.equals(group);
    }

    List<String> seeAlso(Machine machine) {
        return rows.seeAlso().stream().filter(row -> row.holds(machine)).map(SeeAlso::remark).toList();
    }

    private static String resource() {
        try (InputStream in = CriterionTables.class.getResourceAsStream("criteria.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns how much is in the tables, as in {@code 20 rows of limits from ISO 20816-3:2022, ISO 10816-1:1995}. */
    @Override
    public String toString() {
        return rows.limits().size() + " rows of limits from " + String.join(", ", standards());
    }
}
