package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Level;
import dev.vibra.quantity.Unit;
import dev.vibra.uncertainty.UncertaintyBudget;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** What holds for every criterion of the tables and every level. */
class SeverityProperties {
    @Provide
    Arbitrary<Criterion> criteria() {
        return Arbitraries.of(CriterionTables.shipped().criteria());
    }

    /** In parts of the highest limit, so that all zones come up. */
    private static Level level(Criterion criterion, double parts) {
        Boundary highest = criterion.boundaries().get(criterion.boundaries().size() - 1);
        return Level.ofSi(parts * criterion.limitSi(highest), criterion.quantity(), criterion.detector())
                .within(criterion.band());
    }

    @Property
    void aHigherLevelIsNeverInABetterZone(@ForAll("criteria") Criterion criterion,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 3) double one, @ForAll @Scale(7) @DoubleRange(min = 0,
            max = 3) double other) {
        Zone lower = criterion.zoneOf(level(criterion, Math.min(one, other)));
        Zone higher = criterion.zoneOf(level(criterion, Math.max(one, other)));
        assertFalse(lower.isWorseThan(higher));
    }

    /** Zones that the criterion tells apart, best first. */
    private static List<Zone> zones(Criterion criterion) {
        List<Zone> zones = new ArrayList<>(List.of(criterion.boundaries().get(0).better()));
        criterion.boundaries().forEach(boundary -> zones.add(boundary.worse()));
        return zones;
    }

    @Property
    void aLevelMadeForAZoneLiesInIt(@ForAll("criteria") Criterion criterion, @ForAll Zone zone,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 1, minIncluded = false) double fraction) {
        Assume.that(zones(criterion).contains(zone));
        assertEquals(zone, criterion.zoneOf(criterion.levelIn(zone, fraction)));
    }

    @Property
    void theEndOfAZoneIsItsLimit(@ForAll("criteria") Criterion criterion, @ForAll Zone zone) {
        int place = zones(criterion).indexOf(zone);
        Assume.that(place >= 0);
        Level end = criterion.levelIn(zone, 1);
        int last = criterion.limits().size();
        double expected = place == last ? 2 * criterion.limits().get(last - 1) : criterion.limits().get(place);
        assertEquals(expected, end.in(criterion.unit()), 1e-12 * expected);
        assertEquals(zone, criterion.zoneOf(end));
    }

    /** A value so near a limit that a unit's rounding decides is left out: it is no longer the same double. */
    @Property
    void theUnitOfTheReadingDoesNotMatter(@ForAll("criteria") Criterion criterion,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 3) double parts) {
        Level level = level(criterion, parts);
        boolean besideALimit = criterion.boundaries().stream()
                .anyMatch(boundary -> Math.abs(level.si() / criterion.limitSi(boundary) - 1) < 1e-14);
        List<Unit> units = Arrays.stream(Unit.values()).filter(unit -> unit.quantity() == criterion.quantity())
                .collect(Collectors.toList());
        assertTrue(units.size() > 1);
        for (Unit unit : units) {
            Level read = Level.of(level.in(unit), unit, level.detector()).within(criterion.band());
            assertEquals(level.si(), read.si(), 1e-15 * level.si());
            assertTrue(besideALimit || criterion.zoneOf(read) == criterion.zoneOf(level), unit::toString);
        }
    }

    @Property
    void theZonesWithinUncertaintyHoldTheZoneAndGrowWithIt(@ForAll("criteria") Criterion criterion,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 3) double parts, @ForAll @Scale(7) @DoubleRange(min = 0,
            max = 2) double small,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 2) double more) {
        Measurement measurement = Measurement.of(level(criterion, parts));
        UncertaintyBudget budget = UncertaintyBudget.empty().withExpanded("sensor", small);
        Judgement one = criterion.judge(measurement.withUncertainty(budget));
        Judgement both = criterion.judge(measurement.withUncertainty(budget.withExpanded("mounting", more)));
        assertTrue(one.zonesWithinUncertainty().contains(one.zone()));
        assertTrue(both.zonesWithinUncertainty().containsAll(one.zonesWithinUncertainty()));
        UncertaintyBudget none = UncertaintyBudget.empty().withStandard("none", 0);
        assertEquals(List.of(one.zone()), criterion.judge(measurement.withUncertainty(none)).zonesWithinUncertainty());
    }

    @Property
    void thePrintedValueLiesInThePrintedZone(@ForAll("criteria") Criterion criterion,
            @ForAll @Scale(7) @DoubleRange(min = 0, max = 3) double parts) {
        Judgement judgement = criterion.judge(Measurement.of(level(criterion, parts)));
        double printed = Double.parseDouble(judgement.toString().split(": ")[1].split(" ")[0]);
        int worse = (int) criterion.limits().stream().filter(limit -> printed > limit).count();
        assertEquals(judgement.zone(), zones(criterion).get(worse), judgement::toString);
    }
}
