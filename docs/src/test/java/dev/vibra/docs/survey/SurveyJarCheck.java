package dev.vibra.docs.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The finished jar, run as a user runs it; executed after packaging, not with the unit tests. */
@EnabledIfSystemProperty(named = "vibra.survey.jar", matches = ".+")
class SurveyJarCheck {
    private static final Path JAR = Path.of(System.getProperty("vibra.survey.jar", "none"));

    private static String run(Path folder, int expectedCode, String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", JAR.toString()));
        command.addAll(List.of(args));
        Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the process did not end");
        assertEquals(expectedCode, process.exitValue(), printed);
        return printed;
    }

    @Test
    void demonstrationRunsFromAnyFolder(@TempDir Path temp) throws IOException, InterruptedException {
        String printed = run(temp, 0);
        assertTrue(printed.contains("unbalance"), printed);
        assertEquals(List.of("report.html", "results.csv", "results.json"),
                Folders.names(temp.resolve("vibra-demo-survey")));
    }

    @Test
    void wrongUseHasItsCode(@TempDir Path temp) throws IOException, InterruptedException {
        assertTrue(run(temp, 64, "--nonsense").startsWith("unknown option: --nonsense"));
        run(temp, 2, temp.resolve("nowhere").toString());
    }

    /** The lines of the page, its imports left out, typed into the tool of this JDK as the page says. */
    @Test
    void startUpFileWorksInTheToolItself(@TempDir Path temp) throws IOException, InterruptedException {
        Path file = temp.resolve("vibra.jsh");
        Files.writeString(file, run(temp, 0, "--jshell"));
        String page = Files.readString(Path.of(System.getProperty("basedir"), "jshell.md"));
        List<String> blocks = Pattern.compile("(?s)```java\n(.*?)```").matcher(page).results()
                .map(block -> block.group(1)).toList();
        Path lines = temp.resolve("lines.jsh");
        Files.writeString(lines, String.join("", blocks.subList(1, blocks.size()))
                + "System.out.println(\"lines: \" + lines.length)\n/exit\n");
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "jshell").toString(),
                "--class-path", JAR.toString(), "--startup", "DEFAULT", "--startup", file.toString(), "-")
                .directory(temp.toFile()).redirectErrorStream(true).redirectInput(lines.toFile()).start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the process did not end");
        assertEquals("lines: 6401\n", printed);
        assertEquals(List.of("jshell-envelope.png", "jshell-spectrum.png"),
                Folders.names(temp.resolve("target/figures")));
    }

    @Test
    void jarNamesEveryLibraryThatItCarries() throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile());
                InputStream in = jar.getInputStream(jar.getEntry("META-INF/THIRD-PARTY.txt"))) {
            String notice = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Map<String, String> libraries = Map.of("org/jtransforms/", "JTransforms ", "pl/edu/icm/jlargearrays/",
                    "JLargeArrays ", "de/siegmar/fastcsv/", "FastCSV ", "org/apache/commons/math3/",
                    "Apache Commons Math ", "com/fasterxml/jackson/core/", "Jackson core ");
            List<String> unknown = jar.stream().map(entry -> entry.getName()).filter(name -> name.endsWith(".class"))
                    .filter(name -> !name.startsWith("dev/vibra/") && !name.startsWith("com/fasterxml/jackson/")
                            && libraries.keySet().stream().noneMatch(name::startsWith)).toList();
            assertEquals(List.of(), unknown);
            libraries.forEach((start, name) -> assertTrue(notice.contains("  " + name), name));
            assertTrue(notice.contains("Redistributions in binary form must reproduce"), "BSD 2-Clause");
            assertTrue(notice.contains("Permission is hereby granted, free of charge"), "MIT");
        }
    }

    /** Of the charting library of the report only what the report takes. */
    @Test
    void jarCarriesThreeFilesOfTheChartingLibrary() throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile());
                InputStream in = jar.getInputStream(jar.getEntry("META-INF/THIRD-PARTY.txt"))) {
            List<String> files = jar.stream().map(entry -> entry.getName()).filter(name -> name.contains("webjars")
                    && !name.endsWith("/")).map(name -> name.replaceAll(".*/", "")).sorted().toList();
            assertEquals(List.of("LICENSE", "uPlot.iife.min.js", "uPlot.min.css"), files);
            assertTrue(new String(in.readAllBytes(), StandardCharsets.UTF_8).contains("Leon Sorokin"), "uPlot: MIT");
        }
    }

    @Test
    void jarCarriesNoSignatureNoTestAndNoSecondManifest() throws IOException {
        try (JarFile jar = new JarFile(JAR.toFile())) {
            List<String> names = jar.stream().map(entry -> entry.getName()).toList();
            assertTrue(names.size() > 500, "entries " + names.size());
            assertEquals(List.of(), names.stream().filter(name -> name.matches("META-INF/.*\\.(SF|RSA|DSA)")
                    || name.contains("junit") || name.contains("jqwik") || name.endsWith("module-info.class"))
                            .toList());
            assertEquals("dev.vibra.docs.survey.SurveyCommand", jar.getManifest().getMainAttributes()
                    .getValue("Main-Class"));
        }
    }
}
