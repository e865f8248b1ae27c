#!/usr/bin/env python3
"""Makes least-squares.txt: weighted complex least squares by NumPy/SciPy for the tests of CorrectionSolver.

Run in this directory: /usr/bin/python3 make_least_squares.py
"""
import numpy as np
import scipy
from scipy import linalg

rng = np.random.default_rng(20260)
rows, planes = 6, 3
a = rng.normal(size=(rows, planes)) + 1j * rng.normal(size=(rows, planes))
b = rng.normal(size=rows) + 1j * rng.normal(size=rows)
w = rng.uniform(0.5, 2.0, size=rows)
wa, wb = w[:, None] * a, w * b
x = linalg.lstsq(wa, -wb, lapack_driver="gelsd")[0]
scaled = wa / np.linalg.norm(wa, axis=0)
# Ridge on columns of equal length, damping as a share of the largest singular value.
ridge = 0.2
lam = ridge * np.linalg.svd(scaled, compute_uv=False)[0]
y = linalg.solve(scaled.conj().T @ scaled + lam**2 * np.eye(planes), -scaled.conj().T @ wb)
y = y / np.linalg.norm(wa, axis=0)


def line(key, values):
    values = np.atleast_1d(values).ravel()
    if np.iscomplexobj(values):
        values = np.column_stack([values.real, values.imag]).ravel()
    return key + " = " + " ".join(repr(float(v)) for v in values)


with open("least-squares.txt", "w", encoding="utf-8") as out:
    out.write("# source: scipy.linalg.lstsq (gelsd), SciPy %s, NumPy %s\n" % (scipy.__version__, np.__version__))
    out.write("# generated-by: make_least_squares.py; complex numbers as pairs re im, matrices row by row\n")
    out.write("# tolerance: 1e-10 relative\n")
    for key, value in [("matrix", a), ("vibration", b), ("weights", w), ("solution", x), ("ridge", ridge),
                       ("ridge-solution", y), ("condition", np.linalg.cond(wa)),
                       ("conflict", np.linalg.cond(scaled))]:
        out.write(line(key, value) + "\n")
