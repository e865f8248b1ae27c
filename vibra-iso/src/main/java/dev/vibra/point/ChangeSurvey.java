package dev.vibra.point;

import dev.vibra.alarm.AlarmSetting;
import dev.vibra.alarm.Change;
import dev.vibra.internal.Digits;
import dev.vibra.internal.Require;
import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;

/** A descriptor compared with its baseline, and the alarm and trip values that the baseline suggests. Immutable. */
public final class ChangeSurvey implements Serializable {
    private static final long serialVersionUID = 2;

    private final String descriptor;
    private final double value;
    private final double reference;
    private final Change change;
    private final AlarmSetting setting;

    private ChangeSurvey(String descriptor, double value, double reference, Change change, AlarmSetting setting) {
        this.descriptor = Require.notBlank("descriptor", descriptor);
        this.value = Require.notNegative("value", value, "");
        this.reference = Require.notNegative("reference", reference, "");
        this.change = Objects.requireNonNull(change, "change");
        this.setting = setting;
    }

    private Object readResolve() {
        return new ChangeSurvey(descriptor, value, reference, change, setting);
    }

    /** The setting is null where the baseline suggests none. */
    static ChangeSurvey of(String descriptor, double value, double reference, Change change, AlarmSetting setting) {
        return new ChangeSurvey(descriptor, value, reference, change, setting);
    }

    /** {@return stable name of what is compared, as in {@code velocity-rms-10-1000Hz}} */
    public String descriptor() {
        return descriptor;
    }

    /** {@return value now, in the unit of the criterion} */
    public double value() {
        return value;
    }

    /** {@return value of the baseline, in the unit of the criterion} */
    public double reference() {
        return reference;
    }

    /** {@return the change held against the one that matters} */
    public Change change() {
        return change;
    }

    /** {@return true if the value rose by more than the change that matters} */
    public boolean rose() {
        return change.isSignificant() && value > reference;
    }

    /** {@return alarm and trip values suggested; empty where the baseline lies too high for any} */
    public Optional<AlarmSetting> setting() {
        return Optional.ofNullable(setting);
    }

    /** Returns the comparison in one line. */
    @Override
    public String toString() {
        return descriptor + " " + Digits.significant(value, 3) + " after " + Digits.significant(reference, 3) + ": "
                + change;
    }
}
