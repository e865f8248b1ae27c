package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.vibra.docs.pages.Picture;
import dev.vibra.docs.survey.chart.Figure;
import dev.vibra.fault.Fault;
import dev.vibra.fault.FaultTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page of fault patterns is what the engine weighs with, and its figures are what the models make today;
 * {@code -Dpages.renew=true} writes both.
 */
class FaultPatternsTest {
    private static final Path MODULE = Path.of(System.getProperty("basedir", "")).toAbsolutePath().normalize();
    private static final Path PAGE = MODULE.resolve("fault-patterns.md");
    private static final Path FIGURES = MODULE.resolve("figures");
    private static final int MOST_BYTES = 30_000;
    private static final boolean RENEW = Boolean.getBoolean("pages.renew");

    @Test
    void pageAndFiguresAreThoseOfTheEngine(@TempDir Path folder) throws IOException {
        Map<String, List<String>> captions = new LinkedHashMap<>();
        List<String> differences = new ArrayList<>();
        for (Fault fault : FaultTable.standard().faults()) {
            PatternExample example = RENEW ? PatternExample.first(fault.id()) : PatternExample.of(fault.id(), seed(fault));
            List<Figure> figures = PatternFigures.of(example);
            for (int i = 0; i < figures.size(); i++) {
                String name = PatternPage.picture(example.fault().id(), i > 0);
                byte[] png = SmallPicture.png(figures.get(i));
                assertTrue(png.length < MOST_BYTES, name + " has " + png.length + " bytes");
                held(Files.write(folder.resolve(name), png), FIGURES.resolve(name)).ifPresent(differences::add);
                captions.computeIfAbsent(example.fault().id(), key -> new ArrayList<>())
                        .add(PatternPage.caption(example, i > 0));
            }
        }
        assertEquals(List.copyOf(captions.keySet()), FaultTable.standard().faults().stream().map(one -> one.id()).toList());
        assertEquals(List.of(), differences);
        String text = PatternPage.text(captions);
        if (RENEW) {
            Files.writeString(PAGE, text);
        }
        assertEquals(text, Files.readString(PAGE), "renew the page with -Dpages.renew=true");
    }

    /** The page says which machine it shows. */
    private static long seed(Fault fault) throws IOException {
        String page = Files.readString(PAGE);
        Matcher seed = Pattern.compile("simulated \\(seed (\\d+)\\)").matcher(page);
        int section = page.indexOf("\n`" + fault.id() + "`, looked for");
        assertTrue(section > 0 && seed.find(section), fault.id() + " has no section with a figure");
        return Long.parseLong(seed.group(1));
    }

    private static Optional<String> held(Path made, Path committed) throws IOException {
        if (RENEW) {
            Files.copy(made, committed, StandardCopyOption.REPLACE_EXISTING);
        }
        return Files.exists(committed) ? Picture.difference(made, committed).map(text -> committed.getFileName() + " " + text)
                : Optional.of(committed.getFileName() + " is missing");
    }
}
