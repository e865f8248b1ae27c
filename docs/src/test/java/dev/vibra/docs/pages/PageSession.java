package dev.vibra.docs.pages;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Timer;
import java.util.TimerTask;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Diag;
import jdk.jshell.EvalException;
import jdk.jshell.ExpressionSnippet;
import jdk.jshell.JShell;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.Snippet.Status;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.VarSnippet;

/** One fresh JShell in this process, with the imports that the JShell tool starts with. */
final class PageSession implements AutoCloseable {
    /**
     * What both kinds of the tool import at the start: the ten packages of JDK 17, less {@code java.util.prefs}, which
     * the {@code import module java.base} of newer ones does not hold.
     */
    static final List<String> IMPORTS = List.of("java.io", "java.math", "java.net", "java.nio.file", "java.util",
            "java.util.concurrent", "java.util.function", "java.util.regex", "java.util.stream");

    private final JShell shell;
    private final Duration limit;
    private final Timer watch = new Timer("page watch", true);

    PageSession(String classPath, Duration limit) {
        this.limit = limit;
        this.shell = JShell.builder().executionEngine("local").build();
        shell.addToClasspath(classPath);
        for (String name : IMPORTS) {
            shell.eval("import " + name + ".*;");
        }
    }

    /** Class path of the running tests: Surefire's, where it starts with a jar that holds only a manifest. */
    static String testClassPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    }

    SourceCodeAnalysis.CompletionInfo analyse(String source) {
        return shell.sourceCodeAnalysis().analyzeCompletion(source);
    }

    /** Runs one statement; what happens is in the outcome, whatever it is. */
    Outcome run(String source) {
        AtomicBoolean stopped = new AtomicBoolean();
        TimerTask stop = new TimerTask() {
            @Override
            public void run() {
                stopped.set(true);
                shell.stop();
            }
        };
        watch.schedule(stop, limit.toMillis());
        try {
            Outcome outcome = outcome(source, shell.eval(source));
            return stopped.get() ? Outcome.broken(source, "statement was stopped after " + limit.toSeconds() + " s")
                    : outcome;
        } finally {
            stop.cancel();
        }
    }

    private Outcome outcome(String source, List<SnippetEvent> events) {
        Outcome outcome = Outcome.broken(source, "JShell takes no notice of the statement");
        for (SnippetEvent event : events) {
            if (event.causeSnippet() != null) {
                continue; // An earlier snippet that is compiled again because of this one.
            }
            outcome = outcome(source, event);
            if (outcome.broken().isPresent() || outcome.thrown().isPresent()) {
                return outcome;
            }
        }
        return outcome;
    }

    private Outcome outcome(String source, SnippetEvent event) {
        Snippet snippet = event.snippet();
        if (event.status() == Status.REJECTED) {
            String reason = shell.diagnostics(snippet).filter(Diag::isError).map(diag -> diag.getMessage(Locale.ROOT))
                    .findFirst().orElse("refused by JShell");
            String hint = source.stripLeading().startsWith(".")
                    ? " (a line that begins with a dot: JShell took the line before it as finished; end that line with"
                    + " the dot)" : "";
            return Outcome.broken(source, "does not compile: " + ExpectedText.collapse(reason) + hint);
        }
        if (event.status() != Status.VALID) {
            String names = snippet instanceof DeclarationSnippet declaration
                    ? shell.unresolvedDependencies(declaration).collect(Collectors.joining(", ")) : "";
            return Outcome.broken(source, "uses what is not defined above it: " + names);
        }
        JShellException exception = event.exception();
        if (exception instanceof EvalException thrown) {
            return Outcome.thrown(source, thrown.getExceptionClassName(), String.valueOf(thrown.getMessage()));
        }
        if (exception != null) {
            return Outcome.broken(source, String.valueOf(exception.getMessage()));
        }
        return new Outcome(source, value(event), prints(snippet, event), Optional.empty(), Optional.empty());
    }

    /** The value as JShell shows it; statements and declarations without one have none. */
    private static Optional<String> value(SnippetEvent event) {
        boolean valued = event.snippet() instanceof ExpressionSnippet || event.snippet() instanceof VarSnippet;
        return valued ? Optional.ofNullable(event.value()) : Optional.empty();
    }

    /** What an expression adds to the output of its block, as {@link String#valueOf(Object)} gives it. */
    private static Optional<String> prints(Snippet snippet, SnippetEvent event) {
        boolean expression = switch (snippet.subKind()) {
            case TEMP_VAR_EXPRESSION_SUBKIND, VAR_VALUE_SUBKIND, OTHER_EXPRESSION_SUBKIND -> true;
            default -> false;
        };
        String type = snippet instanceof VarSnippet variable ? variable.typeName()
                : snippet instanceof ExpressionSnippet value ? value.typeName() : "";
        String value = event.value();
        if (!expression || value == null || type.equals("java.io.PrintStream") || type.equals("PrintStream")) {
            return Optional.empty(); // System.out.printf(...) returns System.out: nothing that a page would show.
        }
        // JShell shows a string as a Java literal; a page shows the text itself.
        boolean quoted = (type.equals("String") || type.equals("java.lang.String")) && value.startsWith("\"");
        return Optional.of(quoted ? value.substring(1, value.length() - 1).translateEscapes() : value);
    }

    @Override
    public void close() {
        watch.cancel();
        shell.close();
    }
}
