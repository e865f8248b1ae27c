package dev.vibra.docs.survey.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.balance.BalancingJob;
import dev.vibra.balance.Corrections;
import dev.vibra.balance.JobRecord;
import dev.vibra.balance.Verification;
import dev.vibra.balance.tolerance.BalanceGrade;
import dev.vibra.balance.vector.Convention;
import dev.vibra.balance.vector.PlacedMass;
import dev.vibra.machine.RotorData;
import dev.vibra.quantity.RotationSpeed;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Reading of a balancing job: what reaches the job, and the message for everything that can be wrong. */
class BalancingReaderTest {
    private static final String FULL = resource("balancing.json");
    /**
     * S. S. Rao, Mechanical Vibrations, two-plane balancing of a turbine rotor; inputs and answers recalled from the
     * textbook, reproduced to all printed digits by computation. Ounces are entered as grams: masses only scale.
     */
    private static final String RAO = """
            { "speedRevolutionsPerMinute": 600,
              "reading": { "unit": "mil", "detector": "0-peak", "phase": "lead, degrees" },
              "sensors": [ "A", "B" ], "planes": [ "L", "R" ],
              "initial": [ { "amplitude": 8.5, "phaseDegrees": 60 }, { "amplitude": 6.5, "phaseDegrees": 205 } ],
              "trials": [
                { "plane": "L", "massGrams": 10, "angleDegrees": 270, "radiusMillimetres": 100, "readings": [
                  { "amplitude": 6, "phaseDegrees": 125 }, { "amplitude": 4.5, "phaseDegrees": 230 } ] },
                { "plane": "R", "massGrams": 12, "angleDegrees": 180, "radiusMillimetres": 100, "readings": [
                  { "amplitude": 6, "phaseDegrees": 35 }, { "amplitude": 10.5, "phaseDegrees": 160 } ] } ] }
            """;
    /** The published influence coefficients in mil per ounce, phase lead. */
    private static final String INFLUENCE = """
            "influence": [
              [ { "amplitude": 0.80711, "phaseDegrees": 287.644 }, { "amplitude": 0.33131, "phaseDegrees": 99.627 } ],
              [ { "amplitude": 0.30791, "phaseDegrees": 76.856 }, { "amplitude": 0.62350, "phaseDegrees": 302.099 } ]
            ]""";
    private static final String SCATTER = "\"scatter\": { \"amplitudePercent\": 3, \"phaseDegrees\": 2 }, ";

    private static String resource(String name) {
        try (InputStream in = BalancingReaderTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Optional<BalancingJob> read(String json, RotorData rotor, List<String> messages) {
        Problems problems = new Problems("machine.json");
        try {
            FieldReader fields = FieldReader.of(JsonDocument.parse(json.getBytes(StandardCharsets.UTF_8)), "balancing",
                    problems).orElseThrow();
            Optional<BalancingJob> job = BalancingReader.read(fields, rotor, Optional.empty());
            boolean faulty = fields.finish().faulty();
            problems.byLine().forEach(problem -> messages.add(problem.toString()));
            return job.filter(read -> !faulty);
        } catch (JsonDocument.NotJson e) {
            throw new IllegalStateException(e);
        }
    }

    private static BalancingJob job(String json) {
        List<String> messages = new ArrayList<>();
        Optional<BalancingJob> job = read(json, RotorData.unknown().withMassKilograms(100)
                .withGrade(BalanceGrade.of(6.3)), messages);
        assertEquals(List.of(), messages);
        return job.orElseThrow();
    }

    private static List<String> messages(String json) {
        List<String> messages = new ArrayList<>();
        Optional<BalancingJob> job = read(json, RotorData.unknown(), messages);
        assertEquals(messages.isEmpty(), job.isPresent());
        return messages;
    }

    private static String changed(String json, String from, String to) {
        assertTrue(json.contains(from), from);
        return json.replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to));
    }

    /** Fields before the last brace. */
    private static String with(String json, String... fields) {
        return json.replaceFirst("\\}\\s*$", Matcher.quoteReplacement(", " + String.join(", ", fields) + " }"));
    }

    private static String known(String more) {
        return changed(RAO, RAO.substring(RAO.indexOf("\"trials\"")), more + INFLUENCE + " }");
    }

