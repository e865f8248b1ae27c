package dev.vibra.docs.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** Pictures of a page: in the repository, and what the session makes. */
@ResourceLock(Resources.SYSTEM_OUT)
class FiguresTest {
    /** A page that draws a bar of the given length, as a reader would, and shows it. */
    private static final String PAGE = """
            ![A bar](figures/bar.png)

            ```java
            import java.awt.image.BufferedImage;
            import javax.imageio.ImageIO;
            BufferedImage image = new BufferedImage(160, 96, BufferedImage.TYPE_INT_RGB);
            for (int x = 0; x < LENGTH; x++) image.setRGB(x, 50, 0xffffff);
            Path figures = Files.createDirectories(Path.of("target", "figures"));
            ImageIO.write(image, "png", figures.resolve("bar.png").toFile())   // ==> true
            ```
            """;

    @TempDir
    Path folder;
    private PageRunner runner;

    @BeforeEach
    void makeRunner() throws IOException {
        runner = new PageRunner(folder, folder.resolve("work"), Duration.ofSeconds(20));
        Files.createDirectories(folder.resolve("docs/figures"));
    }

    private List<Finding> run(String text) throws IOException {
        return runner.run(Files.writeString(folder.resolve("docs/page.md"), text));
    }

    private static List<String> texts(List<Finding> findings) {
        return findings.stream().map(finding -> finding.failure().toString()).toList();
    }

    @Test
    void pictureMustBeInTheRepository() throws IOException {
        Files.writeString(folder.resolve("docs/figures/there.svg"), "<svg/>");
        Files.createDirectories(folder.resolve("docs/target"));
        Files.writeString(folder.resolve("docs/target/built.svg"), "<svg/>");
        String page = "```java\n1  // ==> 1\n```\n![](figures/there.svg) ![a](figures/gone.png \"title\")\n"
                + "<img width=\"9\" src=\"figures/lost.png\">\n![](target/built.svg)\n![](../../out.png)\n"
                + "![](https://example.org/remote.png)"
                + " [![](figures/there.svg)](x)\n```text\n![](in-a-block.png)\n```\n";
        assertEquals(List.of("page.md:4: picture is not in the repository: figures/gone.png",
                "page.md:5: picture is not in the repository: figures/lost.png",
                "page.md:6: picture lies in a build folder, which no clone holds: target/built.svg",
                "page.md:7: picture lies outside the repository: ../../out.png"), texts(run(page)));
    }

    @Test
    void madeFigureIsComparedKeptAndRenewed() throws IOException {
        Path committed = folder.resolve("docs/figures/bar.png");
        List<Finding> missing = run(PAGE.replace("LENGTH", "150"));
        assertEquals(List.of("page.md:1: picture is not in the repository: figures/bar.png"), texts(missing));
        assertTrue(Files.exists(folder.resolve("work/page/figures/bar.png")));
        assertFalse(Files.exists(PageRunner.MADE), "the next page must start without figures");

        assertEquals(List.of(), PageRunner.renew(folder.resolve("docs/page.md"), missing));
        assertTrue(Files.exists(committed));
        assertEquals(List.of(), run(PAGE.replace("LENGTH", "150")));

        List<Finding> changed = run(PAGE.replace("LENGTH", "10"));
        assertEquals(List.of("page.md:1: figure figures/bar.png differs from the committed one"
                + " by 0.91 % of full scale in"
                + " the mean, allowed are 0.49 %"), texts(changed));
        PageRunner.renew(folder.resolve("docs/page.md"), changed);
        assertEquals(List.of(), run(PAGE.replace("LENGTH", "10")));
    }

    @Test
    void figureOfAnotherNameIsNoticed() throws IOException {
        assertEquals(List.of("page.md:1: figure bar.png is made, but the page shows no picture of that name"),
                texts(run(PAGE.replace("LENGTH", "10").replace("![A bar](figures/bar.png)", ""))));
    }

    @Test
    void emptyPictureNeverPasses() throws IOException {
        BufferedImage thin = image(640, 480);
        for (int x = 0; x < 640; x++) {
            thin.setRGB(x, 100, 0);
        }
        String difference = difference(image(640, 480), thin).orElseThrow();
        assertEquals("differs from the committed one by 0.21 % of full scale in the mean,"
                + " allowed are 0.10 %", difference);
    }

    @Test
    void otherFontsPassAndOtherPicturesDoNot() throws IOException {
        BufferedImage sans = labelled(Font.SANS_SERIF, 300);
        assertEquals(Optional.empty(), difference(sans, labelled(Font.SANS_SERIF, 300)));
        assertEquals(Optional.empty(), difference(labelled(Font.SERIF, 300), sans));
        assertTrue(difference(labelled(Font.SANS_SERIF, 100), sans).isPresent());
    }

    @Test
    void sizeAndFormatAreCompared() throws IOException {
        assertEquals(Optional.of("is 10 x 12 pixels, the committed one 10 x 11"),
                difference(image(10, 12), image(10, 11)));
        Path a = Files.writeString(folder.resolve("a.svg"), "<svg/>");
        Path b = Files.writeString(folder.resolve("b.svg"), "<svg />");
        assertEquals(Optional.of("differs from the committed one"), Picture.difference(a, b));
        Path noPng = Files.writeString(folder.resolve("no.png"), "text");
        assertEquals(Optional.of("as committed is no PNG that can be read"),
                Picture.difference(write(image(9, 9), "made.png"), noPng));
    }

    private Optional<String> difference(BufferedImage made, BufferedImage committed) throws IOException {
        return Picture.difference(write(made, "made.png"), write(committed, "committed.png"));
    }

    private Path write(BufferedImage image, String name) throws IOException {
        Path file = folder.resolve(name);
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static BufferedImage image(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        graphics.dispose();
        return image;
    }

    /** A bar of a height, with words at the sides, as a chart has them. */
    private static BufferedImage labelled(String font, int height) {
        BufferedImage image = image(640, 480);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.BLACK);
        graphics.setFont(new Font(font, Font.PLAIN, 16));
        graphics.drawString("velocity in mm/s rms", 20, 30);
        graphics.drawString("frequency in Hz", 260, 465);
        graphics.fillRect(200, 440 - height, 60, height);
        graphics.dispose();
        return image;
    }
}
