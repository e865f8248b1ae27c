package dev.vibra.filter;

/** Forward and backward filtering with continued ends. */
final class ZeroPhase {
    private final SectionCascade cascade;
    private final int continuation;

    ZeroPhase(SectionCascade cascade) {
        this.cascade = cascade;
        this.continuation = 3 * coefficients(cascade);
    }

    /** Counts the coefficients of the filter as one fraction; a first-order section has one less. */
    private static int coefficients(SectionCascade cascade) {
        int firstOrderNumerators = 0;
        int firstOrderDenominators = 0;
        for (int s = 0; s < cascade.size(); s++) {
            double[] section = cascade.section(s);
            firstOrderNumerators += section[2] == 0 ? 1 : 0;
            firstOrderDenominators += section[5] == 0 ? 1 : 0;
        }
        return 2 * cascade.size() + 1 - Math.min(firstOrderNumerators, firstOrderDenominators);
    }

    double[] filter(double[] samples) {
        int n = samples.length;
        if (n <= continuation) {
            throw new IllegalArgumentException("number of samples must be above " + continuation + ": " + n);
        }
        double[] work = new double[n + 2 * continuation];
        System.arraycopy(samples, 0, work, continuation, n);
        for (int i = 1; i <= continuation; i++) {
            work[continuation - i] = 2 * samples[0] - samples[i];
            work[continuation + n - 1 + i] = 2 * samples[n - 1] - samples[n - 1 - i];
        }
        pass(work);
        reverse(work);
        pass(work);
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            out[i] = work[continuation + n - 1 - i];
        }
        return out;
    }

    private void pass(double[] work) {
        CascadeFilter filter = cascade.newFilter();
        filter.settleAt(work[0]);
        filter.process(work, 0, work, 0, work.length);
    }

    private static void reverse(double[] work) {
        for (int i = 0, j = work.length - 1; i < j; i++, j--) {
            double swapped = work[i];
            work[i] = work[j];
            work[j] = swapped;
        }
    }
}
