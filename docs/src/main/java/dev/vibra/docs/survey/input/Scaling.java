package dev.vibra.docs.survey.input;

import dev.vibra.internal.Digits;
import dev.vibra.io.SampleFormat;
import dev.vibra.quantity.Unit;
import java.util.Optional;

/**
 * How the values of a file become values in a unit. Whole numbers are fractions of full scale; floating point and the
 * numbers of a CSV file are volts where a sensitivity is given.
 *
 * @param scale factor from the file's value to the unit, if given
 * @param sensitivityMillivoltsPerUnit sensitivity of the sensor with its amplifier, if given
 * @param fullScaleVolts voltage that full scale of whole numbers stands for, if given
 */
public record Scaling(Optional<Double> scale, Optional<Double> sensitivityMillivoltsPerUnit,
        Optional<Double> fullScaleVolts) {
    /** Says why the values of a file can't be turned into the unit, and the way out; text has no sample format. */
    Optional<String> objection(Optional<SampleFormat> format) {
        boolean fractions = areFractions(format);
        if (fractions && sensitivityMillivoltsPerUnit.isPresent() && fullScaleVolts.isEmpty()) {
            return Optional.of("fullScaleVolts is required beside sensitivityMillivoltsPerUnit: the file holds whole"
                    + " numbers, fractions of full scale; give the voltage that full scale stands for");
        }
        return !fractions && fullScaleVolts.isPresent() ? Optional.of("fullScaleVolts is for whole numbers only: the"
                + " file holds floating point or text, which counts as volts; leave it out, or give scale in place of"
                + " both") : Optional.empty();
    }

    private static boolean areFractions(Optional<SampleFormat> format) {
        return format.filter(SampleFormat::isFractionOfFullScale).isPresent();
    }

    /** {@return the factor from the file's value to the unit} */
    public double factor() {
        return scale.orElseGet(() -> sensitivityMillivoltsPerUnit
                .map(millivolts -> 1000 * fullScaleVolts.orElse(1.0) / millivolts).orElse(1.0));
    }

    /** Says how values become the unit, as in {@code 16-bit whole numbers of ±10 V full scale, 100 mV per g}. */
    String words(Optional<SampleFormat> format, Unit unit) {
        String values = format.map(SampleFormat::toString).orElse("numbers of a text file");
        if (sensitivityMillivoltsPerUnit.isPresent()) {
            return values + fullScaleVolts.map(volts -> " of ±" + number(volts) + " V full scale").orElse(" in V")
                    + ", " + number(sensitivityMillivoltsPerUnit.get()) + " mV per " + unit;
        }
        if (areFractions(format)) {
            return values + " of ±" + number(Math.abs(factor())) + " " + unit + " full scale"
                    + (factor() < 0 ? ", turned over" : "");
        }
        return values + scale.map(given -> ", times " + number(given) + " " + unit).orElse(" in " + unit);
    }

    private static String number(double value) {
        return Digits.compact(value, 6);
    }
}
