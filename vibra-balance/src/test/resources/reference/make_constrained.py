#!/usr/bin/env python3
"""Makes constrained.txt: masses on positions within limits, by scipy.optimize.

Least squares by lsq_linear (bounds) and SLSQP (bounds and a sum); least largest residual by linprog with 1440 directions.
Run in this directory: /usr/bin/python3 make_constrained.py
"""
import numpy as np
import scipy
from scipy.optimize import linprog, lsq_linear, minimize

rng = np.random.default_rng(77)
alpha = rng.normal(size=(4, 2)) + 1j * rng.normal(size=(4, 2))
v = 3 * (rng.normal(size=4) + 1j * rng.normal(size=4))
counts = [8, 12]
dirs = [np.exp(2j * np.pi * np.arange(c) / c) for c in counts]
a = np.hstack([alpha[:, [0]] * dirs[0], alpha[:, [1]] * dirs[1]])
each = np.concatenate([np.full(8, 0.6), np.full(12, 0.5)])
total = [1.0, 0.9]
ar, vr = np.vstack([a.real, a.imag]), np.concatenate([v.real, v.imag])
bounded = lsq_linear(ar, -vr, (0, each), method="bvls", tol=1e-14)
both = minimize(lambda m: np.sum((ar @ m + vr) ** 2), np.full(20, 0.01), jac=lambda m: 2 * ar.T @ (ar @ m + vr),
                bounds=list(zip(np.zeros(20), each)), method="SLSQP", options={"ftol": 1e-16, "maxiter": 2000},
                constraints=[{"type": "ineq", "fun": lambda m: total[0] - m[:8].sum()},
                             {"type": "ineq", "fun": lambda m: total[1] - m[8:].sum()}])
phi = 2 * np.pi * np.arange(1440) / 1440
ub = np.vstack([np.hstack([(np.exp(-1j * p) * a).real, -np.ones((4, 1))]) for p in phi])
rhs = np.concatenate([-(np.exp(-1j * p) * v).real for p in phi])
sums = np.zeros((2, 21))
sums[0, :8], sums[1, 8:20] = 1, 1
lp = linprog(np.eye(21)[20], A_ub=np.vstack([ub, sums]), b_ub=np.concatenate([rhs, total]),
             bounds=[(0, e) for e in each] + [(0, None)], method="highs")


def line(key, values):
    values = np.atleast_1d(values).ravel()
    if np.iscomplexobj(values):
        values = np.column_stack([values.real, values.imag]).ravel()
    return key + " = " + " ".join(repr(float(x)) for x in values)


def unbalances(m):
    return np.array([m[:8] @ dirs[0], m[8:20] @ dirs[1]])


with open("constrained.txt", "w", encoding="utf-8") as out:
    out.write("# source: scipy.optimize lsq_linear, SLSQP, linprog (HiGHS), SciPy %s\n" % scipy.__version__)
    out.write("# generated-by: make_constrained.py; complex numbers as pairs re im, with rotation\n")
    out.write("# tolerance: bounded 1e-7, sum 1e-5 (SLSQP), largest 1e-5 (1440 directions)\n")
    for key, value in [("matrix", alpha), ("vibration", v), ("bounded-objective", np.sum((ar @ bounded.x + vr) ** 2)),
                       ("bounded-unbalances", unbalances(bounded.x)),
                       ("sum-objective", both.fun), ("sum-unbalances", unbalances(both.x)),
                       ("largest-residual", lp.fun)]:
        out.write(line(key, value) + "\n")
