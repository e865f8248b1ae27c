package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Walks every combination of the facts over every edge of the rules, against the rules written out a second time here,
 * as plain conditions: groups and scope of ISO 20816-3:2022 and 10816-3:2009, classes of ISO 10816-1:1995 Annex B.
 */
class ChoiceWalkTest {
    private static final Double[] POWERS = {null, 0.37, 15.0, Math.nextUp(15.0), 37.0, 75.0, 75.1, 300.0, 300.1, 3000.0,
        3000.1, 40_000.0, 40_001.0, 50_000.0, 50_001.0};
    private static final Double[] HEIGHTS = {null, 132.0, Math.nextDown(160.0), 160.0, 225.0, Math.nextDown(315.0),
            315.0,
        560.0};
    /**
     * Shaft height decides for electrical machines only; one that is given and one that isn't show it for the others.
     */
    private static final Double[] TWO_HEIGHTS = {null, 225.0};
    private static final Double[] SPEEDS = {null, 100.0, 119.9, 120.0, 599.9, 600.0, 600.1, 1480.0, 12_000.0, 12_000.1,
        15_000.0, 15_000.1, 30_000.0, 30_000.1};
    private static final Set<MachineKind> APART = EnumSet.of(MachineKind.HYDRAULIC_TURBINE, MachineKind.WIND_TURBINE,
            MachineKind.RECIPROCATING_COMPRESSOR, MachineKind.RECIPROCATING_ENGINE, MachineKind.GENERATING_SET);

    private int walked;

    /** One combination; null is not known. */
    private record Facts(MachineKind kind, Double power, Double height, Double speed, Support support) {
        Machine machine() {
            Machine machine = kind == null ? Machine.unknown() : Machine.of(kind);
            machine = power == null ? machine : machine.withRatedPowerKilowatts(power);
            machine = height == null ? machine : machine.withShaftHeightMillimetres(height);
            machine = speed == null ? machine : machine.withSpeed(RotationSpeed.ofRevolutionsPerMinute(speed));
            return support == null ? machine : machine.withSupport(support);
        }

        boolean electrical() {
            return kind == MachineKind.ELECTRIC_MOTOR || kind == MachineKind.GENERATOR;
        }

        List<Support> supports() {
            return support == null ? List.of(Support.RIGID, Support.FLEXIBLE) : List.of(support);
        }
    }

    private static Double[] heights(MachineKind kind) {
        return kind != null && kind.isElectrical() ? HEIGHTS : TWO_HEIGHTS;
    }

    private void walk(Consumer<Facts> check) {
        List<MachineKind> kinds = new ArrayList<>(Arrays.asList(MachineKind.values()));
        kinds.add(null);
        for (MachineKind kind : kinds) {
            for (Double power : POWERS) {
                for (Double height : heights(kind)) {
                    for (Double speed : SPEEDS) {
                        for (Support support : new Support[] {null, Support.RIGID, Support.FLEXIBLE}) {
                            check.accept(new Facts(kind, power, height, speed, support));
                            walked++;
                        }
                    }
                }
            }
        }
    }

    /** "1", "2", "none" or "missing". */
    private static String groupOfPart3(Facts facts, double highestSpeed, double highestPower) {
        if (APART.contains(facts.kind())) {
            return "none";
        }
        if (facts.speed() != null && (facts.speed() < 120 || facts.speed() > highestSpeed)) {
            return "none";
        }
        if (facts.power() != null && (facts.power() <= 15 || facts.power() > highestPower)) {
            return "none";
        }
        if (facts.electrical() && facts.height() != null) {
            return facts.height() >= 315 ? "1" : facts.height() >= 160 ? "2" : "none";
        }
        return facts.power() == null ? "missing" : facts.power() > 300 ? "1" : "2";
    }

    private static double highestPowerOf2022(MachineKind kind) {
        if (kind == MachineKind.STEAM_TURBINE || kind == MachineKind.GENERATOR) {
            return 40_000;
        }
        return highestPowerOf2009(kind) == 3000 ? 3000 : Double.POSITIVE_INFINITY;
    }

    private static double highestPowerOf2009(MachineKind kind) {
        return kind == MachineKind.GAS_TURBINE || kind == MachineKind.TURBINE ? 3000 : 50_000;
    }

    /** Classes for the supports in question, or "none" or "missing". */
    private static Set<String> classesOfPart1(Facts facts, boolean onRequest) {
        if (APART.contains(facts.kind()) || facts.speed() != null && (facts.speed() < 600 || facts.speed() > 12_000)) {
            return Set.of("none");
        }
        if (facts.power() == null) {
            return Set.of("missing");
        }
        Set<String> classes = new TreeSet<>();
        for (Support support : facts.supports()) {
            if (facts.power() <= 15) {
                classes.add("I");
            } else if (facts.power() <= 75 && (facts.electrical() || onRequest)) {
                classes.add("II");
            } else if (facts.power() > 75 && facts.power() <= 300 && onRequest && support == Support.RIGID) {
                classes.add("II");
            } else if (facts.power() > 300 && onRequest) {
                classes.add(support == Support.RIGID ? "III" : "IV");
            }
        }
        return classes.isEmpty() ? Set.of("none") : classes;
    }

