package dev.vibra.docs.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/** One page: what a person does with it (mouse, wheel, keys), and what can be asked about it. */
final class BrowserPage implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 20_000;

    private final DevTools tools;

    BrowserPage(DevTools tools) throws IOException {
        this.tools = tools;
        for (String domain : List.of("Page", "Runtime", "Log", "DOM")) {
            tools.call(domain + ".enable");
        }
    }

    /** Opens a file and waits until it is loaded. */
    BrowserPage open(Path file) throws IOException {
        tools.forgetEvents();
        tools.call("Page.navigate", "url", file.toUri().toString());
        await("load of " + file, () -> tools.events().stream().anyMatch(
                event -> event.method().equals("Page.loadEventFired")));
        return this;
    }

    /** Runs script in the page; a thrown error fails. */
    Object run(String script) throws IOException {
        Map<String, Object> answer = tools.call("Runtime.evaluate", "expression", script, "returnByValue", true,
                "awaitPromise", true);
        if (answer.containsKey("exceptionDetails")) {
            throw new IOException(script.substring(0, Math.min(200, script.length())) + ": "
                    + answer.get("exceptionDetails"));
        }
        return DevTools.fields(answer.get("result")).get("value");
    }

    double number(String script) throws IOException {
        return (Double) run(script);
    }

    String text(String script) throws IOException {
        return (String) run(script);
    }

    void await(String what, BooleanSupplier condition) throws IOException {
        for (long waited = 0; !condition.getAsBoolean(); waited += 20) {
            if (waited > PATIENCE_MILLIS) {
                throw new IOException("waited in vain for " + what);
            }
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
        }
    }

    void awaitTrue(String script) throws IOException {
        await(script, () -> {
            try {
                return Boolean.TRUE.equals(run(script));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private void mouse(String type, double x, double y, Object... more) throws IOException {
        Object[] all = new Object[6 + more.length];
        System.arraycopy(new Object[] {"type", type, "x", x, "y", y}, 0, all, 0, 6);
        System.arraycopy(more, 0, all, 6, more.length);
        tools.call("Input.dispatchMouseEvent", all);
    }

    void move(double x, double y) throws IOException {
        mouse("mouseMoved", x, y);
    }

    void drag(double fromX, double toX, double y) throws IOException {
        move(fromX, y);
        mouse("mousePressed", fromX, y, "button", "left", "clickCount", 1);
        mouse("mouseMoved", (fromX + toX) / 2, y, "button", "left", "buttons", 1);
        mouse("mouseMoved", toX, y, "button", "left", "buttons", 1);
        mouse("mouseReleased", toX, y, "button", "left", "clickCount", 1);
    }

    void click(double x, double y, int times) throws IOException {
        move(x, y);
        for (int count = 1; count <= times; count++) {
            mouse("mousePressed", x, y, "button", "left", "clickCount", count);
            mouse("mouseReleased", x, y, "button", "left", "clickCount", count);
        }
    }

    void wheel(double x, double y, double down) throws IOException {
        mouse("mouseWheel", x, y, "deltaX", 0, "deltaY", down);
    }

    void touchable() throws IOException {
        tools.call("Emulation.setTouchEmulationEnabled", "enabled", true);
    }

    /** Puts a finger down and takes it up again, so far below. */
    void touch(double x, double y, double down) throws IOException {
        tools.call("Input.dispatchTouchEvent", "type", "touchStart", "touchPoints", List.of(Map.of("x", x, "y", y)));
        for (int part = 1; down != 0 && part <= 5; part++) {
            tools.call("Input.dispatchTouchEvent", "type", "touchMove", "touchPoints",
                    List.of(Map.of("x", x, "y", y + down * part / 5)));
        }
        tools.call("Input.dispatchTouchEvent", "type", "touchEnd", "touchPoints", List.of());
    }

    /** Presses and releases a key; its name as in the DOM. */
    void key(String name, boolean shift) throws IOException {
        int modifiers = shift ? 8 : 0;
        String typed = name.equals("Enter") ? "\r" : name.length() == 1 ? name : "";
        tools.call("Input.dispatchKeyEvent", "type", typed.isEmpty() ? "rawKeyDown" : "keyDown", "key", name, "text",
                typed, "modifiers", modifiers, "windowsVirtualKeyCode", name.equals("Enter") ? 13 : 0);
        tools.call("Input.dispatchKeyEvent", "type", "keyUp", "key", name, "modifiers", modifiers);
    }

    void type(String text) throws IOException {
        tools.call("Input.insertText", "text", text);
    }

    /** Errors and warnings of the console, violations of the content policy among them. */
    List<String> complaints() {
        return tools.events().stream().filter(event -> event.method().equals("Runtime.exceptionThrown")
                || event.method().equals("Log.entryAdded")
                || event.method().equals("Runtime.consoleAPICalled")).map(event -> event.values().toString()).toList();
    }

    void scriptAllowed(boolean allowed) throws IOException {
        tools.call("Emulation.setScriptExecutionDisabled", "value", !allowed);
    }

    void width(int pixels) throws IOException {
        tools.call("Emulation.setDeviceMetricsOverride", "width", pixels, "height", 800, "deviceScaleFactor", 1,
                "mobile", false);
    }

    void medium(String medium) throws IOException {
        tools.call("Emulation.setEmulatedMedia", "media", medium);
    }

    /** How many of the elements take room on the page, whether or not script may run. */
    int shown(String selector) throws IOException {
        double root = (Double) DevTools.fields(tools.call("DOM.getDocument").get("root")).get("nodeId");
        int shown = 0;
        for (Object node : (List<?>) tools.call("DOM.querySelectorAll", "nodeId", (int) root, "selector", selector)
                .get("nodeIds")) {
            try {
                tools.call("DOM.getBoxModel", "nodeId", ((Double) node).intValue());
                shown++;
            } catch (IOException e) {
                // That is how the browser says that the element takes no room.
            }
        }
        return shown;
    }

    void print(Path pdf) throws IOException {
        Object data = tools.call("Page.printToPDF", "preferCSSPageSize", true, "printBackground", true).get("data");
        Files.write(pdf, Base64.getDecoder().decode((String) data));
    }

    void picture(Path png) throws IOException {
        Object data = tools.call("Page.captureScreenshot", "format", "png").get("data");
        Files.write(png, Base64.getDecoder().decode((String) data));
    }

    @Override
    public void close() throws IOException {
        try {
            tools.call("Page.close");
        } finally {
            tools.close();
        }
    }
}
