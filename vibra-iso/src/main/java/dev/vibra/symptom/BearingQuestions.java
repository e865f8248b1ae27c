package dev.vibra.symptom;

import static dev.vibra.symptom.LineSize.id;

import dev.vibra.bearing.BearingDiagnosis;
import dev.vibra.bearing.ElementFinding;
import dev.vibra.bearing.ElementVerdict;
import dev.vibra.bearing.Pulsation;
import dev.vibra.bearing.kinematics.BearingElement;
import dev.vibra.point.Aspect;
import dev.vibra.point.PointSurvey;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Questions to the envelopes at a bearing. */
final class BearingQuestions {
    private static final String NOTHING = "no acceleration recording at the bearing that is good for its envelope";

    private BearingQuestions() {}

    private static Optional<BearingDiagnosis> diagnosis(PointSurvey point, Site site) {
        return point.bearings().stream().filter(one -> one.bearing().equals(site.owner())).findFirst()
                .map(one -> one.diagnosis());
    }

    private static double depth(Optional<Pulsation> pulsation) {
        return pulsation.map(Pulsation::depth).orElse(0.0);
    }

    /**
     * An element shows a defect. What was looked for and left undetermined isn't seen; where the recording had no band
     * to look in, or no room for the harmonics, nobody looked.
     */
    record Element(BearingElement element) implements Question {
        private static final List<BearingElement> ALL = List.of(BearingElement.values());

        static Element of(Figures figures) {
            String name = figures.choice("ELEMENT", ALL.stream().map(Element::plain).toList());
            return new Element(ALL.stream().filter(one -> plain(one).equals(name)).findFirst().orElseThrow());
        }

        private static String plain(BearingElement element) {
            return element.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (PointSurvey point : SitePoints.of(evidence, site, Aspect.ENVELOPE)) {
                diagnosis(point, site).map(one -> one.of(element)).ifPresentOrElse(found -> weigh(tally, point, found),
                        () -> tally.cannot(id(point), "no envelope could be judged"));
            }
            return tally.any(NOTHING);
        }

        private static void weigh(Tally tally, PointSurvey point, ElementFinding found) {
            if (found.verdict() == ElementVerdict.NOT_DETERMINED && found.detectableDepth().isEmpty()) {
                tally.cannot(id(point), found.reason());
                return;
            }
            boolean present = found.verdict() == ElementVerdict.PRESENT;
            tally.says(present, List.of(id(point)), depth(found.pulsation()), id(point) + ": "
                    + (present ? found.evidence() : found.verdict() + ", " + found.reason()));
        }
    }

    /** A pulsation at the rate of the cage and nothing else: the cage, or an element that it carries. */
    record Carried() implements Question {
        @Override
        public Answer ask(Evidence evidence, Site site) {
            Tally tally = new Tally();
            for (PointSurvey point : SitePoints.of(evidence, site, Aspect.ENVELOPE)) {
                Optional<BearingDiagnosis> diagnosis = diagnosis(point, site).filter(one -> !one.bands().isEmpty());
                if (diagnosis.isEmpty()) {
                    tally.cannot(id(point), "no envelope could be judged");
                } else {
                    Optional<Pulsation> pulsation = diagnosis.get().rollingElementOrCage();
                    tally.says(pulsation.isPresent(), List.of(id(point)), depth(pulsation), id(point) + ": "
                            + pulsation.map(one -> "pulsation at the rate of the cage, " + one)
                                    .orElse("no clear pulsation at the rate of the cage alone"));
                }
            }
            return tally.any(NOTHING);
        }
    }
}
