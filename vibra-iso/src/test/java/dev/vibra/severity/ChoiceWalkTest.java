package dev.vibra.severity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
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
 * as plain conditions: scopes and groups of ISO 20816-3:2022 and 10816-3:2009 (abstracts), of ISO 10816-7:2009 and ISO
 * 14694:2003, classes of ISO 10816-1:1995 Annex B.
 */
class ChoiceWalkTest {
    private static final Double[] POWERS = {null, 0.15, 1.0, Math.nextUp(1.0), 15.0, Math.nextUp(15.0), 75.0, 75.1,
        200.0, 200.1, 300.0, 300.1, 355.0, 355.1, 3000.0, 3000.1, 40_000.0, 40_001.0, 50_000.0, 50_001.0};
    private static final Double[] HEIGHTS = {null, 132.0, Math.nextDown(160.0), 160.0, Math.nextDown(315.0), 315.0};
    /**
     * Shaft height decides for electrical machines only; one that is given and one that isn't show it for the others.
     */
    private static final Double[] TWO_HEIGHTS = {null, 225.0};
    private static final Double[] SPEEDS = {null, 119.9, 120.0, 599.9, 600.0, 600.1, 1480.0, 1531.0, 3060.0, 3601.0,
        12_000.0, 12_000.1, 15_000.0, 15_000.1, 30_000.0, 30_000.1};
    private static final Support[] SUPPORTS = {null, Support.RIGID, Support.FLEXIBLE};
    private static final Set<MachineKind> APART = EnumSet.of(MachineKind.HYDRAULIC_TURBINE, MachineKind.WIND_TURBINE,
            MachineKind.SCREW_COMPRESSOR, MachineKind.RECIPROCATING_COMPRESSOR, MachineKind.RECIPROCATING_ENGINE,
            MachineKind.GENERATING_SET);
    private static final Set<String> NONE = Set.of();
    private static final Set<String> MISSING = Set.of("missing");

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

        boolean is(MachineKind other) {
            return kind == other;
        }

        boolean powerWithin(double above, double upTo) {
            return power == null || power > above && power <= upTo;
        }

        boolean speedWithin(double from, double upTo) {
            return speed == null || speed >= from && speed <= upTo;
        }

        /** Each name with every support that may hold. */
        Set<String> on(String... names) {
            return Arrays.stream(names).flatMap(name -> supports().stream().map(each -> name + ", " + each))
                    .collect(Collectors.toSet());
        }

