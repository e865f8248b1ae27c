package dev.vibra.alarm;

/** What a watched level says, in rising order. */
public enum AlarmState {
    /** Below the alarm. */
    NORMAL,
    /** Above the alarm for long enough: find out why, operation may go on for a time. */
    ALARM,
    /**
     * Above the trip for long enough: the machine is to be stopped, or the load taken off, as the plant's rules say.
     */
    TRIP
}
