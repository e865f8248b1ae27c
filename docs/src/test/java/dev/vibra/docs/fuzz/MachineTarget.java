package dev.vibra.docs.fuzz;

import dev.vibra.docs.survey.input.MachineFile;
import dev.vibra.docs.survey.input.MachineReading;
import dev.vibra.docs.survey.input.Problem;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Descriptions with errors: a machine comes out, or problems with file, field and line; never an exception. */
final class MachineTarget implements Target {
    private static final int LONGEST_TEXT = 1001;
    private static final int LONGEST_PROBLEM = 1500;
    private static final int MOST_PROBLEMS = 2000;

    /** Nothing is written. */
    MachineTarget(Path folder) {}

    @Override
    public String name() {
        return "machines";
    }

    @Override
    public Cost limit() {
        return new Cost(3_000_000, 1500, 2);
    }

    @Override
    public Input input(Dice dice) {
        return new ByteInput("description", bytes(dice, dice.oneIn(300) ? 200 : 3), MachineTarget::outcome);
    }

    private static byte[] bytes(Dice dice, int points) {
        Json machine = Machines.description(dice, dice.between(1, points));
        for (int i = dice.oneIn(5) ? 0 : dice.between(1, 4); i > 0; i--) {
            machine.mutate(dice);
        }
        byte[] bytes = machine.toString().getBytes(charset(dice));
        return dice.oneIn(4) ? Mutation.some(dice, bytes) : bytes;
    }

    private static Charset charset(Dice dice) {
        return dice.oneIn(20) ? dice.pick(StandardCharsets.UTF_16, StandardCharsets.UTF_16LE,
                StandardCharsets.ISO_8859_1,
                Charset.forName("UTF-32BE"), Charset.forName("UTF-32LE")) : StandardCharsets.UTF_8;
    }

    private static String outcome(byte[] bytes) {
        MachineReading reading = MachineFile.parse("machine.json", bytes);
        if (reading.problems().size() > MOST_PROBLEMS) {
            throw new AssertionError("says " + reading.problems().size() + " problems");
        }
        reading.problems().forEach(problem -> check(problem, bytes));
        reading.machine().ifPresent(Object::toString);
        if (reading.machine().isEmpty() && reading.problems().isEmpty()) {
            throw new AssertionError("there is no machine and no problem");
        }
        return reading.machine().isEmpty() ? "no machine" : reading.problems().isEmpty() ? "machine"
                : "machine with problems";
    }

    private static void check(Problem problem, byte[] bytes) {
        Shown.require("the problem", problem.toString(), LONGEST_PROBLEM);
        Shown.require("the text of a problem", problem.text(), LONGEST_TEXT);
        if (!problem.file().equals("machine.json") || problem.line() < 0 || problem.line() > lines(bytes)) {
            throw new AssertionError("file and line must be those of the description of " + lines(bytes) + " lines: "
                    + problem);
        }
    }

    private static long lines(byte[] bytes) {
        long lines = 2;
        for (byte one : bytes) {
            lines += one == '\n' || one == '\r' ? 1 : 0;
        }
        return lines;
    }
}
