"""Writes trend-fits.txt: lines of SciPy through made readings. Run: python3 trend_fits.py"""
import numpy as np
import scipy
from scipy import stats

out = []
rng = np.random.default_rng(13381)


def row(name, values):
    out.append(name + "; " + " ".join(repr(float(v)) for v in values))


out.append("# Lines through readings: least squares (linregress), Theil-Sen (theilslopes), Spearman.")
out.append("# source: SciPy " + scipy.__version__)
out.append("# generated-by: trend_fits.py")
out.append("# tolerance: 1e-9 relative; theilslopes exact in rank, 1e-12 relative")
out.append("# rows: case; days; values; linregress (slope, intercept, stderr, intercept_stderr); theilslopes 95 %"
      " (slope, low, high); robust (Hodges-Lehmann height at mean t, error of slope, error of height); spearman of"
           " |t - mean t| with the residuals of linregress; onset (day, p) of a flat course that begins to rise")
cases = []
for n in (8, 9, 15, 24, 40):
    days = np.cumsum(rng.uniform(1, 9, n))
    values = 1.2 + 0.02 * days + 0.15 * rng.standard_normal(n)
    if n in (15, 40):
        values[n // 3] += 4
    cases.append((days, values))
ties = np.arange(12.0)
cases.append((ties, np.array([1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5, 5], float)))
for i, (days, values) in enumerate(cases):
    fit = stats.linregress(days, values)
    sen = stats.theilslopes(values, days, 0.95)
    residuals = values - fit.intercept - fit.slope * days
    row(f"days {i}", days)
    row(f"values {i}", values)
    row(f"linregress {i}", (fit.slope, fit.intercept, fit.stderr, fit.intercept_stderr))
    row(f"theilslopes {i}", (sen[0], sen[2], sen[3]))
    centre = days.mean()
    rest = values - sen[0] * (days - centre)
    walsh = [0.5 * (rest[j] + rest[k]) for j in range(len(rest)) for k in range(j, len(rest))]
    error = (sen[3] - sen[2]) / (2 * stats.norm.ppf(0.975))
    row(f"robust {i}", (np.median(walsh), error, error * np.sqrt(np.mean((days - centre) ** 2))))
    row(f"spearman {i}", (stats.spearmanr(np.abs(days - days.mean()), residuals)[0],))
days = np.arange(16.0)
values = 2 + 0.3 * np.maximum(0, days - 9) + 0.4 * rng.standard_normal(16)
fits = []
for bend in days[:-2]:
    fit = stats.linregress(np.maximum(0, days - bend), values)
    rest = values - fit.intercept - fit.slope * np.maximum(0, days - bend)
    fits.append((rest @ rest, bend))
least, bend = min(fits)
flat = ((values - values.mean()) ** 2).sum()
p = len(fits) * stats.f.sf((flat - least) / (least / 14), 1, 14)
row("onset days", days)
row("onset values", values)
row("onset", (bend, p))
open("trend-fits.txt", "w", encoding="utf-8").write("\n".join(out) + "\n")
