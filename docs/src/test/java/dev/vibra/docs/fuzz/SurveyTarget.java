package dev.vibra.docs.fuzz;

import java.nio.file.Path;

/** Whole surveys by the command: an exit code that is told, files that can be read, no number that is none. */
final class SurveyTarget implements Target {
    private final Path folder;

    SurveyTarget(Path folder) {
        this.folder = folder;
    }

    @Override
    public String name() {
        return "surveys";
    }

    @Override
    public Cost limit() {
        return new Cost(2_000_000_000L, 10_000, 20);
    }

    @Override
    public Input input(Dice dice) {
        return SurveyInput.of(folder, dice);
    }
}
