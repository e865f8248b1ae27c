package dev.vibra.point;

import dev.vibra.descriptor.NamedLine;
import dev.vibra.descriptor.Signals;
import dev.vibra.internal.ShaftSpeeds;
import dev.vibra.machine.DriveTrain;
import dev.vibra.machine.MachineDescription;
import dev.vibra.machine.MeasuringPoint;
import dev.vibra.machine.Rate;
import java.util.List;

/**
 * Rates of a machine at the speed that a recording shows.
 *
 * @param train what turns, meshes and passes
 * @param mainHertz speed of the main shaft in Hz
 * @param ownHertz speed of the point's shaft in Hz
 * @param motorHertz speed of the motor's shaft in Hz
 * @param exact true if a line of the shaft, or a tachometer, tells the speed
 */
record ShaftRates(DriveTrain train, double mainHertz, double ownHertz, double motorHertz, boolean exact) {
    static ShaftRates of(MachineDescription machine, MeasuringPoint point, Signals signals, List<NamedLine> lines) {
        double given = signals.speed().orElseThrow().hertz();
        NamedLine first = lines.stream().filter(PatternReading::isOwnShaft).filter(NamedLine::stands).findFirst()
                .orElse(lines.get(0));
        boolean told = signals.angle().isPresent();
        double own = told || !first.stands() ? given : first.hertz() / first.order();
        double main = own / machine.ratioAt(point);
        return new ShaftRates(machine.train(), main, own, main * machine.motorRatio(), told || first.stands());
    }

    List<Rate> all() {
        return train.ratesAt(mainHertz);
    }

    List<Rate> shafts() {
        return all().stream().filter(rate -> rate.kind() == Rate.Kind.SHAFT).toList();
    }

    /** The motor's shaft by the name that it has among all. */
    Rate motorShaft() {
        return shafts().stream().filter(rate -> ShaftSpeeds.areSame(rate.hertz(), motorHertz)).findFirst()
                .orElse(new Rate(Rate.Kind.SHAFT, "motor", motorHertz));
    }
}
