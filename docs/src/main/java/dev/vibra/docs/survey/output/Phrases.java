package dev.vibra.docs.survey.output;

import dev.vibra.severity.Judgement;
import dev.vibra.severity.Zone;
import dev.vibra.survey.PointSurvey;
import java.util.List;
import java.util.stream.Collectors;

/** Wording shared by the printed summary and the report. */
final class Phrases {
    static final String INSISTED = "the recording is not sound; this verdict was insisted on";

    private Phrases() {}

    /** Returns value, uncertainty, unit and detector, as in {@code 4.31 ± 0.22 mm/s rms}. */
    static String value(Judgement judgement) {
        return PlainNumber.forPeople(judgement.value()) + " \u00b1 "
                + PlainNumber.withPlacesOf(judgement.expandedUncertainty(), judgement.value()) + " "
                + judgement.criterion().unit() + " " + judgement.criterion().detector();
    }

    /** Returns the limits, as in {@code 1.4 / 2.8 / 4.5}. */
    static String limits(Judgement judgement) {
        return judgement.criterion().limits().stream().map(PlainNumber::of).collect(Collectors.joining(" / "));
    }

    /** Returns the zone, and where the uncertainty reaches others, these too, as in {@code C (B or C)}. */
    static String zone(Judgement judgement) {
        List<Zone> zones = judgement.zonesWithinUncertainty();
        return zones.size() < 2 ? judgement.zone().name() : judgement.zone().name() + " ("
                + zones.stream().map(Zone::name).collect(Collectors.joining(" or ")) + ")";
    }

    /** Says why a point has no zone. */
    static String whyNoZone(PointSurvey point) {
        return point.omissions().stream()
                .filter(one -> one.part().contains("severity") || one.part().equals("recording"))
                .findFirst().map(one -> one.reason()).orElse("no reason noted");
    }
}
