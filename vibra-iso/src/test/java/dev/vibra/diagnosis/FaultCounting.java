package dev.vibra.diagnosis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.fault.FaultTable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Counts how often simulated machines show each symptom and writes the table that the engine weighs with. Not part of the
 * suite: it is named in DEVELOPERS.md. What is drawn already stands in {@code target/fault-counting} and is not drawn
 * again, so that the command can be stopped and goes on; with another table of symptoms it begins anew.
 */
class FaultCounting {
    private static final Path FOLDER = Path.of("target", "fault-counting");

    private final FaultTable table = FaultTable.standard();
    private final long seed = Long.getLong("counting.seed", 100_001);
    private final int perFault = Integer.getInteger("counting.machines", 140);
    private final Path target = Path.of(System.getProperty("counting.target",
            "src/main/resources/dev/vibra/fault/counts.txt"));

    /** One machine to draw. */
    private record Job(long seed, List<String> faults) {}

    @Test
    void countSymptoms() throws Exception {
        Files.createDirectories(FOLDER);
        Path file = FOLDER.resolve("answers-" + Integer.toHexString(asked().hashCode()) + ".txt");
        drawInto(file);
        List<DrawnMachine> drawn = read(file).stream().map(line -> DrawnMachine.parse(line, table)).toList();
        assertTrue(drawn.size() >= jobs().size(), "machines drawn: " + drawn.size());
        Files.writeString(target, new CountsWriter(table, drawn, seed).text());
    }

    /** What the answers depend on. */
    private String asked() {
        return table.symptoms().stream().map(one -> one.code() + " " + one.asks() + " " + one.site())
                .collect(Collectors.joining("\n"));
    }

    /** A sixth of the machines is sound; they come first, and the faults by turns, so that a stop loses none of them. */
    private List<Job> jobs() {
        List<Job> jobs = new ArrayList<>();
        List<String> ids = table.faults().stream().map(fault -> fault.id()).toList();
        for (int k = 0; k < perFault; k++) {
            for (int i = 0; i < ids.size(); i++) {
                long own = seed + (long) k * 100 + i;
                jobs.add(new Job(own, List.of(ids.get(i))));
                if (i % 5 == 0) {
                    jobs.add(new Job(own + 50_000_000, List.of()));
                }
            }
        }
        return jobs;
    }

    private static List<String> read(Path file) {
        try (Stream<String> lines = Files.exists(file) ? Files.lines(file) : Stream.empty()) {
            return lines.filter(line -> line.endsWith(".")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void drawInto(Path file) throws InterruptedException {
        Set<Long> done = read(file).stream().map(line -> Long.parseLong(line.substring(0, line.indexOf('\t'))))
                .collect(Collectors.toSet());
        List<Job> left = jobs().stream().filter(job -> !done.contains(job.seed())).toList();
        AtomicInteger count = new AtomicInteger();
        ExecutorService crew = Executors.newFixedThreadPool(Integer.getInteger("counting.threads", 2));
        left.forEach(job -> crew.submit(() -> {
            try {
                append(file, DrawnMachine.draw(job.seed(), job.faults(), table).line());
            } catch (RuntimeException e) {
                System.out.println("seed " + job.seed() + " " + job.faults() + ": " + e);
            }
            if (count.incrementAndGet() % 500 == 0) {
                System.out.println(count.get() + " of " + left.size() + " machines drawn");
            }
        }));
        crew.shutdown();
        assertTrue(crew.awaitTermination(10, TimeUnit.HOURS));
    }

    private static synchronized void append(Path file, String line) {
        try {
            Files.writeString(file, line + "\n", StandardCharsets.UTF_8, StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
