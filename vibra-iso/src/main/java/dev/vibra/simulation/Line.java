package dev.vibra.simulation;

/**
 * One frequency as the points feel it.
 *
 * @param order multiple of the main shaft's speed
 * @param offsetHertz what comes on top
 * @param re amplitude of the acceleration at each point in m/s², real part
 * @param im imaginary part
 * @param wander how it wanders
 * @param origin what keeps it going
 * @param driver true if the forces act at the motor alone
 */
record Line(double order, double offsetHertz, double[] re, double[] im, Wander wander, Cause.Origin origin,
        boolean driver) {
    double hertz(double mainHertz) {
        return order * mainHertz + offsetHertz;
    }

    double amplitude(int point) {
        return Math.hypot(re[point], im[point]);
    }

    /** Rms velocity in m/s at a point. */
    double velocity(int point, double mainHertz) {
        return amplitude(point) / (2 * Math.PI * hertz(mainHertz)) / Math.sqrt(2);
    }

    Line scaled(double factor) {
        double[] newRe = new double[re.length];
        double[] newIm = new double[im.length];
        for (int i = 0; i < re.length; i++) {
            newRe[i] = factor * re[i];
            newIm[i] = factor * im[i];
        }
        return new Line(order, offsetHertz, newRe, newIm, wander, origin, driver);
    }
}
