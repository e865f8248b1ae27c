package dev.vibra.survey;

import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import dev.vibra.balance.Balancing;
import dev.vibra.balance.BalancingJob;
import dev.vibra.quantity.Unit;
import dev.vibra.severity.Verdict;
import dev.vibra.trend.Prognosis;
import dev.vibra.trend.Readings;
import dev.vibra.trend.Trend;
import java.io.File;
import java.lang.ref.WeakReference;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A plug-in that is unloaded takes the library with it: no static field and no cache of the JDK holds its loader. */
class DroppedLoaderTest {
    /** What a plug-in does; it runs inside the isolated loader. */
    public static final class Work implements Runnable {
        @Override
        public void run() {
            MachineSurvey survey = Survey.of(SurveyedMachines.fan().withPoint(SurveyedMachines.radial("P")),
                    Map.of("P", SurveyedMachines.line(SurveyedMachines.quiet(8), 1, 3).waveform()));
            Verdict verdict = survey.worst().orElseThrow();
            double[] days = IntStream.range(0, 20).asDoubleStream().toArray();
            Prognosis prognosis = Trend.of(Readings.ofDays(days, days, Unit.MM_PER_S)).timeTo(25);
            BalancingJob job = Balancing.inPlanes("fan").measuredAt("DE-H").initial(Balancing.v(5, 60))
                    .trial("fan", Balancing.mass(10, 0), Balancing.v(4, 120));
            Object[] all = {survey, verdict.describe(), verdict.plainValues(), prognosis, job.corrections().page()};
            if (Stream.of(all).map(Object::toString).anyMatch(String::isBlank)) {
                throw new AssertionError("not as it should be: " + Arrays.toString(all));
            }
        }
    }

    @Test
    void itsClassesGoWithIt() throws Exception {
        WeakReference<ClassLoader> loader = used();
        for (int round = 0; round < 100 && loader.get() != null; round++) {
            System.gc();
            Thread.sleep(20);
        }
        assertNull(loader.get(), "the loader is held");
    }

    private static WeakReference<ClassLoader> used() throws Exception {
        try (URLClassLoader loader = new URLClassLoader(classPath(), ClassLoader.getPlatformClassLoader())) {
            Class<?> work = Class.forName(Work.class.getName(), true, loader);
            assertSame(loader, work.getClassLoader());
            ((Runnable) work.getConstructor().newInstance()).run();
            return new WeakReference<>(loader);
        }
    }

    private static URL[] classPath() {
        String path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Arrays.stream(path.split(File.pathSeparator)).map(entry -> {
            try {
                return new File(entry).toURI().toURL();
            } catch (MalformedURLException e) {
                throw new AssertionError(e);
            }
        }).toArray(URL[]::new);
    }
}
