package dev.vibra.severity;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The severity criteria as tables: limits, frequency bands, and the rules that choose among them.
 *
 * <p>{@link #shipped()} are the tables of the library, one text file with the limits as they are published and their
 * confidence. {@link #parse(String)} reads tables of your own in the same form, from a standard that you own for
 * example, and {@link #preferring(CriterionTables)} puts them first. Immutable.
 *
 * <p>The text has the sections {@code [standards]}, {@code [scope]}, {@code [classes]}, {@code [bands]}, {@code
 * [limits]} and {@code [see also]}; each begins with a line of column names, cells stand between bars, {@code #} begins
 * a comment. The file {@code criteria.txt} beside this class shows and explains them all.
 *
 * @see "ISO 20816-3:2022; ISO 10816-3:2009; ISO 10816-1:1995, through public secondary sources"
 */
public final class CriterionTables {
    private static final Map<String, List<String>> COLUMNS = columns();

    private static final CriterionTables SHIPPED = parse(resource());

    private final List<String> standards;
    private final List<ScopeRule> scopes;
    private final List<ClassRule> classes;
    private final List<BandRule> bands;
    private final List<LimitRow> limits;
    private final List<SeeAlso> seeAlso;

    private CriterionTables(List<String> standards, List<ScopeRule> scopes, List<ClassRule> classes,
            List<BandRule> bands, List<LimitRow> limits, List<SeeAlso> seeAlso) {
        this.standards = standards;
        this.scopes = scopes;
        this.classes = classes;
        this.bands = bands;
        this.limits = limits;
        this.seeAlso = seeAlso;
    }

    /**
     * Returns the tables of the library.
     *
     * @return the tables
     */
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
        TableText tables = TableText.parse(text, COLUMNS);
        CriterionTables result = new CriterionTables(
                read(tables, "standards", CriterionTables::standard), read(tables, "scope", ScopeRule::read),
                read(tables, "classes", ClassRule::read), read(tables, "bands", BandRule::read),
                read(tables, "limits", LimitRow::read), read(tables, "see also", SeeAlso::read));
        result.checkReferences();
        return result;
    }

    /**
     * Puts other tables before these: where both have a standard that fits, that of the other tables is chosen.
     *
     * @param other tables to look at first
     * @return both together
     * @throws IllegalArgumentException if both have the same standard in the same edition
     */
    public CriterionTables preferring(CriterionTables other) {
        List<String> twice = new ArrayList<>(other.standards);
        twice.retainAll(standards);
        if (!twice.isEmpty()) {
            throw new IllegalArgumentException("standards must not be in both tables: " + String.join(", ", twice));
        }
        return new CriterionTables(joined(other.standards, standards), joined(other.scopes, scopes),
                joined(other.classes, classes), joined(other.bands, bands), joined(other.limits, limits),
                joined(other.seeAlso, seeAlso));
    }

    /**
     * Chooses the criteria that hold for a machine.
     *
     * @param machine what is known of the machine
     * @return the choice with its reason; without criteria if none holds or a fact is missing
     */
    public Choice choose(Machine machine) {
        return new Chooser(this, machine).byItself();
    }

    /**
     * Takes the criterion asked for, if the machine lies in its scope.
     *
     * @param machine what is known of the machine
     * @param request standard, and edition and group if need be
     * @return the choice with its reason; without criteria if the request is refused or a fact is missing
     */
    public Choice choose(Machine machine, CriterionRequest request) {
        return new Chooser(this, machine).onRequest(request);
    }

    /**
     * Returns the standards with their editions, in the order of precedence.
     *
     * @return unmodifiable list, as in {@code ISO 20816-3:2022}
     */
    public List<String> standards() {
        return standards;
    }

    /**
     * Returns every row of limits with every band in which it can hold.
     *
     * @return unmodifiable list in the order of the tables
     */
    public List<Criterion> criteria() {
        List<Criterion> criteria = new ArrayList<>();
        for (LimitRow row : limits) {
            bands.stream().filter(rule -> rule.standard().equals(row.standard()))
                    .map(rule -> new Criterion(row, rule.band())).forEach(criteria::add);
        }
        return Collections.unmodifiableList(criteria);
    }

    List<LimitRow> limits() {
        return limits;
    }

    List<ClassRule> classes(String standard) {
        return classes.stream().filter(rule -> rule.standard().equals(standard)).collect(Collectors.toList());
    }

    Optional<ScopeRule> scope(String standard, Machine machine) {
        return scopes.stream().filter(rule -> rule.standard().equals(standard) && rule.kinds().holds(machine))
                .findFirst();
    }

    /** The first rule whose fit is the wanted one. */
    Optional<BandRule> band(String standard, Machine machine, Fit wanted) {
        return bands.stream()
                .filter(rule -> rule.standard().equals(standard) && rule.speed().fit(machine) == wanted).findFirst();
    }

    List<String> seeAlso(Machine machine) {
        return seeAlso.stream().filter(row -> row.holds(machine)).map(SeeAlso::remark).collect(Collectors.toList());
    }

    /** Sections in the order in which a reader meets them. */
    private static Map<String, List<String>> columns() {
        Map<String, List<String>> columns = new LinkedHashMap<>();
        columns.put("standards", List.of("standard", "title"));
        columns.put("scope", List.of("standard", "kinds", "power kW", "speed r/min"));
        columns.put("classes",
                List.of("standard", "class", "kinds", "power kW", "shaft height mm", "support", "chosen", "remark"));
        columns.put("bands", List.of("standard", "speed r/min", "band Hz"));
        columns.put("limits", List.of("standard", "clause", "class", "support", "quantity", "detector", "unit",
                "A/B", "B/C", "C/D", "confidence", "note"));
        columns.put("see also", List.of("kinds", "power kW", "remark"));
        return Collections.unmodifiableMap(columns);
    }

    private static <T> List<T> read(TableText tables, String section, Function<TableText.Row, T> reader) {
        return tables.rows(section).stream().map(reader).collect(Collectors.toUnmodifiableList());
    }

    private static String standard(TableText.Row row) {
        String standard = row.text("standard");
        if (!standard.matches(".+:\\S+")) {
            throw TableText.failure(row.line(), "standard must carry its edition, as in ISO 20816-3:2022: " + standard);
        }
        return standard;
    }

    private void checkReferences() {
        for (ClassRule rule : classes) {
            require(limits.stream().anyMatch(row -> row.standard().equals(rule.standard())
                    && row.group().equals(rule.group())), "[limits]", rule.standard() + " " + rule.group());
        }
        for (LimitRow row : limits) {
            String standard = row.standard();
            require(standards.contains(standard), "[standards]", standard);
            require(scopes.stream().anyMatch(rule -> rule.standard().equals(standard)), "[scope]", standard);
            require(bands.stream().anyMatch(rule -> rule.standard().equals(standard)), "[bands]", standard);
            require(classes.stream().anyMatch(rule -> rule.standard().equals(standard)
                    && rule.group().equals(row.group())), "[classes]", standard + " " + row.group());
        }
    }

    private static void require(boolean present, String section, String what) {
        if (!present) {
            throw new IllegalArgumentException("criteria tables: " + section + " must have a row for " + what);
        }
    }

    private static <T> List<T> joined(List<T> first, List<T> second) {
        List<T> both = new ArrayList<>(first);
        both.addAll(second);
        return List.copyOf(both);
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
        return limits.size() + " rows of limits from " + String.join(", ", standards);
    }
}
