package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import dev.vibra.docs.notebook.StartUpFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** The start-up file for JShell in a session of this JDK. */
@ResourceLock(Resources.SYSTEM_OUT)
class StartUpFileTest {
    private static final List<JavaClass> PUBLIC = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("dev.vibra").stream()
            .filter(type -> type.isTopLevelClass() && type.getModifiers().contains(JavaModifier.PUBLIC))
            .filter(type -> !type.getPackageName().matches("dev\\.vibra\\.(internal|docs\\.survey.*)"))
            .toList();
    /** What the tool's own start-up adds to the imports of pages, by JDK. */
    private static final List<String> DEFAULTS = Runtime.version().feature() < 25 ? List.of("import java.util.prefs.*;")
            : List.of("import module java.base;");

    private static PageSession started() {
        PageSession session = new PageSession(PageSession.testClassPath(), Duration.ofSeconds(60));
        DEFAULTS.forEach(line -> assertDone(session.run(line)));
        StartUpFile.text().lines().filter(line -> !line.isBlank() && !line.startsWith("//"))
                .forEach(line -> assertDone(session.run(line)));
        return session;
    }

    private static void assertDone(Outcome outcome) {
        assertTrue(outcome.broken().isEmpty() && outcome.thrown().isEmpty(), outcome.toString());
    }

    private static String value(PageSession session, String source) {
        Outcome outcome = session.run(source);
        return outcome.value().orElse(outcome.toString());
    }

    @Test
    void everyTerminalCanShowIt() {
        String text = StartUpFile.text();
        assertTrue(text.chars().allMatch(letter -> letter == '\n' || letter >= ' ' && letter <= '~'));
        assertEquals(List.of(), text.lines().filter(line -> line.length() > 120).toList());
    }

    @Test
    void everyPackageOfTheLibraryIsImported() {
        Set<String> packages = PUBLIC.stream().map(JavaClass::getPackageName)
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(packages.size() > 40, "packages seen: " + packages.size());
        Set<String> imported = StartUpFile.text().lines().filter(line -> line.matches("import dev\\.vibra\\..*\\*;"))
                .map(line -> line.substring("import ".length(), line.length() - 3))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(packages, imported);
    }

    /** With imports on demand a name that stands twice, here or among the defaults of JShell, doesn't compile. */
    @Test
    void everyNameOfTheLibraryMeansTheLibrary() {
        String all = PUBLIC.stream().map(type -> type.getSimpleName() + ".class").collect(Collectors.joining(", "));
        try (PageSession session = started()) {
            assertEquals(String.valueOf(PUBLIC.size()), value(session, "Stream.of(" + all
                    + ").filter(type -> type.getName().startsWith(\"dev.vibra.\")).count()"));
        }
    }

    @Test
    void demonstrationIsReadAndDrawn() throws IOException {
        try (CapturedOutput output = new CapturedOutput(); PageSession session = started()) {
            assertEquals("65,536 samples at 12,800 Hz, acceleration, 5.120 s, 3.15 m/s\u00b2 peak",
                    value(session, "var a = demo(\"fe-h\");"));
            String plot = value(session, "plot(Spectrum.of(a).velocity(), 10, 400)");
            assertTrue(plot.startsWith("figure of 1800 x 540 pixels: "), plot);
            Path file = Path.of(plot.substring(plot.indexOf(": ") + 2));
            assertEquals("PNG", new String(Files.readAllBytes(file), 1, 3, StandardCharsets.US_ASCII));
            Files.delete(file);
            assertEquals("", output.take());
        }
    }
}