        List<Support> supports() {
            return support == null ? List.of(Support.RIGID, Support.FLEXIBLE) : List.of(support);
        }
    }

    private void walk(Consumer<Facts> check) {
        List<MachineKind> kinds = new ArrayList<>(Arrays.asList(MachineKind.values()));
        kinds.add(null);
        for (MachineKind kind : kinds) {
            for (Double power : POWERS) {
                for (Double height : kind != null && kind.isElectrical() ? HEIGHTS : TWO_HEIGHTS) {
                    for (Double speed : SPEEDS) {
                        for (Support support : SUPPORTS) {
                            check.accept(new Facts(kind, power, height, speed, support));
                            walked++;
                        }
                    }
                }
            }
        }
        assertEquals((2 * 6 + 16 * 2) * 20 * 16 * 3, walked);
    }

    private static boolean nearPart2(double speed) {
        return speed >= 1470 && speed <= 1530 || speed >= 1764 && speed <= 1836
                || speed >= 2940 && speed <= 3060 || speed >= 3528 && speed <= 3672;
    }

    /** "in", "out", or "speed" where that is missing. */
    private static String scopeOf2022(Facts facts) {
        if (APART.contains(facts.kind()) || facts.is(MachineKind.PUMP) || !facts.speedWithin(120, 30_000)) {
            return "out";
        }
        if (facts.is(MachineKind.GAS_TURBINE) || facts.is(MachineKind.TURBINE)) {
            return facts.powerWithin(15, 3000) ? "in" : "out";
        }
        boolean limited = facts.is(MachineKind.STEAM_TURBINE) || facts.is(MachineKind.GENERATOR);
        if (limited && facts.power() != null && facts.power() > 40_000) {
            return facts.speed() == null ? "speed" : nearPart2(facts.speed()) ? "out" : "in";
        }
        return facts.powerWithin(15, Double.POSITIVE_INFINITY) ? "in" : "out";
    }

    private static String scopeOf2009(Facts facts) {
        boolean out = APART.contains(facts.kind()) || facts.is(MachineKind.PUMP) || !facts.speedWithin(120, 15_000);
        if (out || facts.is(MachineKind.GAS_TURBINE) || facts.is(MachineKind.TURBINE)) {
            return !out && facts.powerWithin(15, 3000) ? "in" : "out";
        }
        boolean limited = facts.is(MachineKind.STEAM_TURBINE) || facts.is(MachineKind.GENERATOR);
        if (limited && facts.power() != null && facts.power() > 50_000) {
            return facts.speed() == null ? "speed" : facts.speed() < 1500 || facts.speed() > 3600 ? "in" : "out";
        }
        return facts.powerWithin(15, 50_000) ? "in" : "out";
    }

    /** Labels of part 3, once its scope is left aside. */
    private static Set<String> groupsOfPart3(Facts facts) {
        if (facts.electrical() && facts.height() != null) {
            return facts.height() >= 315 ? facts.on("group 1") : facts.height() >= 160 ? facts.on("group 2") : NONE;
        }
        if (facts.power() == null) {
            return MISSING;
        }
        if (facts.power() <= 15) {
            return facts.electrical() ? MISSING : NONE;
        }
        if (facts.is(MachineKind.FAN) && facts.power() <= 300) {
            return facts.support() == Support.FLEXIBLE ? NONE : Set.of("group 2, rigid");
        }
        return facts.on(facts.power() > 300 ? "group 1" : "group 2");
    }

    private static Set<String> classesOfPart1(Facts facts, boolean onRequest) {
        if (facts.power() == null) {
            return MISSING;
        }
        Set<String> classes = new TreeSet<>();
        for (Support support : facts.supports()) {
            if (facts.power() <= 15) {
                classes.add("class I");
            } else if (facts.power() <= 75 && (facts.electrical() || onRequest)
                    || facts.power() > 75 && facts.power() <= 300 && onRequest && support == Support.RIGID) {
                classes.add("class II");
            } else if (facts.power() > 300 && onRequest) {
                classes.add(support == Support.RIGID ? "class III" : "class IV");
            }
        }
        return classes;
    }

    private static Set<String> pump(Facts facts) {
        if (facts.power() == null) {
            return MISSING;
        }
        String size = facts.speed() != null && facts.speed() <= 600 ? "up to 600 r/min"
                : facts.power() <= 200 ? "up to 200 kW" : "above 200 kW";
        return Set.of("category I, " + size, "category II, " + size);
    }

    private static Set<String> byItself(Facts facts) {
        if (APART.contains(facts.kind())) {
            return NONE;
        }
        if (facts.is(MachineKind.PUMP) && facts.powerWithin(1, Double.POSITIVE_INFINITY)) {
            return pump(facts);
        }
        String scope = scopeOf2022(facts);
        Set<String> part3 = groupsOfPart3(facts);
        if (scope.equals("speed")) {
            return facts.height() == null || facts.height() >= 160 ? MISSING : NONE;
        }
        boolean forThatFan = facts.is(MachineKind.FAN) && facts.support() == null && part3.size() == 1
                && !part3.equals(MISSING);
        if (scope.equals("in") && !part3.isEmpty() && !forThatFan) {
            return part3;
        }
        if (facts.is(MachineKind.FAN) && facts.powerWithin(0, 355)) {
            return facts.power() == null || facts.power() <= 0.15
                    ? facts.on("BV-1, in situ", "BV-2, in situ", "BV-3, in situ", "BV-4, in situ", "BV-5, in situ")
                    : facts.on("BV-2, in situ", "BV-3, in situ", "BV-4, in situ", "BV-5, in situ");
        }
        return facts.speedWithin(600, 12_000) ? classesOfPart1(facts, false) : NONE;
    }

    private static void assertOutcome(Facts facts, Set<String> expected, Choice choice) {
        boolean missing = expected.equals(MISSING);
        assertEquals(missing ? NONE : expected, choice.candidates().stream().map(CriterionSet::label)
                .collect(Collectors.toSet()), () -> facts + ": " + choice);
        assertEquals(missing, !choice.missing().isEmpty(), () -> facts + ": " + choice);
        assertEquals(expected.size() > 1, !choice.undecided().isEmpty(), facts::toString);
        assertFalse(choice.reason().isBlank() || choice.reason().startsWith("not determined"), choice::reason);
        for (Criterion criterion : choice.criteria()) {
            boolean slow = facts.speed() != null && facts.speed() <= 600;
            boolean from2 = slow && !criterion.standard().equals("ISO 14694:2003")
                    && !criterion.standard().equals("ISO 10816-1:1995");
            assertEquals(from2 ? Band.of(2, 1000) : Band.of(10, 1000), criterion.band(), facts::toString);
        }
        if (choice.hasCriterion()) {
            assertEquals(facts.kind() == null, said(choice, "kind of machine not given"), facts::toString);
            assertEquals(facts.speed() == null, said(choice, "speed not given"), facts::toString);
        }
    }

    private static boolean said(Choice choice, String words) {
        return choice.remarks().stream().anyMatch(remark -> remark.startsWith(words));
    }

    @Test
    void everyCombinationIsChosenByTheRules() {
        Set<String> outcomes = new TreeSet<>();
        walk(facts -> {
            Set<String> expected = byItself(facts);
            outcomes.addAll(expected);
            Choice choice = CriterionTables.shipped().choose(facts.machine());
            assertOutcome(facts, expected, choice);
            assertTrue(choice.outOfScope().isEmpty());
        });
        assertEquals(4 + 6 + 10 + 2 + 1, outcomes.size(), outcomes::toString);
    }

    /** A standard asked for by name is used whatever its scope says, which is said. */
    @Test
    void everyRequestIsJudgedAsAsked() {
        CriterionRequest of2022 = CriterionRequest.of("ISO 20816-3").withEdition("2022");
        CriterionRequest of2009 = CriterionRequest.of("ISO 10816-3:2009");
        CriterionRequest part1 = CriterionRequest.of("iso 10816-1");
        walk(facts -> {
            Set<String> part3 = groupsOfPart3(facts);
            assertAsked(facts, part3, scopeOf2022(facts), of2022);
            assertAsked(facts, part3, scopeOf2009(facts), of2009);
            String scope = APART.contains(facts.kind()) || !facts.speedWithin(600, 12_000) ? "out" : "in";
            assertAsked(facts, classesOfPart1(facts, true), scope, part1);
        });
    }

    private static void assertAsked(Facts facts, Set<String> classes, String scope, CriterionRequest request) {
        Choice choice = CriterionTables.shipped().choose(facts.machine(), request);
        boolean lacksSpeed = scope.equals("speed") && !classes.isEmpty();
        assertOutcome(facts, lacksSpeed ? MISSING : classes, choice);
        assertEquals(choice.hasCriterion() && scope.equals("out"), choice.outOfScope().isPresent(),
                () -> facts + ": " + choice);
        assertTrue(choice.criteria().stream().allMatch(criterion -> criterion.quantity() != Quantity.ACCELERATION));
    }
}
