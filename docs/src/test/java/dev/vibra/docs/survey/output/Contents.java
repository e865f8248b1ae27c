package dev.vibra.docs.survey.output;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** Files as bytes, and small sets of files that look like ours. */
final class Contents {
    private Contents() {}

    static Map<String, byte[]> bytes(Map<String, Content> files) {
        Map<String, byte[]> bytes = new LinkedHashMap<>();
        files.forEach((name, content) -> {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try {
                content.writeTo(out);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            bytes.put(name, out.toByteArray());
        });
        return bytes;
    }

    static String report(String run) {
        return "<!DOCTYPE html>\n<title>Vibration survey: fan</title>\n" + run + "\n";
    }

    static String csv(String run) {
        return "point,descriptor,value,unit\r\n" + run + "\r\n";
    }

    /** A survey's set whose results hold the digests of the two others, as the real one does. */
    static Map<String, Content> survey(String run) {
        Map<String, String> digests = new LinkedHashMap<>();
        Map<String, Content> files = new LinkedHashMap<>();
        files.put("report.html", Digest.noted("report.html", digests, text(report(run))));
        files.put("results.csv", Digest.noted("results.csv", digests, text(csv(run))));
        files.put("results.json", out -> text(json(run, digests)).writeTo(out));
        return files;
    }

    static String json(String run, Map<String, String> digests) {
        return "{\n  \"format\" : 2,\n  \"library\" : {\n    \"name\" : \"Vibra\"\n  },\n  \"run\" : \"" + run
                + "\",\n  \"digests\" : " + digests + "\n}\n";
    }

    static Content text(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }
}
