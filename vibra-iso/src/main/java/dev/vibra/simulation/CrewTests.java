package dev.vibra.simulation;

import dev.vibra.simulation.PlanParts.Point;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What a crew would find by the tests of the table of faults. Where the physics of the draw answers in closed form it
 * does: change of speed, cut of power, run without coupling, stop. What eyes, gauges and hands find follows the table
 * below: how often the test shows what its code says with a fault, and without any (common practice, no source). Four
 * in a hundred outcomes are noted wrong (common practice, no source).
 */
final class CrewTests {
    private static final double WRONG = 0.04;
    private static final String TABLE = """
            creeps                | 0.02 | rub 0.6, bent-shaft 0.25, looseness/rotating-part 0.35, eccentric-rotor 0.2
            slow-roll-stays       | 0.02 | bent-shaft 1, looseness/rotating-part 0.15, rub 0.1, eccentric-pulley 0.1
            trial-mass-answers    | 0.9  | bent-shaft 0.8, eccentric-rotor 0.7, resonance 0.5, eccentric-pulley 0.15, \
            looseness/foot 0.35, looseness/pedestal 0.15, looseness/rotating-part 0.05, rub 0.15, soft-foot 0.5, \
            misalignment/parallel 0.3, misalignment/angular 0.3, misalignment/bearing 0.3
            joint-steps           | 0.04 | looseness/foot 0.95, looseness/pedestal 0.85, soft-foot 0.6, resonance 0.1
            foot-lifts            | 0.06 | soft-foot 0.97, looseness/foot 0.35, looseness/pedestal 0.1
            cap-loose             | 0.03 | looseness/pedestal 0.95, looseness/foot 0.7, looseness/rotating-part 0.7
            rub-marks             | 0.01 | rub 0.9, bent-shaft 0.05
            pulley-runs-out       | 0.03 | eccentric-pulley 0.98, bent-shaft 0.2
            alignment-off         | 0.12 | misalignment/parallel 0.97, misalignment/angular 0.97, soft-foot 0.3
            load-raises           | 0.1  | eccentric-rotor 0.6, twice-line-frequency 0.5, broken-rotor-bars 0.95, \
            gear-mesh 0.3
            current-sidebands     | 0.02 | broken-rotor-bars 0.95, eccentric-rotor 0.1
            tooth-marks           | 0.02 | gear-tooth 0.95, gear-mesh 0.1
            contact-off           | 0.05 | gear-mesh 0.92, gear-tooth 0.2
            flow-changes          | 0.4  | vane-passing 0.9
            belt-looks-worn       | 0.08 | belt 0.92, eccentric-pulley 0.2
            """;

    private final Scene scene;
    private final List<Truth> faults;
    private final List<Line> lines;
    private final Draws draws;
    private final Map<String, Boolean> outcomes = new TreeMap<>();

    CrewTests(Scene scene, List<Truth> faults, Recorder recorder, Draws draws) {
        this.scene = scene;
        this.faults = faults;
        this.lines = recorder.lines();
        this.draws = draws;
    }

    Map<String, Boolean> outcomes() {
        for (String row : TABLE.lines().toList()) {
            String[] cells = row.split("\\|");
            note(cells[0].strip(), Double.parseDouble(cells[1].strip()), cells[2].strip());
        }
        for (String shaft : owners("speed-peaks")) {
            put("speed-peaks", shaft, peaks(shaft));
        }
        for (String motor : owners("power-cut-drops")) {
            put("power-cut-drops", motor, isLargestLed(true, Cause.Origin.MAGNETISM));
        }
        for (String coupling : owners("uncoupled-gone")) {
            put("uncoupled-gone", coupling, !isLargestLed(true, null));
        }
        put("stays-when-stopped", "machine", isLargestLed(false, Cause.Origin.OUTSIDE));
        return outcomes;
    }

    /** Places at which a test of the table can be made. */
    private Set<String> owners(String test) {
        Set<String> owners = new LinkedHashSet<>();
        PlanParts parts = scene.parts();
        switch (test) {
            case "alignment-off", "uncoupled-gone" -> parts.links().forEach(link -> owners.add(link.owner()));
            case "power-cut-drops", "load-raises", "current-sidebands" -> {
                if (scene.plan().hasMotorSite()) {
                    owners.add("motor");
                }
            }
            case "tooth-marks", "contact-off" -> parts.stages().forEach(stage -> owners.add(stage.owner()));
            case "flow-changes" -> {
                if (parts.blades() != null) {
                    owners.add("blades");
                }
            }
            case "belt-looks-worn" -> scene.plan().belt().ifPresent(belt -> owners.add(belt.owner()));
            default -> parts.rotors().stream().filter(scene.plan()::isMeasured)
                    .forEach(rotor -> owners.add(rotor.owner()));
        }
        return owners;
    }

