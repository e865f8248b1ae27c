package dev.vibra.severity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** Names of classes with their parts between commas, as in {@code category I, up to 200 kW}. */
final class GroupNames {
    private GroupNames() {}

    /** What the names have and others of them have not; the name itself if there is one only. */
    static List<String> toldApart(Collection<String> groups) {
        List<String> shared = groups.size() == 1 ? List.of() : shared(groups);
        return groups.stream().map(group -> parts(group).stream().filter(part -> !shared.contains(part))
                .collect(Collectors.joining(", "))).toList();
    }

    /** The parts that all names have. */
    static List<String> shared(Collection<String> groups) {
        List<String> shared = new ArrayList<>(parts(groups.iterator().next()));
        groups.forEach(group -> shared.retainAll(parts(group)));
        return shared;
    }

    /** All names in one, as in {@code category I / category II, up to 200 kW}. */
    static String together(Collection<String> groups) {
        if (groups.size() == 1) {
            return groups.iterator().next();
        }
        List<String> words = new ArrayList<>(shared(groups));
        boolean leads = !words.isEmpty() && groups.stream().allMatch(group -> group.startsWith(words.get(0) + ", "));
        words.add(leads ? 1 : 0, String.join(" / ", toldApart(groups)));
        return String.join(", ", words);
    }

    static List<String> parts(String group) {
        return List.of(group.split(", "));
    }
}
