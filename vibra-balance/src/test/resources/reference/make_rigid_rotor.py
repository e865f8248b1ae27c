#!/usr/bin/env python3
"""Makes rigid-rotor.txt: a rigid rotor on unlike bearings, run in time until it is steady, by scipy.integrate.

The equations are integrated as real motions x, y and rotations about the axes (Newton and Euler), not as phasors.
Run in this directory: /usr/bin/python3 make_rigid_rotor.py
"""
import numpy as np
import scipy
from scipy.integrate import solve_ivp

m, i_d, i_p = 20.0, 0.9, 0.6
bearings = [(-0.25, 2.0e6, 3.5e6, 900.0, 1200.0), (0.35, 1.5e6, 2.5e6, 800.0, 1000.0)]  # z, kx, ky, cx, cy
omega = 2 * np.pi * 45.0
z_u, u, angle = 0.2, 1e-3, np.radians(35.0)  # kg m, with rotation from the mark
probes = [(-0.25, 0.0), (-0.25, 90.0), (0.35, 30.0)]


def rhs(t, s):
    x, y, tx, ty, vx, vy, wx, wy = s
    fx = fy = mx = my = 0.0
    for z, kx, ky, cx, cy in bearings:
        # A point at z on the axis moves by r x theta: (ty*z, -tx*z).
        px, py, qx, qy = x + ty * z, y - tx * z, vx + wy * z, vy - wx * z
        gx, gy = -kx * px - cx * qx, -ky * py - cy * qy
        fx, fy, mx, my = fx + gx, fy + gy, mx - z * gy, my + z * gx
    gx, gy = u * omega**2 * np.cos(omega * t + angle), u * omega**2 * np.sin(omega * t + angle)
    fx, fy, mx, my = fx + gx, fy + gy, mx - z_u * gy, my + z_u * gx
    # Euler: d/dt(Id*wx + Ip*omega*ty) = mx (axis tilted by ty towards x), d/dt(Id*wy - Ip*omega*tx) = my.
    return [vx, vy, wx, wy, fx / m, fy / m, (mx - i_p * omega * wy) / i_d, (my + i_p * omega * wx) / i_d]


t_end = 3.0
t = np.linspace(t_end - 20 / 45.0, t_end, 4001)
sol = solve_ivp(rhs, (0, t_end), np.zeros(8), t_eval=t, rtol=1e-10, atol=1e-14, method="DOP853")
with open("rigid-rotor.txt", "w", encoding="utf-8") as out:
    out.write("# source: time integration by scipy.integrate.solve_ivp (DOP853), SciPy %s\n" % scipy.__version__)
    out.write("# generated-by: make_rigid_rotor.py; phasors of exp(i omega t), re im, in m zero-to-peak\n")
    out.write("# tolerance: 1e-6 relative\n")
    for k, (z, direction) in enumerate(probes):
        d = np.radians(direction)
        signal = np.cos(d) * (sol.y[0] + sol.y[3] * z) + np.sin(d) * (sol.y[1] - sol.y[2] * z)
        basis = np.column_stack([np.cos(omega * t), -np.sin(omega * t)])
        re, im = np.linalg.lstsq(basis, signal, rcond=None)[0]
        out.write("probe-%d = %r %r\n" % (k, float(re), float(im)))
