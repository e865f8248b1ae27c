package dev.vibra.docs.survey.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Policy and assets of the figures as they stand in a page; whether a browser obeys is checked in one. */
class ContentPolicyTest {
    /** The example of W3C, Content Security Policy Level 3, section 2.3.1: {@code echo -n "alert('Hello, world.');"}. */
    @Test
    void digestIsThatOfTheStandard() {
        assertEquals("'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='",
                ContentPolicy.source("alert('Hello, world.');"));
    }

    @Test
    void lineEndsAreThoseThatTheBrowserSees() {
        assertEquals(ContentPolicy.source("a\nb\nc\n"), ContentPolicy.source("a\r\nb\rc\n"));
    }

    @Test
    void namesWhatMayRunAndForbidsTheRest() {
        String meta = ContentPolicy.meta(List.of("a"), List.of());
        assertTrue(meta.contains("default-src 'none'; script-src " + ContentPolicy.source("a") + "; style-src 'none'"));
        assertFalse(meta.contains("unsafe"), meta);
    }

    /** What the HTML standard forbids in a script element; and the licence goes with the copy. */
    @Test
    void assetsFitIntoAPage() {
        String script = PlotAssets.script();
        assertTrue(script.contains("Copyright (c) 2022 Leon Sorokin") && script.contains("Permission is hereby granted"));
        for (String bad : List.of("</", "<!--", "<script", "eval(", "new Function", "http-equiv", "setAttribute(\"style\"")) {
            assertFalse(script.contains(bad), bad);
        }
        assertFalse(PlotAssets.style().contains("url(") || PlotAssets.style().contains("</"));
        assertTrue(script.length() + PlotAssets.style().length() < 85_000, "size " + script.length());
    }

    /** Each word that the script asks for is in the file, and each in the file is asked for. */
    @Test
    void wordsAreThoseOfTheScript() {
        String script = PlotAssets.script();
        for (String key : Phrases.english().under("plot.").keySet()) {
            assertTrue(script.contains('"' + key.substring(5) + '"'), key);
        }
        Pattern.compile("say\\(\"(\\w+)\"").matcher(script).results().forEach(asked ->
                assertFalse(Phrases.english().under("plot." + asked.group(1)).isEmpty(), asked.group(1)));
    }
}
