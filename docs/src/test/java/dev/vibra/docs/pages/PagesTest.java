package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/**
 * Runs every page of the documentation and the README; {@code -Dpages.renew=true} writes what they gave into them
 * instead of failing.
 */
@ResourceLock(Resources.SYSTEM_OUT)
class PagesTest {
    /** Folder of the docs module; Surefire says so, wherever the tests are started. */
    private static final Path MODULE = Path.of(System.getProperty("basedir", "")).toAbsolutePath().normalize();
    private static final Path REPOSITORY = MODULE.getParent();
    private static final Path README = REPOSITORY.resolve("README.md");
    private static final Duration LIMIT = Duration.ofSeconds(60);

    @TestFactory
    Stream<DynamicTest> pages() throws IOException {
        List<Path> pages = pagesIn(MODULE);
        assertFalse(pages.isEmpty(), "no page found: " + MODULE.getFileName() + "/*.md");
        List<Path> all = new ArrayList<>(pages);
        all.add(README);
        List<String> wanted = List.of(System.getProperty("pages.only", "").split(","));
        return all.stream().filter(page -> wanted.contains("") || wanted.contains(name(page))).map(page -> DynamicTest.dynamicTest(page.getFileName().toString(), () -> run(page)));
    }

    private static String name(Path page) {
        return page.getFileName().toString().replace(".md", "");
    }

    private static void run(Path page) throws IOException {
        PageRunner runner = new PageRunner(REPOSITORY, MODULE.resolve("target/pages"), LIMIT);
        List<Finding> findings = runner.run(page);
        List<Failure> failures = Boolean.getBoolean("pages.renew") ? PageRunner.renew(page, findings)
                : findings.stream().map(Finding::failure).toList();
        if (!failures.isEmpty()) {
            fail(failures.stream().map(Failure::toString).collect(Collectors.joining("\n", "\n", "")));
        }
    }

    private static List<Path> pagesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
        }
    }
}