    private static void assertPart3(String standard, Facts facts, String group, Choice choice) {
        Band band = facts.speed() != null && facts.speed() <= 600 ? Band.of(2, 1000) : Band.of(10, 1000);
        List<String> expected = new ArrayList<>();
        for (Support support : facts.supports()) {
            expected.add("velocity " + support);
            expected.add("displacement " + support);
        }
        assertEquals(expected, choice.criteria().stream()
                .map(criterion -> criterion.quantity() + " " + criterion.support().orElseThrow())
                .collect(Collectors.toList()), facts::toString);
        for (Criterion criterion : choice.criteria()) {
            assertEquals(standard, criterion.standard());
            assertEquals(group, criterion.group(), facts::toString);
            assertEquals(band, criterion.band(), facts::toString);
        }
        assertEquals(facts.support() == null, said(choice, "support not given"));
    }

    private static void assertPart1(Facts facts, Set<String> classes, Choice choice) {
        if (classes.contains("none") || classes.contains("missing")) {
            assertWithout(facts, classes.contains("missing"), choice);
            return;
        }
        Set<String> chosen = choice.criteria().stream().map(Criterion::group).collect(Collectors.toSet());
        assertEquals(classes, chosen, facts::toString);
        for (Criterion criterion : choice.criteria()) {
            assertEquals("ISO 10816-1:1995", criterion.standard());
            assertEquals(Band.of(10, 1000), criterion.band());
            assertTrue(criterion.support().isEmpty());
        }
    }

    private static void assertWithout(Facts facts, boolean missing, Choice choice) {
        assertFalse(choice.hasCriterion(), facts::toString);
        assertEquals(missing, !choice.missing().isEmpty(), facts::toString);
        assertTrue(choice.reason().startsWith(missing ? "not determined: " : "no criterion applies: ")
                || choice.reason().startsWith("request "), choice::reason);
    }

    private static void assertSaid(Facts facts, Choice choice) {
        if (choice.hasCriterion()) {
            assertEquals(facts.kind() == null, said(choice, "kind of machine not given"), facts::toString);
            assertEquals(facts.speed() == null, said(choice, "speed not given"), facts::toString);
            assertEquals(facts.kind() == MachineKind.PUMP && (facts.power() == null || facts.power() > 1),
                    said(choice, "ISO 10816-7:2009"), facts::toString);
        }
        assertTrue(choice.criteria().isEmpty() || choice.missing().isEmpty());
        assertFalse(choice.reason().isBlank());
    }

    private static boolean said(Choice choice, String words) {
        return choice.remarks().stream().anyMatch(remark -> remark.startsWith(words));
    }

    @Test
    void everyCombinationIsChosenByTheRules() {
        Set<String> outcomes = new TreeSet<>();
        walk(facts -> {
            Choice choice = CriterionTables.shipped().choose(facts.machine());
            String group = groupOfPart3(facts, 30_000, highestPowerOf2022(facts.kind()));
            outcomes.add(group);
            if (group.equals("none")) {
                Set<String> classes = classesOfPart1(facts, false);
                outcomes.add(classes.toString());
                assertPart1(facts, classes, choice);
            } else if (group.equals("missing")) {
                assertWithout(facts, true, choice);
            } else {
                assertPart3("ISO 20816-3:2022", facts, group, choice);
            }
            assertSaid(facts, choice);
        });
        assertEquals((2 * 8 + 15 * 2) * 15 * 14 * 3, walked);
        assertEquals(Set.of("1", "2", "missing", "none", "[I]", "[II]", "[missing]", "[none]"), outcomes);
    }

    @Test
    void everyCombinationIsHonouredOrRefusedOnRequest() {
        CriterionRequest of2022 = CriterionRequest.of("ISO 20816-3").withEdition("2022");
        CriterionRequest of2009 = CriterionRequest.of("ISO 10816-3:2009");
        CriterionRequest part1 = CriterionRequest.of("iso 10816-1");
        walk(facts -> {
            Machine machine = facts.machine();
            assertRequested("ISO 20816-3:2022", facts, groupOfPart3(facts, 30_000, highestPowerOf2022(facts.kind())),
                    CriterionTables.shipped().choose(machine, of2022));
            assertRequested("ISO 10816-3:2009", facts, groupOfPart3(facts, 15_000, highestPowerOf2009(facts.kind())),
                    CriterionTables.shipped().choose(machine, of2009));
            Choice choice = CriterionTables.shipped().choose(machine, part1);
            assertPart1(facts, classesOfPart1(facts, true), choice);
            assertSaid(facts, choice);
        });
        assertEquals((2 * 8 + 15 * 2) * 15 * 14 * 3, walked);
    }

    private static void assertRequested(String standard, Facts facts, String group, Choice choice) {
        if (group.equals("none") || group.equals("missing")) {
            assertWithout(facts, group.equals("missing"), choice);
        } else {
            assertPart3(standard, facts, group, choice);
            assertTrue(choice.reason().startsWith("as requested, " + standard + " group " + group), choice::reason);
        }
        assertSaid(facts, choice);
    }
}
