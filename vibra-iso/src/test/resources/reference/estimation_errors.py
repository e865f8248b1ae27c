"""Writes estimation-errors.txt: scatter of the rms of Gaussian records. Run: python3 estimation_errors.py"""
import numpy as np
import scipy
from scipy import integrate, signal

RATE = 2560.0
CHAIN = (10.0, 1000.0)
RECORDS = 2000
out = []
rng = np.random.default_rng(2954)


def density(hertz, low, high, integrations):
    """White acceleration through a digital Butterworth band-pass (order 2) and the nominal chain of ISO 2954:2012."""
    sos = signal.butter(2, [low, high], "bandpass", fs=RATE, output="sos")
    band = np.abs(signal.sosfreqz(sos, worN=np.atleast_1d(hertz), fs=RATE)[1]) ** 2
    chain = 1 / ((1 + (CHAIN[0] / hertz) ** 6) * (1 + (hertz / CHAIN[1]) ** 6))
    return band * chain / (2 * np.pi * hertz) ** (2 * integrations)


def by_integral(low, high, integrations, seconds):
    """Bendat and Piersol: 1/(2 sqrt(B T)) with the effective bandwidth (int G)^2 / int G^2."""
    points = np.geomspace(1, RATE / 2 - 1e-6, 400001)
    g = density(points, low, high, integrations)
    width = integrate.simpson(g, points) ** 2 / integrate.simpson(g * g, points)
    return width, 1 / (2 * np.sqrt(width * seconds))


def by_simulation(low, high, integrations, seconds):
    """Relative scatter of the rms of Gaussian records cut from the middle of records eight times as long."""
    n = int(seconds * RATE)
    hertz = np.fft.rfftfreq(8 * n, 1 / RATE)
    shape = np.zeros(len(hertz))
    shape[1:] = np.sqrt(density(hertz[1:], low, high, integrations))
    rms = []
    for _ in range(RECORDS):
        lines = shape * (rng.standard_normal(len(hertz)) + 1j * rng.standard_normal(len(hertz)))
        record = np.fft.irfft(lines)[3 * n:4 * n]
        rms.append(np.sqrt(np.mean(record ** 2)))
    rms = np.array(rms)
    return rms.std() / np.sqrt(np.mean(rms ** 2))


out.append("# Relative standard error of the rms of Gaussian records behind the severity chain 10-1000 Hz, at 2560 Hz.")
out.append("# source: SciPy " + scipy.__version__ + "; J. S. Bendat, A. G. Piersol, Random Data (formula)")
out.append("# generated-by: estimation_errors.py")
out.append("# tolerance: the simulated error is itself good to 1/sqrt(2*2000) = 1.6 %")
out.append("# rows: ends of the band-pass in Hz, integrations, seconds; effective bandwidth in Hz, error by the formula,"
           " error by simulation")
for case in ((40, 60, 0, 4), (40, 60, 1, 2), (100, 110, 0, 4), (20, 800, 0, 1), (20, 800, 1, 2), (20, 800, 2, 4),
             (200, 300, 1, 1)):
    values = (*by_integral(*case), by_simulation(*case))
    out.append(" ".join(str(c) for c in case) + " ; " + " ".join(repr(float(v)) for v in values))
open("estimation-errors.txt", "w", encoding="utf-8").write("\n".join(out) + "\n")
