package dev.vibra.survey;

import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.Change;
import dev.vibra.internal.Digits;
import java.io.Serializable;
import java.util.Objects;

/**
 * A descriptor compared with its baseline, and the alarm and trip values that the baseline suggests.
 *
 * @param descriptor stable name, for example {@code velocity-rms-10-1000Hz}
 * @param value value now, in the unit of the criterion
 * @param reference value of the baseline, in the unit of the criterion
 * @param change the change held against the one that matters
 * @param setting alarm and trip values suggested
 */
public record ChangeSurvey(String descriptor, double value, double reference, Change change, AlarmSetting setting)
        implements Serializable {
    /**
     * Checks that all is there.
     *
     * @param descriptor see the record
     * @param value see the record
     * @param reference see the record
     * @param change see the record
     * @param setting see the record
     */
    public ChangeSurvey {
        Objects.requireNonNull(descriptor, "descriptor");
        Objects.requireNonNull(change, "change");
        Objects.requireNonNull(setting, "setting");
    }

    /** Returns the comparison in one line. */
    @Override
    public String toString() {
        return descriptor + " " + Digits.significant(value, 3) + " after " + Digits.significant(reference, 3) + ": "
                + change;
    }
}
