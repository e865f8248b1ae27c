package dev.vibra.diagnosis;

import dev.vibra.fault.Fault;
import dev.vibra.symptom.Site;

/**
 * A fault at a place, with the weight of its prior.
 *
 * @param fault the fault
 * @param site where it would sit
 * @param prior weight beside that of "none of these", which is 1
 */
record Hypothesis(Fault fault, Site site, double prior) {
    /** One code at one site is one finding, whatever its kinds. */
    String key() {
        return fault.code() + " at " + site;
    }

    /** The fault in words, with the site where that says more. */
    String words() {
        return site.owner().equals(site.kind().toString()) || site.kind() == Site.Kind.MACHINE ? fault.words()
                : fault.words() + ", " + site.owner();
    }
}