    private void note(String test, double without, String rates) {
        Set<String> owners = owners(test);
        for (String owner : owners) {
            double most = Double.NaN;
            for (String rate : rates.split(",")) {
                String fault = rate.strip().substring(0, rate.strip().lastIndexOf(' '));
                double often = Double.parseDouble(rate.strip().substring(fault.length()));
                if (faults.stream().anyMatch(truth -> truth.fault().equals(fault) && concerns(truth, owner))) {
                    // A test that faults spoil is spoilt by any, one that faults show is shown by any.
                    most = Double.isNaN(most) ? often : without > 0.5 ? Math.min(most, often) : Math.max(most, often);
                }
            }
            put(test, owner, draws.chance(Double.isNaN(most) ? without : most));
        }
    }

    /** A fault elsewhere on the machine concerns tests of that place only if it has no place of that kind. */
    private boolean concerns(Truth truth, String owner) {
        boolean shaft = scene.parts().rotors().stream().anyMatch(rotor -> rotor.owner().equals(truth.owner()));
        boolean asksShaft = scene.parts().rotors().stream().anyMatch(rotor -> rotor.owner().equals(owner));
        return !(shaft && asksShaft) || truth.owner().equals(owner);
    }

    private void put(String test, String owner, boolean seen) {
        boolean noted = seen != draws.chance(WRONG);
        outcomes.put(owners(test).size() > 1 && !test.equals("stays-when-stopped") ? test + " at " + owner : test,
                noted);
    }

    /** The level changes more than threefold within a tenth of the speed, where 1× is largest. */
    private boolean peaks(String shaft) {
        double order = scene.parts().rotors().stream().filter(rotor -> rotor.owner().equals(shaft)).findFirst()
                .orElseThrow().ratio();
        List<Point> points = scene.parts().points();
        int largest = IntStream.range(0, points.size()).boxed().max((one, other) -> Double.compare(
                scene.velocityAtSpeed(order, 1, one) / points.get(one).limit(),
                scene.velocityAtSpeed(order, 1, other) / points.get(other).limit())).orElse(0);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (int i = -2; i <= 2; i++) {
            double velocity = scene.velocityAtSpeed(order, 1 + 0.05 * i, largest);
            lowest = Math.min(lowest, velocity);
            highest = Math.max(highest, velocity);
        }
        return highest > 3 * lowest;
    }

    /**
     * Whether most of the largest line comes from somewhere: at the motor's points or at all; from an origin, or,
     * with none told, from what goes on when the motor runs alone.
     */
    private boolean isLargestLed(boolean motor, Cause.Origin origin) {
        double[] best = {0, 0};
        for (int p = 0; p < scene.parts().points().size(); p++) {
            Point point = scene.parts().points().get(p);
            if (!motor || point.housing() < 2) {
                largestAt(p, point.limit(), origin, best);
            }
        }
        return best[0] > 0 && best[1] > 0.5 * best[0];
    }

    /** Lines of one frequency add up as vectors. */
    private void largestAt(int p, double limit, Cause.Origin origin, double[] best) {
        for (Line line : lines) {
            double[] sums = new double[4];
            for (Line same : lines) {
                if (same.order() == line.order() && same.offsetHertz() == line.offsetHertz()) {
                    boolean counts = origin == null ? same.driver() || same.origin() == Cause.Origin.OUTSIDE
                            : same.origin() == origin;
                    sums[0] += same.re()[p];
                    sums[1] += same.im()[p];
                    sums[2] += counts ? same.re()[p] : 0;
                    sums[3] += counts ? same.im()[p] : 0;
                }
            }
            double size = Math.hypot(sums[0], sums[1]) / line.hertz(scene.mainHertz()) / limit;
            if (size > best[0]) {
                best[0] = size;
                best[1] = Math.hypot(sums[2], sums[3]) / line.hertz(scene.mainHertz()) / limit;
            }
        }
    }
}
