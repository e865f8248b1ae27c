package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.lang.module.ModuleDescriptor;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import jdk.jshell.tool.JavaShellToolBuilder;
import org.junit.jupiter.api.Test;

/** The session of a page against the JShell tool of the JDK that runs the tests. */
class PageSessionTest {
    @Test
    void importsAreThoseOfTheTool() throws Exception {
        ByteArrayOutputStream output = new ByteArrayOutputStream();
        JavaShellToolBuilder.builder()
                .in(new ByteArrayInputStream("/list -start\n/exit\n".getBytes(StandardCharsets.UTF_8)), null)
                .out(new PrintStream(output, true, StandardCharsets.UTF_8))
                .persistence(new HashMap<>()).locale(Locale.ROOT).start("--execution", "local", "-R-ea");
        String listed = output.toString(StandardCharsets.UTF_8);
        if (listed.contains("import module java.base")) {
            Set<String> packages = Object.class.getModule().getDescriptor().exports().stream()
                    .map(ModuleDescriptor.Exports::source).collect(Collectors.toSet());
            assertTrue(packages.containsAll(PageSession.IMPORTS), "imports " + PageSession.IMPORTS);
        } else {
            Set<String> expected = new TreeSet<>(PageSession.IMPORTS);
            expected.add("java.util.prefs");
            assertEquals(expected, listed.lines().filter(line -> line.contains(" import "))
                    .map(line -> line.replaceAll(".* import |\\.\\*;.*", ""))
                    .collect(Collectors.toCollection(TreeSet::new)));
        }
    }

    @Test
    void sessionKnowsTheClassesUnderTest() {
        try (PageSession session = new PageSession(PageSession.testClassPath(), Duration.ofSeconds(20))) {
            Outcome outcome = session.run("dev.vibra.quantity.Unit.G.toSi()");
            assertEquals(List.of("9.80665"), outcome.value().stream().toList(), outcome.toString());
        }
    }
}