    @Test
    void everyFieldReachesTheJob() {
        BalancingJob job = job(FULL);
        assertEquals(Convention.LAG_AGAINST_ROTATION, job.layout().convention());
        assertEquals(List.of("drive end", "non-drive end"), job.layout().planes());
        assertEquals("[DE-H in mm/s rms, NDE-H in mm/s rms]", job.layout().sensors().toString());
        List<JobRecord.RunEntry> runs = job.toRecord().runs();
        assertEquals(List.of("initial run", "trial run in plane drive end", "trial run in plane non-drive end",
                "final run"), runs.stream().map(JobRecord.RunEntry::name).toList());
        assertEquals(4.6, runs.get(2).readings().get(1).amplitude(), 1e-12);
        assertEquals(160, runs.get(2).readings().get(1).phaseDegrees(), 1e-9);
        PlacedMass trial = runs.get(2).masses().get(0).mass();
        assertEquals(12, trial.grams(), 1e-12);
        assertEquals(90, trial.angleDegrees(), 1e-9);
        assertEquals(160, trial.radiusMillimetres().orElseThrow(), 1e-9);
        assertTrue(job.endsWithFinalRun() && job.runout().isEmpty() && !job.knowsBearings());
        assertEquals(2, job.corrections().in("drive end").split().size());
        // ISO 21940-11: U_per = 1000·G·m/Ω, at the speed of the runs where the machine tells none.
        assertEquals(6.3e6 * 100 / RotationSpeed.ofRevolutionsPerMinute(1480).radiansPerSecond(),
                job.tolerance().orElseThrow().gramMillimetres() * 1000, 0.01);
    }

    @Test
    void withoutMassGradeOrSpeedThereIsNoTolerance() {
        String bare = changed(RAO, "\"speedRevolutionsPerMinute\": 600,", "");
        assertTrue(job(bare).tolerance().isEmpty());
        assertTrue(read(RAO, RotorData.unknown().withMassKilograms(1), new ArrayList<>()).orElseThrow().tolerance()
                .isEmpty());
    }

    @Test
    void publishedWeightsComeOfTrialsAndOfCoefficients() {
        for (BalancingJob job : List.of(job(RAO), job(known("")))) {
            Corrections corrections = job.corrections();
            assertEquals(10.0561, corrections.in("L").mass().grams(), 5e-4);
            assertEquals(325.5548, corrections.in("L").mass().angleDegrees(), 5e-3);
            assertEquals(5.8774, corrections.in("R").mass().grams(), 5e-4);
            assertEquals(68.2559, corrections.in("R").mass().angleDegrees(), 5e-3);
        }
    }

    @Test
    void scatterOfCoefficientsIsToldForAllOrForEach() {
        double exact = major(known(SCATTER));
        String all = known(SCATTER + "\"influenceScatter\": { \"amplitudePercent\": 5, \"phaseDegrees\": 3 }, ");
        String each = known(SCATTER).replaceAll("(\"phaseDegrees\": [0-9]+\\.[0-9]+) \\}", "$1, \"scatter\": 0.05 }");
        assertEquals(0.05, job(each).coefficientErrors().orElseThrow().perGram(1, 0), 1e-12);
        assertTrue(major(all) > 1.5 * exact && major(each) > 1.5 * exact, exact + ", " + major(each));
        String path = "machine.json, line 5, balancing.influence";
        assertEquals(List.of(path + ": must tell scatter with each coefficient or with none, and not beside"
                + " influenceScatter"), messages(each.replaceFirst(", \"scatter\": 0.05", "")));
        assertEquals(List.of(path + "Scatter: must stand beside scatter, that of the readings"),
                messages(all.replace(SCATTER, "")));
        String unit = known("\"influenceUnit\": \"um rms per g\", ");
        assertEquals(List.of(path + "Unit: must be that of the readings, \"mil 0-peak per g\": \"um rms per g\""),
                messages(unit));
        assertEquals(List.of(), messages(unit.replace("um rms per g", "mil 0-peak per g")));
    }

    private static double major(String json) {
        return job(json).corrections().uncertainty().orElseThrow().ofCorrection("L").major();
    }

    @Test
    void coefficientsHaveTheShapeOfTheJob() {
        String path = "machine.json, line 5, balancing.influence";
        assertEquals(List.of(path + ": must hold one list per sensor, 2, of one coefficient per plane, 2"),
                messages(changed(known(""), "{ \"amplitude\": 0.30791, \"phaseDegrees\": 76.856 },", "")));
        assertEquals(List.of("machine.json, line 6, balancing.influence[0][0].amplitude: must be finite and >= 0:"
                + " -0.8"), messages(changed(known(""), "0.80711", "-0.8")));
        assertEquals(List.of("machine.json, line 7, balancing.influence[1]: must be a list [ ]: 3"),
                messages(known("").replaceAll("\\[ \\{ \"amplitude\": 0.30.*", "3")));
        assertEquals(List.of(path + "Unit: must stand beside influence"), messages(changed(RAO, "\"trials\"",
                "\"influenceUnit\": \"mil 0-peak per g\", \"trials\"")));
    }

