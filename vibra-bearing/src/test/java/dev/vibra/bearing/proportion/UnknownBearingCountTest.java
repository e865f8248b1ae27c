package dev.vibra.bearing.proportion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.bearing.kinematics.BearingElement;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How often the truth is among the candidates, counted on simulated machines, seeds fixed. */
class UnknownBearingCountTest {
    @ParameterizedTest
    @EnumSource(value = BearingElement.class, names = "CAGE", mode = EnumSource.Mode.EXCLUDE)
    @DisplayName("a clear defect: in 95 % of 40 the true bearing is a candidate, of at most 6 in the mean")
    void truthIsAmongTheCandidates(BearingElement element) {
        int cases = 0;
        int right = 0;
        int candidates = 0;
        for (int seed = 0; cases < 40; seed++) {
            Simulated machine = Simulated.defect(1000 + seed, element);
            if (machine.tellsFromTheRest()) {
                UnknownBearing found = machine.searched();
                cases++;
                right += found.candidates().stream().anyMatch(machine::isIn) ? 1 : 0;
                candidates += found.candidates().size();
            }
        }
        String counts = element + ": " + right + " of " + cases + ", candidates " + candidates;
        assertTrue(right >= 0.95 * cases, counts);
        assertTrue(candidates <= 6 * cases, counts);
    }

    @Test
    @DisplayName("defects of both races, both seen: in 90 % of 30 the first candidate has the true number and ratio")
    void twoRacesPutTheTruthFirst() {
        int cases = 0;
        int right = 0;
        for (int seed = 0; cases < 30; seed++) {
            Simulated machine = Simulated.defect(2000 + seed, BearingElement.OUTER_RACE, BearingElement.INNER_RACE);
            UnknownBearing found = machine.searched();
            double other = machine.bearing().rollingElements() * machine.shaftHertz() - machine.rate();
            if (sees(found, machine.rate()) && sees(found, other)) {
                cases++;
                Proportion first = found.candidates().get(0);
                right += first.admits(machine.bearing().rollingElements(), machine.bearing().diameterRatio()) ? 1 : 0;
            }
        }
        assertTrue(right >= 0.9 * cases, right + " of " + cases);
    }

    private static boolean sees(UnknownBearing found, double hertz) {
        return found.pulsations().stream().anyMatch(one -> Math.abs(one.hertz() / hertz - 1) < 0.03);
    }

    @ParameterizedTest
    @EnumSource(Simulated.Sound.class)
    @DisplayName("machines without a defect have no candidate: 0 of 60 of each kind, 360 in all")
    void soundMachinesHaveNone(Simulated.Sound kind) {
        for (int seed = 0; seed < 60; seed++) {
            UnknownBearing found = Simulated.searched(kind, 3000 + seed);
            assertEquals("no pulsation that a bearing would explain", found.toString(), kind + " " + seed);
        }
    }
}
