package dev.vibra.survey;

import dev.vibra.lines.NoiseFloor;
import dev.vibra.quantity.RotationSpeed;
import dev.vibra.spectrum.SpectralPeak;
import dev.vibra.spectrum.Spectrum;
import dev.vibra.survey.machine.GearData;
import dev.vibra.survey.machine.MachineDescription;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Rates of blades and gears: blade passing {@code n·f}; mesh {@code z₁·f₁}, the same for all wheels in mesh, and the
 * speed
 * of each further wheel {@code z₁·f₁/z}. Lines there are no lines of a bearing.
 */
final class OtherRates {
    private static final double TOLERANCE = 0.002;
    private static final double FALSE_ALARM = 1e-4;
    private static final int FLOOR_LINES = 40;
    private static final int HARMONICS = 3;

    private final Map<String, Double> passing = new LinkedHashMap<>();
    private final List<Double> all = new ArrayList<>();

    private OtherRates() {}

    static OtherRates of(MachineDescription machine, RotationSpeed speed) {
        OtherRates rates = new OtherRates();
        machine.blades().ifPresent(blades -> rates.passing.put("blade passing", speed.hertzOfOrder(blades)));
        for (GearData gear : machine.gears()) {
            double first = Double.isNaN(gear.speedHertz()) ? speed.hertz() : gear.speedHertz();
            double mesh = first * gear.teeth().get(0);
            rates.passing.put("mesh of " + gear.id(), mesh);
            gear.teeth().forEach(teeth -> rates.all.add(mesh / teeth));
        }
        rates.all.addAll(rates.passing.values());
        return rates;
    }

    /** Rates of all lines that are no bearing's, in Hz. */
    double[] hertz() {
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Looks for the rates in a spectrum: a line counts where noise alone would hardly make it. */
    List<EvidenceLine> search(Spectrum spectrum) {
        List<EvidenceLine> lines = new ArrayList<>();
        double end = spectrum.frequencyHertz(spectrum.lines() - 2);
        double width = FLOOR_LINES * spectrum.resolutionHertz();
        if (passing.isEmpty() || width > end) {
            return lines;
        }
        NoiseFloor floor = NoiseFloor.of(spectrum, width);
        passing.forEach((name, hertz) -> {
            for (int n = 1; n <= HARMONICS && n * hertz * (1 + TOLERANCE) < end; n++) {
                lines.add(line(spectrum, floor, name, n, n * hertz));
            }
        });
        return lines;
    }

    private static EvidenceLine line(Spectrum spectrum, NoiseFloor floor, String name, int number, double expected) {
        double reach = Math.max(spectrum.resolutionHertz(), TOLERANCE * expected);
        int searched = 1 + (int) Math.ceil(2 * reach / spectrum.resolutionHertz());
        Optional<SpectralPeak> found = spectrum.peakNear(expected, reach).filter(peak ->
                floor.probability(peak.frequencyHertz(), peak.level().si(), searched) < FALSE_ALARM);
        return new EvidenceLine(name, number + "\u00d7", found.map(SpectralPeak::frequencyHertz).orElse(expected),
                found.isPresent());
    }
}
