package dev.vibra.symptom;

/** A question to the values of the points. Implementations hold no state but their figures. */
public interface Question {
    /**
     * Asks it.
     *
     * @param evidence machine, points, references, observations
     * @param site where it is asked; of the kind that the symptom is for
     * @return the answer
     */
    Answer ask(Evidence evidence, Site site);
}
