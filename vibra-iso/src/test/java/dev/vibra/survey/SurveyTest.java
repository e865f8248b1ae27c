package dev.vibra.survey;

import static dev.vibra.survey.SurveyedMachines.fan;
import static dev.vibra.survey.SurveyedMachines.line;
import static dev.vibra.survey.SurveyedMachines.quiet;
import static dev.vibra.survey.SurveyedMachines.radial;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingGeometry;
import dev.vibra.bearing.kinematics.RotatingRing;
import dev.vibra.machine.BearingData;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.GearStage;
import dev.vibra.machine.MachineDescription;
import dev.vibra.point.Omission;
import dev.vibra.severity.CriterionRequest;
import dev.vibra.severity.Zone;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A machine as a whole: the worst point decides, and what is missing is said. */
class SurveyTest {
    @Test
    void theWorstPointDecidesAndAMissingOneIsSaid() {
        MachineDescription machine = fan().withPoint(radial("A")).withPoint(radial("B")).withPoint(radial("C"));
        MachineSurvey survey = Survey.of(machine, Map.of("A", line(quiet(11), 3, 1).waveform(),
                "B", line(quiet(12), 3, 3).waveform()));
        assertEquals(Zone.C, survey.zone().orElseThrow());
        assertEquals("fan: zone C, plan a remedy; 3 points", survey.toString());
        assertEquals(List.of(Omission.of(Omission.Subject.RECORDING, "there is no recording of this point")),
                survey.points().get(2).omissions());
        assertTrue(survey.advice().stream().anyMatch(step -> step.kind() == AdviceStep.Kind.RECORD_AGAIN));
    }

    @Test
    void whatWasNotLookedForIsListed() {
        MachineDescription machine = fan().withPoint(radial("P")).withTrain(DriveTrain.plain().withBlades(7)
                .withGear(GearStage.of("reducer", List.of(23, 71))));
        MachineSurvey survey = Survey.of(machine, Map.of("P", line(quiet(13), 1, 1).waveform()));
        String faults = survey.omissions().stream().filter(one -> one.subject() == Omission.Subject.FAULTS)
                .map(Omission::reason).findFirst().orElseThrow();
        for (String fault : List.of("misalignment", "looseness", "gear mesh", "vane passing", "rolling bearings (no geometry is given)")) {
            assertTrue(faults.contains(fault), faults);
        }
    }

    @Test
    void aCriterionOutOfScopeIsFollowedAndSaid() {
        MachineDescription machine = fan().withCriterion(CriterionRequest.of("ISO 10816-7").withGroup(
                "category I, up to 200 kW")).withPoint(radial("P"));
        MachineSurvey survey = Survey.of(machine, Map.of("P", line(quiet(14), 3, 3).waveform()));
        assertEquals("ISO 10816-7:2009", survey.worst().orElseThrow().deciding().criterion().standard());
        assertTrue(survey.omissions().stream().anyMatch(one -> one.subject() == Omission.Subject.SEVERITY),
                survey.omissions().toString());
    }

    @Test
    void aResultCanBeShippedBetweenMachines() throws IOException, ClassNotFoundException {
        MachineDescription machine = fan().withBearing(new BearingData("DE", BearingGeometry.of(9, 7.94, 39.04, 0),
                RotatingRing.INNER)).withPoint(radial("P").withBearing("DE"));
        MachineSurvey survey = Survey.of(machine, Map.of("P", line(quiet(30), 1, 3).waveform()));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(survey);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            MachineSurvey back = (MachineSurvey) in.readObject();
            assertEquals(survey.toString(), back.toString());
            assertEquals(survey.points().get(0).description(), back.points().get(0).description());
            assertEquals(survey.points().get(0).lines(), back.points().get(0).lines());
            assertEquals(survey.points().get(0).bearings().toString(), back.points().get(0).bearings().toString());
            assertEquals(survey.advice(), back.advice());
        }
    }
}
