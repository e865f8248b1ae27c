package dev.vibra.docs.pages;

import dev.vibra.docs.pages.PageParser.Snippets;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Runs pages, one after the other, each in a fresh session, and lists what each says that is not so.
 *
 * <p>A page writes its figures to {@code target/figures/}, relative to where JShell was started. That folder does not
 * exist when a page starts; afterwards it is moved to a folder of the page, where it can be looked at.
 */
final class PageRunner {
    /** Where a page writes its figures, in these tests as in a reader's JShell. */
    static final Path MADE = Path.of("target", "figures");

    private final Path repository;
    private final Path workFolder;
    private final Duration limit;

    /** Takes the root of the repository, the folder for one folder a page, and the time that one statement may take. */
    PageRunner(Path repository, Path workFolder, Duration limit) {
        this.repository = repository.toAbsolutePath().normalize();
        this.workFolder = workFolder;
        this.limit = limit;
    }

    /** Runs a page and returns all that is wrong with it, by line. */
    List<Finding> run(Path file) throws IOException {
        Page page;
        try {
            page = Page.read(file);
        } catch (CharacterCodingException e) {
            String name = file.getFileName().toString();
            return List.of(new Finding(new Failure(name, 1, "page is not text in UTF-8"), Optional.empty()));
        }
        PageParser parsed = PageParser.parse(page);
        List<Finding> findings = new ArrayList<>();
        parsed.failures().forEach(failure -> findings.add(new Finding(failure, Optional.empty())));
        Figures.delete(MADE);
        findings.addAll(runBlocks(page, parsed));
        findings.addAll(Figures.compare(page, parsed.images(), repository, keepFigures(page)));
        findings.sort(Comparator.comparingInt(finding -> finding.failure().line()));
        return findings;
    }

    /** Brings a page and its figures up to date and returns the failures that this does not mend. */
    static List<Failure> renew(Path file, List<Finding> findings) throws IOException {
        List<Failure> left = new ArrayList<>();
        Set<Renewal> renewals = new HashSet<>();
        for (Finding finding : findings) {
            finding.renewal().ifPresentOrElse(renewals::add, () -> left.add(finding.failure()));
        }
        List<Renewal.Lines> changes = new ArrayList<>();
        for (Renewal renewal : renewals) {
            if (renewal instanceof Renewal.Lines lines) {
                changes.add(lines);
            } else if (renewal instanceof Renewal.Figure figure) {
                Files.createDirectories(figure.committed().getParent());
                Files.copy(figure.made(), figure.committed(), StandardCopyOption.REPLACE_EXISTING);
            }
        }
        if (!changes.isEmpty()) {
            Page page = Page.read(file);
            changes.sort(Comparator.comparingInt(Renewal.Lines::firstLine).reversed());
            changes.forEach(page::replace);
            page.write();
        }
        return left;
    }

    private List<Finding> runBlocks(Page page, PageParser parsed) {
        List<Finding> findings = new ArrayList<>();
        int expectations = 0;
        try (CapturedOutput output = new CapturedOutput();
                PageSession session = new PageSession(PageSession.testClassPath(), limit)) {
            for (Snippets snippets : parsed.snippets()) {
                BlockRunner block = new BlockRunner(page, session, snippets.java());
                expectations += block.expectationCount() + (snippets.output().isPresent() ? 1 : 0);
                output.take();
                findings.addAll(block.run());
                String printed = output.take();
                String all = block.printedByLast().map(value -> onNewLine(printed) + value).orElse(printed);
                snippets.output().ifPresent(
                        expected -> findings.addAll(OutputComparison.compare(page, expected, all)));
            }
        }
        if (expectations == 0) {
            findings.add(new Finding(new Failure(page.name(), 1, "page holds no expectation"),
                    Optional.empty()));
        }
        return findings;
    }

    private static String onNewLine(String printed) {
        return printed.isEmpty() || printed.endsWith("\n") ? printed : printed + "\n";
    }

    private Path keepFigures(Page page) throws IOException {
        Path folder = workFolder.resolve(page.title());
        Figures.delete(folder);
        Path kept = folder.resolve("figures");
        if (Files.exists(MADE)) {
            Files.createDirectories(folder);
            Files.move(MADE, kept);
        }
        return kept;
    }
}
