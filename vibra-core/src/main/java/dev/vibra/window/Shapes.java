package dev.vibra.window;

import dev.vibra.internal.Require;

/** Window shapes that are no sums of cosines. */
final class Shapes {
    private Shapes() {}

    private static void requireShare(String name, double share) {
        if (!(share > 0 && share <= 1)) {
            throw Require.failure(name, "above 0 and at most 1", share);
        }
    }

    /** A triangle from 0 over 1 back to 0 (Bartlett). */
    record Triangle() implements WindowShape {
        @Override
        public double at(double place) {
            return 1 - Math.abs(2 * place - 1);
        }

        @Override
        public double mainLobeHalfWidth() {
            return 2;
        }

        @Override
        public double response(double bins) {
            double x = 0.5 * Math.PI * bins;
            double ratio = Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x;
            return ratio * ratio;
        }
    }

    /** {@code I0(β·√(1 - (2x-1)²)) / I0(β)}. */
    record Kaiser(double beta) implements WindowShape {
        Kaiser {
            Require.within("beta", beta, 0, 50, "");
        }

        @Override
        public double at(double place) {
            double y = 2 * place - 1;
            return besselI0(beta * Math.sqrt(Math.max(0, 1 - y * y))) / besselI0(beta);
        }

        @Override
        public double mainLobeHalfWidth() {
            return Math.sqrt(1 + beta * beta / (Math.PI * Math.PI));
        }

        @Override
        public double response(double bins) {
            return Math.abs(lobe(bins) / lobe(0));
        }

        /** sinh(z)/z with z² = β² - (πx)², which turns into sin(|z|)/|z| outside the main lobe. */
        private double lobe(double bins) {
            double square = beta * beta - Math.PI * Math.PI * bins * bins;
            double z = Math.sqrt(Math.abs(square));
            if (z < 1e-6) {
                return 1;
            }
            return square > 0 ? Math.sinh(z) / z : Math.sin(z) / z;
        }

        /** Modified Bessel function of order 0 by its power series, which has positive terms only. */
        private static double besselI0(double x) {
            double quarter = 0.25 * x * x;
            double term = 1;
            double sum = 1;
            for (int k = 1; term > 1e-17 * sum; k++) {
                term *= quarter / ((double) k * k);
                sum += term;
            }
            return sum;
        }
    }

    /** Flat with half-cosine ends that take a fraction of the length, half of it at each end. */
    record Tukey(double fraction) implements WindowShape {
        Tukey {
            requireShare("fraction", fraction);
        }

        @Override
        public double at(double place) {
            double toEnd = Math.min(place, 1 - place);
            double end = 0.5 * fraction;
            return toEnd >= end ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * toEnd / end);
        }

        @Override
        public double mainLobeHalfWidth() {
            return 2 / (2 - fraction);
        }
    }

    /** Falls from 1 at the first sample to a given value at the end. */
    record Exponential(double endValue) implements WindowShape {
        Exponential {
            requireShare("endValue", endValue);
        }

        @Override
        public double at(double place) {
            return Math.pow(endValue, place);
        }

        @Override
        public double mean() {
            return meanOf(decay());
        }

        @Override
        public double meanSquare() {
            return meanOf(2 * decay());
        }

        /** Integral of exp(-(d + ix)·t) over t from 0 to 1, over that for x = 0. */
        @Override
        public double response(double bins) {
            double x = 2 * Math.PI * bins;
            double re = 1 - endValue * Math.cos(x);
            double im = endValue * Math.sin(x);
            double length = Math.hypot(decay(), x);
            return length == 0 ? 1 : Math.hypot(re, im) / length / mean();
        }

        private double decay() {
            return -Math.log(endValue);
        }

        private static double meanOf(double decay) {
            return decay == 0 ? 1 : -Math.expm1(-decay) / decay;
        }

        @Override
        public double mainLobeHalfWidth() {
            return 2; // it has no zero; its lobe is as wide as that of a window half as long
        }
    }

    /** 1 over the first part of the block, then half a cosine down to 0 over a quarter of that part, then 0. */
    record Force(double fraction) implements WindowShape {
        Force {
            requireShare("fraction", fraction);
        }

        @Override
        public double at(double place) {
            double past = (place - fraction) / (0.25 * fraction);
            if (past <= 0) {
                return 1;
            }
            return past >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * past);
        }

        @Override
        public double end() {
            return Math.min(1, 1.25 * fraction);
        }

        @Override
        public double mainLobeHalfWidth() {
            return 1 / fraction;
        }
    }
}
