package dev.vibra.docs.fuzz;

import java.nio.file.Path;
import java.util.function.Function;

/** What is fed with inputs, and which share of a long run each gets. */
enum Targets {
    READERS(0.9, ReaderTarget::new), MACHINES(0.05, MachineTarget::new),
    SURVEYS(0.0005, SurveyTarget::new), API(0.0005, ApiTarget::new);

    private final double share;
    private final Function<Path, Target> maker;

    Targets(double share, Function<Path, Target> maker) {
        this.share = share;
        this.maker = maker;
    }

    /** A target that writes to this folder, if it has to write. */
    Target in(Path folder) {
        return maker.apply(folder);
    }

    long share(long inputs) {
        return Math.max(1, Math.round(share * inputs));
    }
}
