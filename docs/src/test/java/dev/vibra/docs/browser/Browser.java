package dev.vibra.docs.browser;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Chromium without a window, with a profile of its own that is gone at the end. */
final class Browser implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 30_000;

    private final Process process;
    private final Path profile;
    private final HttpClient client = HttpClient.newHttpClient();

    private Browser(Process process, Path profile) {
        this.process = process;
        this.profile = profile;
    }

    static Browser start() throws IOException, InterruptedException {
        Path profile = Files.createTempDirectory("vibra-browser");
        // Only pages that the check itself has written are opened, so that root may do without the sandbox.
        Process process = new ProcessBuilder(program(), "--headless", "--no-sandbox", "--disable-gpu",
                "--disable-dev-shm-usage", "--no-first-run", "--remote-debugging-port=0",
                "--user-data-dir=" + profile, "--window-size=1000,800", "about:blank")
                .redirectErrorStream(true).redirectOutput(profile.resolve("log.txt").toFile()).start();
        Browser browser = new Browser(process, profile);
        browser.awaitFile(profile.resolve("DevToolsActivePort"));
        return browser;
    }

    private static String program() {
        String given = System.getProperty("browser");
        if (given != null) {
            return given;
        }
        for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
            for (String folder : System.getenv("PATH").split(File.pathSeparator)) {
                if (Files.isExecutable(Path.of(folder, name))) {
                    return Path.of(folder, name).toString();
                }
            }
        }
        throw new IllegalStateException("no chromium, chromium-browser or google-chrome on the PATH: install Debian's"
                + " package chromium, or name a program by -Dbrowser=...");
    }

    private void awaitFile(Path file) throws IOException, InterruptedException {
        for (long waited = 0; !Files.exists(file) || Files.size(file) == 0; waited += 50) {
            if (waited > PATIENCE_MILLIS || !process.isAlive()) {
                String log = Files.readString(profile.resolve("log.txt"));
                close();
                throw new IllegalStateException("the browser didn't start: " + log);
            }
            Thread.sleep(50);
        }
    }

    /** Opens an empty page. */
    BrowserPage page() throws IOException, InterruptedException {
        String port = Files.readAllLines(profile.resolve("DevToolsActivePort")).get(0);
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/json/new?about:blank"))
                .PUT(HttpRequest.BodyPublishers.noBody()).build();
        String answer = client.send(request, HttpResponse.BodyHandlers.ofString()).body();
        String address = (String) DevTools.fields(JsonValue.parse(answer)).get("webSocketDebuggerUrl");
        return new BrowserPage(new DevTools(client, URI.create(address)));
    }

    @Override
    public void close() {
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
        try {
            if (!process.waitFor(10, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
            remove(profile);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void remove(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
