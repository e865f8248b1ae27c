package dev.vibra.docs.survey.output;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** The files that one run writes together, in the order of their writing; the last one seals the set. */
public enum OutputSet {
    /** Report and results of one machine. */
    SURVEY("survey", new Member(ReportFiles.REPORT, "<!DOCTYPE html>", "<title>Vibration survey: "),
            new Member(ReportFiles.CSV, "point,descriptor,value,unit", ""),
            new Member(ReportFiles.JSON, "{\n  \"format\" : ", OutputSet.LIBRARY)),
    /** Findings held against labels. */
    SCORE("score", new Member(ScoreFiles.CSV, "machine,point,label,outcome,said,extra,evidence", ""),
            new Member(ScoreFiles.JSON, "{\n  \"format\" : ", OutputSet.LIBRARY));

    private static final String LIBRARY = "\"library\" : {\n    \"name\" : \"" + Library.NAME + "\"";
    private static final int LOOKED_AT = 512;

    private final String label;
    private final List<Member> members;

    OutputSet(String label, Member... members) {
        this.label = label;
        this.members = List.of(members);
    }

    /** A file and what its first bytes hold, in every version so far. */
    private record Member(String name, String begin, String mark) {}

    /** {@return names of the files} */
    public List<String> names() {
        return members.stream().map(Member::name).toList();
    }

    String label() {
        return label;
    }

    static OutputSet labelled(String label) {
        return Arrays.stream(values()).filter(set -> set.label.equals(label)).findFirst().orElseThrow();
    }

    /** Returns the file that is put in its place last and taken away first: beside it the others are whole. */
    String seal() {
        return members.get(members.size() - 1).name;
    }

    /** Returns true if a file is one of ours by its first bytes, not by its name alone. */
    boolean isOurs(String name, Path file) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            String first = new String(in.readNBytes(LOOKED_AT), StandardCharsets.UTF_8);
            return members.stream().anyMatch(one -> one.name.equals(name) && first.startsWith(one.begin)
                    && first.contains(one.mark));
        } catch (IOException e) {
            return false;
        }
    }
}
