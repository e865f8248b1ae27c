package dev.vibra.severity;

import dev.vibra.internal.TableText;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** All rows of the tables by section, in their order, with the check that they refer to one another. */
record TableRows(List<StandardRow> standards, List<ScopeRule> scopes, List<ClassRule> classes, List<BandRule> bands,
        List<LimitRow> limits, List<Rating> ratings, List<OperationRule> operations, List<DutyRule> duties,
        List<SeeAlso> seeAlso) {
    private static final Map<String, List<String>> COLUMNS = columns();

    /** A standard with its edition, and the fact that parts its classes where several fit. */
    record StandardRow(String name, String partedBy) {
        static StandardRow read(TableText.Row row) {
            String name = row.text("standard");
            if (!name.matches(".+:\\S+")) {
                throw row.failure("standard must carry its edition, as in ISO 20816-3:2022: " + name);
            }
            return new StandardRow(name, row.text("parted by"));
        }
    }

    static TableRows parse(String text) {
        TableText tables = TableText.parse("criteria tables", text, COLUMNS);
        return new TableRows(read(tables, "standards", StandardRow::read), read(tables, "scope", ScopeRule::read),
                read(tables, "classes", ClassRule::read), read(tables, "bands", BandRule::read),
                read(tables, "limits", LimitRow::read), read(tables, "ratings", Rating::read),
                read(tables, "operation", OperationRule::read), read(tables, "duties", DutyRule::read),
                read(tables, "see also", SeeAlso::read)).checked();
    }

    /** These rows, then the other ones. */
    TableRows before(TableRows other) {
        return new TableRows(joined(standards, other.standards), joined(scopes, other.scopes),
                joined(classes, other.classes), joined(bands, other.bands), joined(limits, other.limits),
                joined(ratings, other.ratings), joined(operations, other.operations), joined(duties, other.duties),
                joined(seeAlso, other.seeAlso));
    }

    /** Sections in the order in which a reader meets them. */
    private static Map<String, List<String>> columns() {
        Map<String, List<String>> columns = new LinkedHashMap<>();
        columns.put("standards", List.of("standard", "title", "parted by=group"));
        columns.put("scope", List.of("standard", "kinds", "power kW", "speed r/min"));
        columns.put("classes",
                List.of("standard", "class", "kinds", "power kW", "speed r/min=any", "shaft height mm", "support",
                        "chosen", "remark"));
        columns.put("bands", List.of("standard", "class=any", "speed r/min", "band Hz"));
        columns.put("limits", List.of("standard", "clause", "class", "support", "quantity", "detector", "unit",
                "A/B", "B/C", "C/D", "confidence", "note"));
        columns.put("ratings", List.of("standard", "class=any", "zone", "rating", "meaning", "limit",
                "acceptance=no"));
        columns.put("operation", List.of("standard", "clause", "class", "change", "highest alarm", "highest trip",
                "confidence"));
        columns.put("duties", List.of("standard", "duty", "power kW", "group"));
        columns.put("see also", List.of("kinds", "power kW", "speed r/min=any", "remark"));
        return Collections.unmodifiableMap(columns);
    }

    private static <T> List<T> read(TableText tables, String section, Function<TableText.Row, T> reader) {
        return tables.rows(section).stream().map(reader).collect(Collectors.toUnmodifiableList());
    }

    private TableRows checked() {
        for (ClassRule rule : classes) {
            require(limits.stream().anyMatch(row -> row.standard().equals(rule.standard())
                    && row.group().equals(rule.group())), "[limits]", rule.standard() + " " + rule.group());
        }
        for (LimitRow row : limits) {
            String standard = row.standard();
            require(names().contains(standard), "[standards]", standard);
            require(scopes.stream().anyMatch(rule -> rule.standard().equals(standard)), "[scope]", standard);
            require(bands.stream().anyMatch(rule -> rule.standard().equals(standard)), "[bands]", standard);
            require(classes.stream().anyMatch(rule -> rule.standard().equals(standard)
                    && rule.group().equals(row.group())), "[classes]", standard + " " + row.group());
        }
        return this;
    }

    /** Standards in the order of precedence. */
    List<String> names() {
        return standards.stream().map(StandardRow::name).toList();
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
}
