package dev.vibra.diagnosis;

import dev.vibra.internal.Require;
import dev.vibra.symptom.Site;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How a fault shows: what the engine weighs it on, what looks alike and what tells them apart. The counts come from
 * simulated machines, which are kinder than plants.
 *
 * @param id stable code, and its kind after a slash, as in {@code misalignment/angular}
 * @param words what it is in words
 * @param site kind of site where it sits
 * @param symptoms what tells of it, the most telling first; empty where nothing was counted
 * @param mimics what looks alike
 * @param source where its symptoms are from, with edition or its mark
 */
public record FaultPattern(String id, String words, Site.Kind site, List<CountedSymptom> symptoms, List<Mimic> mimics,
        String source) implements Serializable {
    private static final int DESCRIBED = 8;

    /**
     * A symptom and how many simulated machines show it; a machine that couldn't show it, for want of a recording or of
     * a fact, isn't counted.
     *
     * @param code code of the symptom
     * @param words what is there if it is seen
     * @param seenWith number of machines with the fault that show it
     * @param allWith number of machines with the fault on which it could be seen
     * @param seenWithout number of sound machines that show it
     * @param allWithout number of sound machines on which it could be seen
     * @param weight what it tells of the fault in the mean over machines that have it, in nepers, &ge; 0
     */
    public record CountedSymptom(String code, String words, int seenWith, int allWith, int seenWithout, int allWithout,
            double weight) implements Serializable {
        /**
         * Checks words and counts.
         *
         * @param code see the record
         * @param words see the record
         * @param seenWith see the record
         * @param allWith see the record
         * @param seenWithout see the record
         * @param allWithout see the record
         * @param weight see the record
         */
        public CountedSymptom {
            code = Require.notBlank("code", code);
            words = Require.notBlank("words", words);
            Require.within("seenWith", seenWith, 0, allWith, "");
            Require.within("seenWithout", seenWithout, 0, allWithout, "");
            Require.notNegative("weight", weight, "");
        }

        /** {@return false if sound machines show it more often than those with the fault, so that it speaks against it} */
        public boolean speaksFor() {
            return (long) seenWith * allWithout > (long) seenWithout * allWith;
        }

        /** Returns words and counts. */
        @Override
        public String toString() {
            return words + ": seen on " + seenWith + " of " + allWith + " simulated machines with it, on " + seenWithout
                    + " of " + allWithout + " without";
        }
    }

    /**
     * A fault that looks alike.
     *
     * @param id its id
     * @param words what it is in words
     * @param decidedBy what tells the two apart if nothing was measured yet, the gentlest first; empty where nothing that
     *     was counted does
     */
    public record Mimic(String id, String words, List<Decider> decidedBy) implements Serializable {
        /**
         * Copies the list.
         *
         * @param id see the record
         * @param words see the record
         * @param decidedBy see the record
         */
        public Mimic {
            id = Require.notBlank("id", id);
            words = Require.notBlank("words", words);
            decidedBy = Require.copy("decidedBy", decidedBy);
        }

        /** Returns the words, and what tells it apart. */
        @Override
        public String toString() {
            return words + (decidedBy.isEmpty() ? "" : ": " + decidedBy.stream().map(Decider::toString)
                    .collect(Collectors.joining(". ")));
        }
    }

    /**
     * Copies the lists.
     *
     * @param id see the record
     * @param words see the record
     * @param site see the record
     * @param symptoms see the record
     * @param mimics see the record
     * @param source see the record
     */
    public FaultPattern {
        id = Require.notBlank("id", id);
        words = Require.notBlank("words", words);
        Objects.requireNonNull(site, "site");
        symptoms = Require.copy("symptoms", symptoms);
        mimics = Require.copy("mimics", mimics);
        source = Require.notBlank("source", source);
    }

    /** {@return the code without the kind, as findings have it} */
    public String code() {
        int slash = id.indexOf('/');
        return slash < 0 ? id : id.substring(0, slash);
    }

    /** {@return the kind, as in {@code angular}, where the code has several} */
    public Optional<String> kind() {
        return id.equals(code()) ? Optional.empty() : Optional.of(id.substring(code().length() + 1));
    }

    /** {@return fault, most telling symptoms, what looks alike and what decides, and the source, on lines of their own} */
    public String describe() {
        StringBuilder text = new StringBuilder(words + " (" + id + ", looked for at each " + site + ")");
        symptoms.stream().limit(DESCRIBED).forEach(one -> text.append("\n  ")
                .append(one.speaksFor() ? "" : "rarer with it: ").append(one));
        for (Mimic mimic : mimics) {
            text.append("\n  looks like ").append(mimic.words());
            mimic.decidedBy().forEach(one -> text.append("\n    ").append(one));
        }
        return text.append("\n  source: ").append(source).toString();
    }

    /** Returns the id with what is known of it in numbers. */
    @Override
    public String toString() {
        return id + ": " + words + ", " + symptoms.size() + " telling symptoms, looks like "
                + mimics.stream().map(Mimic::words).collect(Collectors.joining("; "));
    }
}
