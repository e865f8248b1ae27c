package dev.vibra.docs.pages;

import dev.vibra.docs.pages.PageParser.Image;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The pictures of a page: each must be in the repository, and be what the page's session makes, where it makes one. */
final class Figures {
    private static final Pattern ELSEWHERE = Pattern.compile("^([a-zA-Z][a-zA-Z0-9+.\\-]+:|//|#).*");

    private final Page page;
    private final Path repository;
    private final List<Path> made;
    private final Set<Path> shown = new HashSet<>();
    private final List<Finding> findings = new ArrayList<>();

    private Figures(Page page, Path repository, Path madeFolder) throws IOException {
        this.page = page;
        this.repository = repository;
        this.made = files(madeFolder);
    }

    static List<Finding> compare(Page page, List<Image> images, Path repository, Path madeFolder) throws IOException {
        Figures figures = new Figures(page, repository, madeFolder);
        for (Image image : images) {
            if (!ELSEWHERE.matcher(image.target()).matches()) {
                figures.compare(image);
            }
        }
        for (Path path : figures.made) {
            if (!figures.shown.contains(path)) {
                figures.fail(1, "figure " + path.getFileName() + " is made, but the page shows no picture of that name",
                        Optional.empty());
            }
        }
        return figures.findings;
    }

    private void compare(Image image) throws IOException {
        String target = image.target().replaceFirst("[?#].*$", "");
        Path committed = page.file().resolveSibling(target).normalize();
        if (!committed.startsWith(repository)) {
            fail(image.line(), "picture lies outside the repository: " + target, Optional.empty());
            return;
        }
        if (contains(repository.relativize(committed), "target")) {
            fail(image.line(), "picture lies in a build folder, which no clone holds: " + target, Optional.empty());
            return;
        }
        Optional<Path> own = made.stream().filter(path -> path.getFileName().equals(committed.getFileName()))
                .findFirst();
        own.ifPresent(shown::add);
        Optional<Renewal> renewal = own.map(path -> new Renewal.Figure(path, committed));
        if (!Files.isRegularFile(committed)) {
            fail(image.line(), "picture is not in the repository: " + target, renewal);
        } else if (own.isPresent()) {
            Picture.difference(own.get(), committed)
                    .ifPresent(difference -> fail(image.line(), "figure " + target + " " + difference, renewal));
        }
    }

    private void fail(int line, String text, Optional<Renewal> renewal) {
        findings.add(new Finding(new Failure(page.name(), line, text), renewal));
    }

    private static boolean contains(Path path, String element) {
        for (Path part : path) {
            if (part.toString().equals(element)) {
                return true;
            }
        }
        return false;
    }

    private static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** Deletes a folder with all that it holds. */
    static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(path -> {
                try {
                    Files.delete(path);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }
}
