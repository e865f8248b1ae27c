package dev.vibra.rotation;

/**
 * What speaks for or against a speed, and its weight: by how much one unit of it changes the logarithm of the odds.
 *
 * <p>The weights are those of a conditional logit, by maximum likelihood over the candidates of 3000 simulated machines
 * with nothing known, with a plate and with a motor; {@code SpeedStudy} in the tests fits them again and checks them on
 * other machines. Shares are those of a line in the sum of it and the largest of the first four multiples, as velocity.
 */
enum SpeedClue {
    /** Evidence of the first ten multiples in nepers, up to ten. */
    MULTIPLES(0.09),
    /** Logarithm of one plus the evidence beyond ten. */
    MANY_MULTIPLES(0.73),
    /** Evidence of the multiples, where it is negative. */
    MISSING(-1.06),
    /** Evidence of the multiples that two or three times the speed doesn't share, where it is negative. */
    OF_MULTIPLE(0.84),
    /** Nepers by which odd multiples are below even ones: half orders of twice the speed. */
    ALTERNATION(-0.62),
    /** Logarithm of one plus the evidence of lines this far apart. */
    SPACINGS(0.10),
    /** Nepers of the first multiple over the floor, up to five. */
    FIRST(0.38),
    /** 1 where the first multiple is not there. */
    NO_FIRST(-2.03),
    /** Shares of the slower lines that are no cage's. */
    SLOWER(-2.99),
    /** Shares of the slower lines at rates of a cage. */
    CAGE(0.70),
    /** Shares of the lines left unexplained up to 2.4 times the speed that are no cage's. */
    LITTLE_FASTER(-1.82),
    /**
     * Nepers, up to three, of the largest line left unexplained from 2.4 to 4 times the speed over the largest
     * multiple.
     */
    FASTER_ONE(-0.21),
    /** Number of half orders. */
    HALVES(-0.28),
    /** 1 where a single line is all that speaks for the speed, and it might lie anywhere. */
    LONE(-1.33);

    /** Worth of "none of these", as that of a speed without any clue. */
    static final double NONE = -0.86;

    private final double weight;

    SpeedClue(double weight) {
        this.weight = weight;
    }

    double weight() {
        return weight;
    }
}
