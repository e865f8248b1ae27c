package dev.vibra.survey;

import dev.vibra.internal.Digits;
import dev.vibra.quantity.Band;
import dev.vibra.quantity.Quantity;
import java.util.List;
import java.util.regex.Pattern;

/** Stable names of descriptors, as files and baselines use them. */
public final class DescriptorNames {
    /** Root mean square of the acceleration, m/s². */
    public static final String ACCELERATION_RMS = "acceleration-rms";
    /** Largest distance of the acceleration from its mean, m/s². */
    public static final String ACCELERATION_PEAK = "acceleration-peak";
    /** Peak over root mean square of the acceleration. */
    public static final String CREST_FACTOR = "crest-factor";
    /** Kurtosis of the acceleration, 3 for normal noise. */
    public static final String KURTOSIS = "kurtosis";
    /** Skewness of the acceleration. */
    public static final String SKEWNESS = "skewness";

    /** Zero-to-peak amplitude of the velocity once per revolution, by the tachometer, mm/s. */
    public static final String VELOCITY_VECTOR_AMPLITUDE = "velocity-1x-amplitude";
    /** Phase lag of the same behind the mark of the tachometer, degrees. */
    public static final String VELOCITY_VECTOR_LAG = "velocity-1x-lag";

    private static final Pattern BANDED =
            Pattern.compile("((velocity|displacement)-rms|displacement-peak-to-peak)-[0-9.]+-[0-9.]+Hz");

    private DescriptorNames() {}

    /**
     * Names the rms value of a motion in a band, measured through the chain of ISO 2954:2012.
     *
     * @param quantity velocity or displacement
     * @param band band of the chain
     * @return name, for example {@code velocity-rms-10-1000Hz}
     */
    public static String rms(Quantity quantity, Band band) {
        return quantity + "-rms-" + ends(band);
    }

    /**
     * Names the true peak-to-peak displacement in a band, without phase shift.
     *
     * @param band band
     * @return name, for example {@code displacement-peak-to-peak-10-1000Hz}
     */
    public static String displacementPeakToPeak(Band band) {
        return "displacement-peak-to-peak-" + ends(band);
    }

    /**
     * Names the rms velocity of the line at a multiple of the shaft speed.
     *
     * @param order multiple of the shaft speed
     * @return name, for example {@code velocity-rms-1x}
     */
    public static String velocityAtOrder(int order) {
        return "velocity-rms-" + order + "x";
    }

    private static String ends(Band band) {
        return Digits.compact(band.lowestHertz(), 6) + "-" + Digits.compact(band.highestHertz(), 6) + "Hz";
    }

    /**
     * Lists the names that a survey of an ordinary machine gives.
     *
     * @return names
     */
    public static List<String> usual() {
        return List.of(ACCELERATION_RMS, ACCELERATION_PEAK, CREST_FACTOR, KURTOSIS, SKEWNESS,
                rms(Quantity.VELOCITY, Levels.USUAL_BAND), displacementPeakToPeak(Levels.USUAL_BAND),
                rms(Quantity.DISPLACEMENT, Levels.USUAL_BAND), velocityAtOrder(1), velocityAtOrder(2));
    }

    /**
     * Tells whether a survey may give a descriptor of this name.
     *
     * @param name name
     * @return true for the usual names, for those of other bands and for those that need a tachometer
     */
    public static boolean isKnown(String name) {
        return usual().contains(name) || name.equals(VELOCITY_VECTOR_AMPLITUDE) || name.equals(VELOCITY_VECTOR_LAG)
                || BANDED.matcher(name).matches();
    }
}
