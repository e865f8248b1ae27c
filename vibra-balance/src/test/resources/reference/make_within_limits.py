#!/usr/bin/env python3
"""Makes within-limits.txt: probabilities that normal vectors lie within circles, by integration in SciPy.

Run in this directory: /usr/bin/python3 make_within_limits.py
"""
import numpy as np
import scipy
from scipy import integrate, stats


def anisotropic(mx, my, cov, r):
    inv, det = np.linalg.inv(cov), np.linalg.det(cov)

    def density(t, rho):
        d = np.array([rho * np.cos(t) - mx, rho * np.sin(t) - my])
        return rho * np.exp(-0.5 * d @ inv @ d) / (2 * np.pi * np.sqrt(det))

    return integrate.dblquad(density, 0, r, 0, 2 * np.pi, epsabs=1e-9)[0]


with open("within-limits.txt", "w", encoding="utf-8") as out:
    out.write("# source: scipy.stats.ncx2 and scipy.integrate.dblquad, SciPy %s\n" % scipy.__version__)
    out.write("# generated-by: make_within_limits.py\n# tolerance: 0.003 absolute (8192 points of a Sobol sequence)\n")
    out.write("offset-circle = %r\n" % float(stats.ncx2.cdf((1.5 / 0.7) ** 2, 2, (1.0 / 0.7) ** 2)))
    out.write("ellipse = %r\n" % float(anisotropic(0.8, -0.3, np.array([[0.9, 0.4], [0.4, 0.5]]), 1.2)))
