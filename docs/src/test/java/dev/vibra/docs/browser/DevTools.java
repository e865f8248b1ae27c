package dev.vibra.docs.browser;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** One connection to a page of Chromium: commands and their results, and the events that come between. */
final class DevTools implements WebSocket.Listener, AutoCloseable {
    private static final int SECONDS = 60;

    /** What the browser told without being asked. */
    record Event(String method, Map<String, Object> values) {}

    private final AtomicInteger next = new AtomicInteger();
    private final Map<Integer, CompletableFuture<Map<String, Object>>> waiting = new ConcurrentHashMap<>();
    private final List<Event> events = new CopyOnWriteArrayList<>();
    private final StringBuilder parts = new StringBuilder();
    private final WebSocket socket;

    DevTools(HttpClient client, URI address) {
        socket = client.newWebSocketBuilder().buildAsync(address, this).join();
    }

    /** Sends a command with names and values in turn, and waits for its result. */
    Map<String, Object> call(String method, Object... namesAndValues) throws IOException {
        Map<String, Object> params = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            params.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        int id = next.incrementAndGet();
        CompletableFuture<Map<String, Object>> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        socket.sendText(JsonValue.text(Map.of("id", id, "method", method, "params", params)), true).join();
        try {
            return answer.get(SECONDS, TimeUnit.SECONDS);
        } catch (Exception e) {
            throw new IOException(method + " failed: " + e.getMessage(), e);
        }
    }

    List<Event> events() {
        return new ArrayList<>(events);
    }

    void forgetEvents() {
        events.clear();
    }

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
        parts.append(data);
        if (last) {
            String message = parts.toString();
            parts.setLength(0);
            take(fields(JsonValue.parse(message)));
        }
        from.request(1);
        return null;
    }

    private void take(Map<String, Object> message) {
        if (!(message.get("id") instanceof Double id)) {
            events.add(new Event((String) message.get("method"), fields(message.get("params"))));
            return;
        }
        CompletableFuture<Map<String, Object>> answer = waiting.remove(id.intValue());
        if (message.containsKey("error")) {
            answer.completeExceptionally(new IOException(message.get("error").toString()));
        } else {
            answer.complete(fields(message.get("result")));
        }
    }

    @SuppressWarnings("unchecked")
    static Map<String, Object> fields(Object value) {
        return (Map<String, Object>) value;
    }

    @Override
    public void close() {
        socket.abort();
    }
}
