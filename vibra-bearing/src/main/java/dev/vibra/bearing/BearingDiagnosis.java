package dev.vibra.bearing;

import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.bearing.kinematics.KinematicFrequencies;
import dev.vibra.envelope.EnvelopeSpectrum;
import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import dev.vibra.signal.Waveform;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Envelope diagnosis of a rolling bearing: for each element whether the recording shows a defect of it, with the
 * evidence.
 *
 * <p>A defect is {@code present} if, in the squared-envelope spectrum of some band,
 * <ol>
 * <li>lines at a common fundamental within the tolerance of the kinematic rate are, two of them at least and the
 *     fundamental among them, together so improbable in noise that the false alarm probability over everything searched
 *     is kept;
 * <li>both reach the {@linkplain DiagnosisSettings#presentDepth() present depth}, a fifth more where the recording
 *     holds fewer than 50 revolutions;
 * <li>no other explanation stands: not the rate of another element within the tolerance, unless the spacing of the
 *     sidebands tells them apart; not a multiple of the shaft speed, nor a half, third or quarter of it where lines of
 *     their own stand; not a line, sideband, half, third or cage multiple of an element already found; not weaker than
 *     its own sidebands; and no other fundamental from half to one and a half times as high, apart from the element's
 *     own harmonics and sidebands, reaches half its evidence.
 * </ol>
 *
 * <p>A defect is {@code absent} if nothing significant stands within the tolerance of its rate, every band would have
 * shown the {@linkplain DiagnosisSettings#absentDepth() absent depth}, no element of the bearing shows a sign (three
 * tenths of the {@linkplain DiagnosisSettings#presentDepth() present depth}), no steady tone fills a band, and no
 * pulsation of unknown origin as deep as the present depth lies near its rate. This speaks of pulsation in the bands
 * tried, as strong as said: a spot that rolls outside the load zone stays silent. Everything else is {@code not
 * determined}, with the reason: a significant pulsation fainter than a sign too.
 *
 * <p>A pulsation at the cage rate never makes the cage {@code present}: one bad rolling element, carried round by the
 * cage, makes the same line; see {@link #rollingElementOrCage()}. Other machinery with a rate inside the tolerance of
 * an element's can't be told from it.
 *
 * <p>A verdict on a recording isn't leave to run on: that is decided under the local rules by those licensed to.
 *
 * @see "P. D. McFadden, J. D. Smith, Tribology International 17 (1984) 3-10: rates and sidebands"
 * @see "R. B. Randall, J. Antoni, Mechanical Systems and Signal Processing 25 (2011) 485-520: squared envelope"
 */
public final class BearingDiagnosis implements Serializable {
    /** Below this the lines are too coarse to tell harmonics of a bearing from those of the shaft. */
    static final double FEWEST_REVOLUTIONS = 20;

    private static final long serialVersionUID = 1;

    private final KinematicFrequencies kinematics;
    private final List<ElementFinding> findings;
    private final List<Band> bands;
    private final EnvelopeSpectrum spectrum;
    private final String bandReason;
    private final Pulsation unexplained; // null if there is none
    private final Pulsation carried; // null if the cage shows nothing as deep as a clear defect

    BearingDiagnosis(KinematicFrequencies kinematics, List<ElementFinding> findings, List<Band> bands,
            EnvelopeSpectrum spectrum, String bandReason, Pulsation unexplained, Pulsation carried) {
        this.kinematics = Objects.requireNonNull(kinematics, "kinematics");
        this.findings = List.copyOf(findings);
        this.bands = List.copyOf(bands);
        this.spectrum = spectrum;
        this.bandReason = Objects.requireNonNull(bandReason, "bandReason");
        this.unexplained = unexplained;
        this.carried = carried;
        List<BearingElement> elements = this.findings.stream().map(ElementFinding::element).toList();
        if (!elements.equals(List.of(BearingElement.values()))) {
            throw new IllegalArgumentException("findings must be one for each element, in order: " + elements);
        }
    }

    private Object readResolve() {
        return new BearingDiagnosis(kinematics, findings, bands, spectrum, bandReason, unexplained, carried);
    }

    /**
     * Diagnoses with the defaults.
     *
     * @param wave acceleration at or near the bearing's housing
     * @param kinematics kinematic rates at the speed of the recording
     * @return the diagnosis
     * @throws IllegalArgumentException if the recording isn't acceleration
     */
    public static BearingDiagnosis of(Waveform wave, KinematicFrequencies kinematics) {
        return of(Objects.requireNonNull(wave, "wave"), kinematics, DiagnosisSettings.withDefaults());
    }

    /**
     * Diagnoses.
     *
     * @param wave acceleration at or near the bearing's housing
     * @param kinematics kinematic rates at the speed of the recording
     * @param settings what is asked
     * @return the diagnosis
     * @throws IllegalArgumentException if the recording isn't acceleration or the band given doesn't fit it
     */
    public static BearingDiagnosis of(Waveform wave, KinematicFrequencies kinematics, DiagnosisSettings settings) {
        if (Objects.requireNonNull(wave, "wave").quantity() != Quantity.ACCELERATION) {
            throw new IllegalArgumentException("wave must be acceleration, in which bearings ring: " + wave.quantity());
        }
        Objects.requireNonNull(kinematics, "kinematics");
        BandSet bands = BandSet.of(wave, kinematics, Objects.requireNonNull(settings, "settings"));
        return bands.lines().isEmpty() ? nothing(kinematics, bands.obstacle())
                : new DiagnosisRun(kinematics, settings, bands).diagnosis();
    }

    private static BearingDiagnosis nothing(KinematicFrequencies kinematics, String reason) {
        List<ElementFinding> findings = new ArrayList<>();
        for (BearingElement element : BearingElement.values()) {
            findings.add(new ElementFinding(element, ElementVerdict.NOT_DETERMINED, kinematics.of(element), null,
                    0, Double.POSITIVE_INFINITY, reason));
        }
        return new BearingDiagnosis(kinematics, findings, List.of(), null, "no envelope spectrum: " + reason, null,
                null);
    }

    /**
     * Returns the kinematic rates that were looked for.
     *
     * @return the rates
     */
    public KinematicFrequencies kinematics() {
        return kinematics;
    }

    /**
     * Returns the findings.
     *
     * @return one for each element, in the order of {@link BearingElement}, unmodifiable
     */
    public List<ElementFinding> findings() {
        return findings;
    }

    /**
     * Returns the finding on one element.
     *
     * @param element element
     * @return its finding
     */
    public ElementFinding of(BearingElement element) {
        return findings.get(Objects.requireNonNull(element, "element").ordinal());
    }

    /**
     * Returns the bands whose envelopes were searched.
     *
     * @return the bands, unmodifiable; empty if the recording allowed none
     */
    public List<Band> bands() {
        return bands;
    }

    /**
     * Returns the envelope spectrum to show: that with the strongest evidence, else that of the most impulsive band.
     *
     * @return the spectrum up to the highest harmonic searched; empty if the recording allowed none or it was dropped
     */
    public Optional<EnvelopeSpectrum> spectrum() {
        return Optional.ofNullable(spectrum);
    }

    /**
     * Drops the spectrum to show, which is much larger than the findings.
     *
     * @return the same without {@link #spectrum()}
     */
    public BearingDiagnosis withoutSpectrum() {
        return new BearingDiagnosis(kinematics, findings, bands, null, bandReason, unexplained, carried);
    }

    /**
     * Returns why the spectrum shown is that of its band.
     *
     * @return one sentence
     */
    public String bandReason() {
        return bandReason;
    }

    /**
     * Returns a pulsation at least as deep as that of a clear defect, at no rate of the bearing, of the shaft or of
     * what else was told. It is looked for where no element shows a sign.
     *
     * @return the deepest one; empty if there is none
     */
    public Optional<Pulsation> unexplained() {
        return Optional.ofNullable(unexplained);
    }

    /**
     * Returns a pulsation at the cage's rate as deep as a clear defect where nothing else is present: one bad rolling
     * element, carried round by the cage, or the cage itself. The envelope can't tell which of the two. Fifty
     * revolutions are the least.
     *
     * @return the pulsation; empty if there is none, it is weaker, or an element is present
     */
    public Optional<Pulsation> rollingElementOrCage() {
        boolean named = findings.stream().anyMatch(finding -> finding.verdict() == ElementVerdict.PRESENT);
        return named ? Optional.empty() : Optional.ofNullable(carried);
    }

    /**
     * Returns the diagnosis as a table: for each element verdict, rate found of rate expected, and reason; then the
     * band.
     *
     * @return several lines without a line end at the end
     */
    public String describe() {
        StringBuilder text = new StringBuilder();
        for (ElementFinding finding : findings) {
            String found = finding.foundHertz().isPresent()
                    ? Digits.significant(finding.foundHertz().getAsDouble(), 5) : "-";
            text.append(String.format(Locale.ROOT, "%-16s %-15s %8s of %8s Hz  %s\n", finding.element(),
                    finding.verdict(), found, Digits.significant(finding.expectedHertz(), 5), finding.reason()));
        }
        return text.append(bandReason).toString();
    }

    /** Returns the findings in one line, as in {@code outer race present (107.6 Hz), inner race not determined, …}. */
    @Override
    public String toString() {
        return findings.stream().map(ElementFinding::toString).collect(Collectors.joining(", "));
    }
}
