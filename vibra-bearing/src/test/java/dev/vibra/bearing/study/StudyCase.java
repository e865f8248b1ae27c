package dev.vibra.bearing.study;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.envelope.Envelope;
import dev.vibra.quantity.Band;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** One simulated bearing and what the diagnosis and the yardsticks made of it. */
final class StudyCase {
    /** How a diagnosis can end. */
    enum Outcome { PRESENT, WRONG, NOT_DETERMINED, ABSENT }

    /** Header of {@link #csv()}. */
    static final String CSV_HEADER = "seed,truth,disturbance,revolutions,snr_db,outcome,detected,"
            + "outer_race,inner_race,rolling_element,cage,true_depth,found_hz,true_hz,plain_right,plain_full,reason";

    private static final double SAME_RATE = 0.02;
    /** Elements whose defect is an impact; the cage has none of its own. */
    static final List<BearingElement> STRUCK = List.of(BearingElement.OUTER_RACE, BearingElement.INNER_RACE,
            BearingElement.ROLLING_ELEMENT);

    private final long seed;
    private final BearingElement defect; // null if healthy
    private final Disturbance disturbance;
    private final double revolutions;
    private final double decibels;
    private final double trueHertz;
    private final List<ElementFinding> findings;
    private final double[] rightBand;
    private final double[] fullBand;

    private StudyCase(SimulatedBearing bearing, List<ElementFinding> findings, double[] rightBand, double[] fullBand) {
        seed = bearing.seed();
        defect = bearing.defect().orElse(null);
        disturbance = bearing.disturbance();
        revolutions = bearing.revolutions();
        decibels = bearing.decibels();
        trueHertz = bearing.defect().map(bearing::strikesHertz).orElse(0.0);
        this.findings = findings;
        this.rightBand = rightBand;
        this.fullBand = fullBand;
    }

    static StudyCase of(SimulatedBearing bearing) {
        BearingDiagnosis diagnosis = BearingDiagnosis.of(bearing.wave(), bearing.told());
        double shaft = bearing.told().shaftHertz();
        double rate = bearing.wave().sampleRateHertz();
        Band all = Band.of(0.02 * rate, rate / 2.56);
        double[][] plain = Envelope.squared(bearing.wave(), List.of(bearing.rightBand(), all)).stream()
                .map(envelope -> new PlainEnvelope(envelope, shaft).statistics(bearing.told()))
                .toArray(double[][]::new);
        return new StudyCase(bearing, diagnosis.findings(), plain[0], plain[1]);
    }

    boolean healthy() {
        return defect == null;
    }

    Disturbance disturbance() {
        return disturbance;
    }

    Optional<BearingElement> defect() {
        return Optional.ofNullable(defect);
    }

    double revolutions() {
        return revolutions;
    }

    double decibels() {
        return decibels;
    }

    private ElementVerdict verdict(BearingElement element) {
        return findings.get(element.ordinal()).verdict();
    }

    /** A wrong element counts as wrong, even beside the true one. */
    Outcome outcome() {
        boolean wrong = findings.stream().anyMatch(f -> f.verdict() == ElementVerdict.PRESENT && f.element() != defect);
        if (wrong) {
            return Outcome.WRONG;
        }
        if (defect == null) {
            boolean open = STRUCK.stream().anyMatch(e -> verdict(e) == ElementVerdict.NOT_DETERMINED);
            return open ? Outcome.NOT_DETERMINED : Outcome.ABSENT;
        }
        return switch (verdict(defect)) {
            case PRESENT -> Outcome.PRESENT;
            case ABSENT -> Outcome.ABSENT;
            case NOT_DETERMINED -> Outcome.NOT_DETERMINED;
        };
    }

    /** A family at the true rate was reported; of a healthy bearing: at the rate of any element. */
    boolean reported() {
        if (defect == null) {
            return STRUCK.stream().anyMatch(e -> findings.get(e.ordinal()).foundHertz().isPresent());
        }
        ElementFinding finding = findings.get(defect.ordinal());
        return finding.verdict() == ElementVerdict.PRESENT || finding.foundHertz().isPresent()
                && Math.abs(finding.foundHertz().getAsDouble() / trueHertz - 1) < SAME_RATE;
    }

    /** Largest statistic of the plain envelope, of a healthy bearing; that at the true element, of a defective one. */
    double plain(boolean right) {
        double[] statistics = right ? rightBand : fullBand;
        return defect == null ? Arrays.stream(statistics).max().orElseThrow() : statistics[defect.ordinal()];
    }

    /** True if the plain envelope stands highest at another element. */
    boolean plainWrong(boolean right, double threshold) {
        double[] statistics = right ? rightBand : fullBand;
        double largest = Arrays.stream(statistics).max().orElseThrow();
        return largest > threshold && largest > statistics[defect.ordinal()];
    }

    /** Returns one line: seed, truth, outcome, verdicts, evidence. */
    String csv() {
        Optional<ElementFinding> main = defect != null ? Optional.of(findings.get(defect.ordinal()))
                : findings.stream().filter(f -> f.verdict() == ElementVerdict.PRESENT).findFirst();
        String verdicts = findings.stream().map(f -> f.verdict().toString()).collect(Collectors.joining(","));
        return String.format(Locale.ROOT, "%d,%s,%s,%.1f,%.2f,%s,%s,%s,%s,%s,%s,%.4g,%.4g,\"%s\"", seed,
                defect == null ? "healthy" : defect, disturbance, revolutions, decibels,
                outcome().name().toLowerCase(Locale.ROOT), reported(), verdicts,
                main.flatMap(ElementFinding::pulsation).map(p -> text("%.3f", p.depth())).orElse(""),
                main.flatMap(ElementFinding::pulsation).map(p -> text("%.3f", p.hertz())).orElse(""),
                defect == null ? "" : text("%.3f", trueHertz), plain(true), plain(false),
                main.orElse(findings.get(0)).reason().replace('"', '\''));
    }

    private static String text(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
