package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.quantity.Unit;
import dev.vibra.signal.Waveform;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.spectrum.SpectrumSettings;
import dev.vibra.survey.machine.MachineDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Velocity spectrum of a recording: its largest lines and the multiples of the shaft speed. */
final class VelocityLines {
    private static final int LINES_TOLD = 8;
    /** Lines below this share of the largest one are not told; common practice, no source. */
    private static final double WORTH_TELLING = 0.05;
    private static final int HIGHEST_ORDER = 10;
    /**
     * The plate speed may differ from the true one by this share, slip of a motor included; common practice, no source.
     */
    private static final double SPEED_TOLERANCE = 0.02;
    private static final double USUAL_RESOLUTION = 0.5;
    /** How far a line may lie beside the multiple of the shaft line; common practice, no source. */
    private static final double MULTIPLE_TOLERANCE = 0.003;
    /** Lines this close need a resolution of a fraction of the shaft speed. */
    private static final double LINES_PER_ORDER = 16;

    private final Waveform wave;
    private final PointSurvey.Collector results;

    VelocityLines(Waveform wave, PointSurvey.Collector results) {
        this.wave = wave;
        this.results = results;
    }

    Traces examine(Traces traces, MachineDescription machine) {
        Optional<RotationSpeed> speed = results.speed().speed();
        double resolution = speed.map(known -> Math.min(USUAL_RESOLUTION, known.hertz() / LINES_PER_ORDER))
                .orElse(USUAL_RESOLUTION);
        if (wave.length() < 16) {
            results.omit("spectrum", "the recording has " + wave.length() + " samples");
            return traces;
        }
        Spectrum spectrum =
                Spectrum.of(wave, SpectrumSettings.withDefaults().withResolution(resolution)).velocity();
        tellLargest(spectrum);
        List<EvidenceLine> lines = new ArrayList<>(speed.map(known -> orders(spectrum, known)).orElse(List.of()));
        speed.map(known -> OtherRates.of(machine, known).search(spectrum)).ifPresent(lines::addAll);
        return traces.withVelocity(spectrum, lines);
    }

    /**
     * Below the usual band, and half the shaft speed, a velocity made of acceleration is mostly noise of the measuring
     * chain.
     */
    private void tellLargest(Spectrum spectrum) {
        double lowest = results.speed().speed().map(speed -> Math.min(speed.hertz() / 2, Levels.USUAL_BAND
                .lowestHertz()))
                .orElse(Levels.USUAL_BAND.lowestHertz());
        Band band = Band.of(lowest, Levels.USUAL_BAND.highestHertz());
        List<SpectralPeak> inBand = spectrum.peaks(spectrum.lines()).stream()
                .filter(peak -> band.contains(peak.frequencyHertz())).toList();
        double least = inBand.stream().mapToDouble(peak -> peak.level().si()).max().orElse(0) * WORTH_TELLING;
        results.peaks(inBand.stream().filter(peak -> peak.level().si() >= least).limit(LINES_TOLD).toList());
    }

    private List<EvidenceLine> orders(Spectrum spectrum, RotationSpeed speed) {
        List<EvidenceLine> lines = new ArrayList<>();
        if (spectrum.resolutionHertz() > speed.hertz() / 4) {
            results.omit(DescriptorNames.velocityAtOrder(1),
                    "the recording is too short to part the multiples of the shaft speed: lines "
                    + Digits.significant(spectrum.resolutionHertz(), 3) + " Hz apart at " + speed);
            return lines;
        }
        double least = WORTH_TELLING * results.largestPeak();
        double once = shaftLine(spectrum, speed, least);
        for (int order = 1; order <= HIGHEST_ORDER; order++) {
            double hertz = once * order;
            if (hertz >= spectrum.frequencyHertz(spectrum.lines() - 2)) {
                break;
            }
            Optional<SpectralPeak> peak = spectrum.peakNear(hertz, tolerance(spectrum, hertz));
            Optional<SpectralPeak> found = peak.filter(one -> one.level().si() >= least);
            lines.add(new EvidenceLine("shaft speed", order + "\u00d7",
                    found.map(SpectralPeak::frequencyHertz).orElse(hertz), found.isPresent()));
            if (order <= 2) {
                describe(order, peak);
            }
        }
        return lines;
    }

    /**
     * Finds the line at the shaft speed, which may lie beside the speed given; its multiples are then looked for close
     * to where they must be. A wide search at each multiple would take any neighbour for it.
     */
    private static double shaftLine(Spectrum spectrum, RotationSpeed speed, double least) {
        double reach = Math.max(SPEED_TOLERANCE * speed.hertz(), spectrum.resolutionHertz());
        return spectrum.peakNear(speed.hertz(), reach).filter(peak -> peak.level().si() >= least)
                .map(SpectralPeak::frequencyHertz).orElse(speed.hertz());
    }

    private static double tolerance(Spectrum spectrum, double hertz) {
        return Math.max(MULTIPLE_TOLERANCE * hertz, spectrum.resolutionHertz());
    }

    private void describe(int order, Optional<SpectralPeak> peak) {
        String name = DescriptorNames.velocityAtOrder(order);
        Unit unit = Unit.MM_PER_S;
        peak.ifPresentOrElse(one -> results.descriptor(name, one.level().in(unit), unit.plainSymbol()),
                () -> results.omit(name, "no line stands out at " + order + " times the speed"));
    }
}