    /** With half the left weight really on, the reading is predicted for that, and half of it comes next. */
    @Test
    void massesThatReallyWentOnAreCounted() {
        // Half of L's unbalance stays: half of α·U of the left plane, 10.0561 at 145.5548° with 0.80711 and 0.30791.
        double[] left = {10.0561 / 2 * 0.80711, 10.0561 / 2 * 0.30791};
        String fitted = with(RAO, "\"final\": [ { \"amplitude\": " + left[0] + ", \"phaseDegrees\": 73.1988 },"
                + " { \"amplitude\": " + left[1] + ", \"phaseDegrees\": 222.4108 } ]",
                "\"fitted\": [ { \"plane\": \"L\", \"massGrams\": 3, \"angleDegrees\": 325.5548 },"
                + " { \"plane\": \"R\", \"massGrams\": 11.7548, \"angleDegrees\": 68.2559, \"radiusMillimetres\": 50 },"
                + " { \"plane\": \"L\", \"massGrams\": 2.02805, \"angleDegrees\": 325.5548 } ]");
        BalancingJob job = job(fitted);
        Verification proof = job.verification();
        assertEquals(left[0], proof.predicted().get(0).amplitude(), 1e-3);
        assertEquals(List.of(), proof.remarks());
        assertEquals(10.0561 / 2, job.corrections().in("L").mass().grams(), 1e-3);
        assertEquals(0, job.corrections().in("R").mass().grams(), 1e-3);
        assertEquals(List.of("machine.json, line 9, balancing.fitted: needs radiusMillimetres of plane \"R\" in the"
                + " job or in a trial to use a mass with a radius of its own"),
                messages(fitted.replace("\"radiusMillimetres\": 100, ", "")));
    }

    /** Without masses of its own the final run is that of the masses worked out; beside an obstacle there are none. */
    @Test
    void aFinalRunNeedsCorrections() {
        String one = "{ \"amplitude\": 1, \"phaseDegrees\": 0 }";
        String last = "\"final\": [ " + one + ", " + one + " ]";
        BalancingJob job = job(with(RAO, last));
        assertEquals(job.beforeFinalRun().corrections().in("L").mass().grams(),
                job.toRecord().runs().get(3).masses().get(0).mass().grams(), 1e-9);
        BalancingJob none = job(with(RAO.replace("\"amplitude\": 6, \"phaseDegrees\": 125", "\"amplitude\": 8.5,"
                + " \"phaseDegrees\": 60").replace("\"amplitude\": 4.5, \"phaseDegrees\": 230", "\"amplitude\": 6.5,"
                + " \"phaseDegrees\": 205"), last));
        assertTrue(none.obstacle().orElseThrow().startsWith("trial run in plane L must change the readings"));
        assertTrue(!none.endsWithFinalRun());
    }

    @Test
    void scatterPositionsAndPlacesReachTheJob() {
        String axial = "\"axial\": { \"bearingsMillimetres\": [ 0, 1000 ], \"planesMillimetres\": { \"L\": 200,"
                + " \"R\": 700 }, \"centreOfMassMillimetres\": 400 }";
        String positions = "\"positions\": { \"L\": 12 }, \"firstPositionDegrees\": { \"L\": 25.5548 }";
        BalancingJob job = job(with(RAO, SCATTER.substring(0, SCATTER.length() - 2), axial, positions));
        // Position 11 of twelve is at 25.5548 + 300°: the whole of L's weight.
        assertEquals(11, job.corrections().in("L").split().get(0).position());
        assertTrue(job.corrections().uncertainty().isPresent() && job.knowsBearings());
        // Levers of the centre of mass: 0.6 and 0.4.
        assertEquals(List.of(0.6, 0.4), job.tolerance().orElseThrow().allocation().shares());
        assertEquals(List.of(0.5, 0.5), job(with(RAO, axial.replace(", \"centreOfMassMillimetres\": 400", "")))
                .tolerance().orElseThrow().allocation().shares());
        assertEquals(List.of(0.5, 0.5), job(RAO).tolerance().orElseThrow().allocation().shares());
    }

    @Test
    void runoutAndTrialsLeftOnReachTheJob() {
        BalancingJob job = job(with(RAO, "\"runout\": [ { \"amplitude\": 1, \"phaseDegrees\": 0 }, { \"amplitude\": 1,"
                + " \"phaseDegrees\": 0 } ]", "\"trialsLeftOn\": true"));
        assertEquals("to the rotor as it is now, with all masses of the earlier runs left on",
                job.corrections().addedTo());
        // 8.5 at 60° less 1 at 0°, by the law of cosines.
        assertEquals(Math.sqrt(8.5 * 8.5 + 1 - 2 * 8.5 * 0.5), job.toRecord().runs().get(0).readings().get(0)
                .amplitude(), 1e-9);
    }

    @Test
    void readingsMustMatchSensors() {
        assertEquals(List.of("machine.json, line 11, balancing.final: must hold one reading per sensor, 2: 1"),
                messages(changed(FULL, "{ \"amplitude\": 0.7, \"phaseDegrees\": 12 }, ", "")));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "balancing-errors.txt", delimiter = '|', quoteCharacter = '`')
    void namesFileLineFieldRuleAndValue(String from, String to, String message) {
        List<String> messages = messages(changed(FULL, from, to == null ? "" : to));
        assertTrue(messages.contains("machine.json, " + message), () -> String.join("\n", messages));
    }
}
