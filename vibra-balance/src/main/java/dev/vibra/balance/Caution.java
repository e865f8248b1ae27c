package dev.vibra.balance;

/**
 * Caution that goes with every number which makes somebody work on a rotor. Local codes, the owner's rules and the
 * maker's limits come before anything printed here.
 *
 * @see "ISO 21940-13:2012, criteria and safeguards for the in-situ balancing of rotors (topics; wording is the
 *     library's)"
 */
public enum Caution {
    /** Isolation before hands go in. */
    LOCK_OUT("Stop, isolate and lock out the drive, wait for standstill and prove it before anybody touches the"
            + " rotor."),
    /** Guards back before a run. */
    GUARDS("Refit every guard before each run, trial runs included, and keep people out of the plane of the rotor."),
    /** A trial mass can come off or make things worse. */
    TRIAL_MASS("Fasten a trial mass for its full centrifugal force with margin; it may raise the vibration: agree on a"
            + " level at which the run is broken off."),
    /** Speed limits. */
    BURST_SPEED("Never exceed the maker's speed limit; added or removed metal must leave the strength of the rotor as"
            + " the maker allows."),
    /** Who may do it. */
    LICENSED_PRACTICE("Work on the machine is for people whom local codes and the owner authorise; where the law asks"
            + " for a licensed engineer, these numbers are input to that judgement, not a replacement.");

    private final String text;

    Caution(String text) {
        this.text = text;
    }

    /**
     * Returns the caution as a sentence.
     *
     * @return text for reports
     */
    public String text() {
        return text;
    }
}
