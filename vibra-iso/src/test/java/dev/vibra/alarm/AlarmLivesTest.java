package dev.vibra.alarm;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Alarms on made lives of two directions, by a scatter of 5 to 40 %: hardly ever before the end without a lasting doubling, for
 * readings that hang together more and more, and always announced on one of the directions.
 */
class AlarmLivesTest {
    private static final int LIVES = 400;

    private static int[] counts(StatisticalRule rule, double correlation) {
        int early = 0;
        int missed = 0;
        for (int seed = 0; seed < LIVES; seed++) {
            List<AlarmLives.Life> directions = new AlarmLives(1000 + seed, correlation).directions();
            boolean announced = false;
            for (AlarmLives.Life life : directions) {
                Optional<Integer> alarm = AlarmLives.alarm(life, rule, 10);
                early += alarm.filter(at -> at < life.end() && life.largestStep() < 2).isPresent() ? 1 : 0;
                announced |= alarm.isPresent();
            }
            missed += announced ? 0 : 1;
        }
        return new int[] {early, missed};
    }

    @ParameterizedTest
    @CsvSource({"0, 0.03", "0.4, 0.05", "0.8, 0.09"})
    void alarmsComeWithTheEndAndHardlyBefore(double correlation, double most) {
        int[] watch = counts(StatisticalRule.forMonitoring(), correlation);
        int[] plain = counts(StatisticalRule.withDefaults(), correlation);
        assertTrue(watch[0] <= most * 2 * LIVES, watch[0] + " early of " + 2 * LIVES);
        assertTrue(watch[1] <= 0.01 * LIVES, watch[1] + " missed of " + LIVES);
        assertTrue(3 * watch[0] < plain[0], watch[0] + " early, by the plain rule " + plain[0]);
    }
}
