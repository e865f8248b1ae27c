package dev.vibra.docs.survey.input;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** Finds the known name that takes the fewest single-letter edits to reach; of long names the beginnings count. */
final class NearestName {
    private static final int LONGEST = 64;

    private NearestName() {}

    static String of(String given, Collection<String> known) {
        String lower = beginning(given);
        return known.stream().min(Comparator.comparingInt(name -> distance(lower, beginning(name)))).orElseThrow();
    }

    private static String beginning(String name) {
        return name.substring(0, Math.min(LONGEST, name.length())).toLowerCase(Locale.ROOT);
    }

    /** Counts insertions, deletions and substitutions; V. I. Levenshtein, Soviet Physics Doklady 10 (1966) 707-710. */
    static int distance(String a, String b) {
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, 1 + Math.min(above[j], row[j - 1]));
            }
            above = row;
        }
        return above[b.length()];
    }
}
