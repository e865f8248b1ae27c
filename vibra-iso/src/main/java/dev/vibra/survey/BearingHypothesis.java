package dev.vibra.survey;

import dev.vibra.bearing.BearingElement;
import dev.vibra.bearing.ElementFinding;
import java.util.ArrayList;
import java.util.List;

/**
 * Defect of one element of one bearing, as heard at all points near that bearing.
 *
 * <p>Belief is 0.7 where one point shows the element, 0.1 more for each further one up to 0.9, and 0.1 less for each
 * sound
 * point at the same bearing that finds it absent: common practice, no source.
 */
final class BearingHypothesis {
    static final String FAULT = "rolling bearing";

    private final String bearing;
    private final BearingElement element;
    private final List<String> points = new ArrayList<>();
    private final List<String> evidence = new ArrayList<>();
    private final List<String> against = new ArrayList<>();
    private int contradicting;

    BearingHypothesis(String bearing, BearingElement element) {
        this.bearing = bearing;
        this.element = element;
    }

    void hear(PointSurvey point, ElementFinding found) {
        String id = point.point().id();
        switch (found.verdict()) {
            case PRESENT -> {
                points.add(id);
                evidence.add(id + ": " + found.evidence());
            }
            case ABSENT -> {
                contradicting++;
                against.add(id + " finds it absent: " + found.reason());
            }
            case NOT_DETERMINED -> against.add(id + " can't tell: " + found.reason());
        }
    }

    boolean isRaised() {
        return !points.isEmpty();
    }

    Finding weigh() {
        double belief = Math.min(0.9, 0.6 + 0.1 * points.size()) - 0.1 * contradicting;
        return new Finding(FAULT + ", " + element + ", " + bearing, Math.max(0.1, belief), points, evidence, against,
                "a second recording at another load or with another sensor position; the trend over the next weeks;"
                        + " lubricant, temperature and, at the next stop, inspection of the bearing");
    }
}
