package dev.vibra.diagnosis.study;

/**
 * Coefficients of a step of one mode, for place and velocity: of place, velocity, force at the begin and its rise within the
 * step.
 */
record ModeStep(double xx, double xv, double xf, double xr, double vx, double vv, double vf, double vr) {
    static ModeStep of(double omega, double ratio, double seconds) {
        double decay = ratio * omega;
        double ringing = omega * Math.sqrt(1 - ratio * ratio);
        double e = Math.exp(-decay * seconds);
        double c = e * Math.cos(ringing * seconds);
        double s = e * Math.sin(ringing * seconds) / ringing;
        double xx = c + decay * s;
        double vx = -omega * omega * s;
        double vv = c - decay * s;
        double rise = 1 / (omega * omega * seconds);
        double lag = 2 * ratio * rise / omega;
        return new ModeStep(xx, s, (1 - xx) / (omega * omega), rise * seconds - lag + xx * lag - s * rise, vx, vv, s,
                rise + vx * lag - vv * rise);
    }
}
