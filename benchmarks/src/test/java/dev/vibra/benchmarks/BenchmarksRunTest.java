package dev.vibra.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.format.OutputFormatFactory;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Each benchmark runs once; nothing is concluded from its time. */
class BenchmarksRunTest {
    @Test
    void everyBenchmarkRuns() throws Exception {
        var options = new OptionsBuilder().include("dev\\.vibra\\.benchmarks\\..*").forks(0).warmupIterations(0)
                .measurementIterations(1).measurementTime(TimeValue.milliseconds(1)).param("length", "1024", "12000")
                .shouldFailOnError(true).build();
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        var format = OutputFormatFactory.createFormatInstance(new PrintStream(text, true, StandardCharsets.UTF_8),
                VerboseMode.NORMAL);
        Collection<RunResult> results = new Runner(options, format).run();
        Set<String> names = results.stream().map(r -> r.getParams().getBenchmark()).collect(Collectors.toSet());
        assertEquals(51, names.size(), text.toString(StandardCharsets.UTF_8));
        assertTrue(results.stream().allMatch(r -> r.getPrimaryResult().getScore() > 0));
    }
}
