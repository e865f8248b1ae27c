package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import dev.vibra.docs.survey.demo.DemoMachine;
import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.quantity.Unit;
import dev.vibra.simulation.SimulatedMachine;
import dev.vibra.survey.MachineSurvey;
import dev.vibra.survey.Survey;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Inches in sentences. The inch is 25.4 mm, standard gravity 9.80665 m/s². */
class ShownUnitsTest {
    private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:\\.[0-9]+)?(?:[eE][-+]?[0-9]+)?");
    private static final Set<String> METRIC = Set.of("mm/s", "m/s", "µm", "um", "m/s²", "m/s2", "mm/s²");
    private static final Map<String, Double> OF_SHOWN = Map.of("in/s", 25.4, "mil", 25.4, "g", 9.80665);

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        zone D: 5.23 ± 0.26 mm/s rms (10–1000 Hz); limits 1.4 / 2.8 / 4.5; ISO 20816-3:2022 Table A.2 | \
        zone D: 0.2059 ± 0.0102 in/s rms (10–1000 Hz); limits 0.0551 / 0.110 / 0.177; ISO 20816-3:2022 Table A.2
        Velocity 1.4 / 2.8 / 4.5 mm/s rms (10–1000 Hz) | Velocity 0.0551 / 0.110 / 0.177 in/s rms (10–1000 Hz)
        22 / 45 / 71 µm (secondary source, verify) | 0.866 / 1.77 / 2.80 mil (secondary source, verify)
        from 4.48 to 5.21 mm/s, 33.7 um at 24.7 Hz | from 0.1764 to 0.2051 in/s, 1.327 mil at 24.7 Hz
        peak 9.57 m/s², 0 knocks (0 per second), 0 mm/s rms | peak 0.976 g, 0 knocks (0 per second), 0 in/s rms
        velocity-rms-10-1000Hz 5.99 mm/s, not judged | velocity-rms-10-1000Hz 0.2358 in/s, not judged
        10.4 g at 352.9°, radius 420 mm, 4379 g·mm; 0.52 mm/s rms per g | \
        10.4 g at 352.9°, radius 420 mm, 4379 g·mm; 0.0205 in/s rms per g
        before: G16 reached (8.01 mm/s), G6.3 not held | before: G16 reached (8.01 mm/s), G6.3 not held
        shaft height 225 mm, ball 19.05 mm, 0.05 mm peak-peak | shaft height 225 mm, ball 19.05 mm, 2.0 mil peak-peak
        ±50 m/s² full scale, 100 mV per m/s² | ±5.1 g full scale, 100 mV per m/s²
        velocity-rms-10-1000Hz 5.23 after 1.84: +3.39 mm/s rms, matters: more than 0.7 up or down; 6.5 | \
        velocity-rms-10-1000Hz 0.2059 after 0.0724: +0.1335 in/s rms, matters: more than 0.028 up or down; 6.5
        5 after 4: vector change 2.5 µm rms, within 11.25 in any direction | \
        0.20 after 0.16: vector change 0.098 mil rms, within 0.4429 in any direction
        alarm 2.541, trip 4.5 mm/s rms (10–1000 Hz); 6.5 | alarm 0.10004, trip 0.177 in/s rms (10–1000 Hz); 6.5
        1.2e-7 m/s², 2.4e8 µm | 1.22e-08 g, 9450000 mil
        A.2 5 Hz, limits 10 / 20 Hz, limits 3, Fan3 mm/s | A.2 5 Hz, limits 10 / 20 Hz, limits 3, Fan3 mm/s
        -0.5 mm/s and +0.5\u00a0mm/s² | -0.020 in/s and +0.00005\u00a0g
        """)
    void figuresOfSentencesAreConverted(String metric, String imperial) {
        assertEquals(imperial, ShownUnits.IMPERIAL.shown(metric));
        assertEquals(metric, ShownUnits.METRIC.shown(metric));
        assertEquals(imperial, ShownUnits.IMPERIAL.shown(imperial), "once is enough");
    }

    @Test
    void numbersAndHeadingsAreConverted() {
        assertEquals(1, ShownUnits.IMPERIAL.shown(25.4, Unit.MM_PER_S), 1e-15);
        assertEquals(1, ShownUnits.IMPERIAL.shown(9.80665, Unit.M_PER_S2), 1e-15);
        assertEquals(25.4, ShownUnits.METRIC.shown(25.4, Unit.UM));
        assertEquals(Unit.MIL, ShownUnits.IMPERIAL.of(Unit.UM));
        assertEquals("Velocity 10–1000 Hz in/s rms", ShownUnits.IMPERIAL.heading("Velocity 10–1000 Hz mm/s rms"));
        assertEquals("Acceleration g peak", ShownUnits.IMPERIAL.heading("Acceleration m/s² peak"));
        assertEquals("Radius mm", ShownUnits.IMPERIAL.heading("Radius mm"));
    }

    /** All that the demonstration machine and machines with every third fault make the engine say, as reports hold it. */
    @Test
    void noMetricVibrationStaysAndNothingElseChanges(@TempDir Path folder) throws IOException {
        Set<String> sentences = new TreeSet<>();
        DemoMachine.unpack(folder);
        MachineReading demo = MachineFile.in(folder);
        collect(Survey.of(demo.machine().orElseThrow(), demo.recordings(folder)), demo, sentences);
        List<String> faults = List.copyOf(SimulatedMachine.faultIds());
        for (int i = 0; i < faults.size(); i += 3) {
            String fault = faults.get(i);
            SimulatedMachine machine = SimulatedMachine.draw(fault.hashCode(), List.of(fault));
            collect(Survey.of(machine.description(), machine.recordings(), Map.of(), machine.references()),
                    new MachineReading(Optional.of(machine.description()), Map.of(), List.of(), Map.of(), List.of()),
                    sentences);
        }
        int changed = 0;
        for (String sentence : sentences) {
            changed += check(sentence, ShownUnits.IMPERIAL.shown(sentence));
        }
        assertTrue(changed > 200, changed + " of " + sentences.size());
    }

    private static void collect(MachineSurvey survey, MachineReading reading, Set<String> sentences)
            throws IOException {
        SurveyRecord record = new SurveyRecord(survey, reading, Map.of(), List.of(), "0");
        try (HtmlReport report = new HtmlReport(ReportSettings.standard().withoutFigures())) {
            Map<String, byte[]> files = Contents.bytes(ReportFiles.of(record, report));
            String html = new String(files.get(ReportFiles.REPORT), StandardCharsets.UTF_8);
            Matcher texts = Pattern.compile(">([^<]+)<").matcher(html.substring(html.indexOf("<body>")));
            texts.results().map(found -> found.group(1).replace("&#39;", "'").strip()).forEach(sentences::add);
            JsonParser json = new JsonFactory().createParser(files.get(ReportFiles.JSON));
            for (JsonToken token = json.nextToken(); token != null; token = json.nextToken()) {
                if (token == JsonToken.VALUE_STRING) {
                    sentences.add(json.getText());
                }
            }
        }
    }

    /** Returns 1 if figures were converted. */
    private static int check(String metric, String shown) {
        List<String> before = words(metric);
        List<String> after = words(shown);
        assertEquals(before.size(), after.size(), shown);
        int converted = 0;
        for (int i = 0; i < before.size(); i++) {
            String was = before.get(i);
            String is = after.get(i);
            if (METRIC.contains(was) && METRIC.contains(is)) {
                boolean isGrade = i > 1 && before.get(i - 2).equals("(") && metric.contains(" reached (");
                assertTrue(i == 0 || !isNumber(before.get(i - 1)) || isGrade, shown);
            } else if (METRIC.contains(was)) {
                assertTrue(OF_SHOWN.containsKey(is), shown);
                converted = 1;
            } else if (isNumber(was) && !was.equals(is)) {
                checkNumber(was, is, after, i, shown);
            } else {
                assertEquals(was, is, shown);
            }
        }
        return converted;
    }

    /** Its unit follows, or stood before a list of limits; the number is right to half its last digit. */
    private static void checkNumber(String was, String is, List<String> after, int at, String shown) {
        double factor = after.subList(at, after.size()).stream().filter(OF_SHOWN::containsKey).findFirst()
                .or(() -> after.subList(0, at).stream().filter(OF_SHOWN::containsKey).reduce((a, b) -> b))
                .map(OF_SHOWN::get).orElseThrow(() -> new AssertionError(shown));
        BigDecimal written = new BigDecimal(is);
        double exact = Double.parseDouble(was) / factor;
        assertEquals(exact, written.doubleValue(), 0.5000001 * written.ulp().doubleValue(), shown);
        int digits = new BigDecimal(was).precision();
        assertTrue(written.round(new MathContext(20)).precision() <= digits + 1,
                was + " became " + is + " in " + shown);
        assertTrue(written.ulp().doubleValue() * factor <= 1.05 * new BigDecimal(was).ulp().doubleValue(),
                was + " became " + is);
    }

    private static boolean isNumber(String word) {
        return NUMBER.matcher(word).matches();
    }

    /** Numbers, and whatever stands between blanks, brackets and them. */
    private static List<String> words(String sentence) {
        List<String> words = new ArrayList<>();
        Matcher pieces = Pattern.compile("(?<![A-Za-z0-9.-])" + NUMBER.pattern()
                + "(?![A-Za-z0-9-])|m?m/s2|[();,:]|[^\\s();,:0-9.±–]+|.").matcher(sentence);
        while (pieces.find()) {
            if (!pieces.group().isBlank()) {
                words.add(pieces.group());
            }
        }
        return words;
    }
}
