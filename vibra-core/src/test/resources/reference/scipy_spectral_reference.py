"""Makes the SciPy reference values of spectra and of operations in time beside this script: python3 scipy_spectral_reference.py

Made with SciPy 1.10.1 (Debian's python3-scipy). The Maven profile "reference" makes them anew and compares.
"""
import pathlib

import numpy
import scipy
from scipy import integrate, signal, stats

FOLDER = pathlib.Path(__file__).parent
FS = 1000.0


def pair():
    rng = numpy.random.default_rng(7626)
    x = rng.standard_normal(500)
    y = signal.lfilter([0.5, 0.3, 0.1], [1, -0.4], x) + 0.4 * rng.standard_normal(500)
    return x, y


def cross():
    x, y = pair()
    table = {"x": x, "y": y}
    for n in (64, 75):
        settings = dict(fs=FS, window="hann", nperseg=n, noverlap=n // 2, detrend="constant")
        for scaling in ("spectrum", "density"):
            _, p = signal.csd(x, y, scaling=scaling, **settings)
            table[f"{scaling}.{n}.re"], table[f"{scaling}.{n}.im"] = p.real, p.imag
        _, table[f"coherence.{n}"] = signal.coherence(x, y, **settings)
    return table


def maps():
    x, _ = pair()
    table = {"samples": x}
    for n in (64, 75):
        settings = dict(fs=FS, window="hann", nperseg=n, noverlap=n // 2)
        for scaling in ("spectrum", "density"):
            _, t, p = signal.spectrogram(x, detrend="constant", scaling=scaling, mode="psd", **settings)
            table[f"{scaling}.{n}"] = p.T.ravel()
        table[f"times.{n}"] = t
    # The short-time transform without ends, scaled as a spectrum: its one-sided squares times two are mean squares.
    _, _, z = signal.stft(x - x.mean(), FS, "hann", 64, 32, boundary=None, padded=False, detrend="constant")
    table["stft.re"], table["stft.im"] = z.T.real.ravel(), z.T.imag.ravel()
    return table


def peaks():
    x, _ = pair()
    _, p = signal.welch(x, FS, window="hann", nperseg=100, noverlap=50, detrend="constant", scaling="spectrum")
    found, _ = signal.find_peaks(p[2:-2])
    return {"samples": x, "lines": found + 2.0}


def time_domain():
    x, _ = pair()
    x = x[:200] + 0.01 * numpy.arange(200) + 3
    return {"samples": x, "line": signal.detrend(x), "mean": signal.detrend(x, type="constant"),
            "trapezoid": integrate.cumulative_trapezoid(x, dx=1 / FS, initial=0),
            "percentiles": numpy.percentile(x, [0, 1, 10, 50, 90, 99, 100])}


def statistics():
    table = {}
    for freedom in (2.0, 7.3, 40.0):
        table[f"chi2.{freedom}"] = stats.chi2.ppf([0.025, 0.5, 0.975], freedom)
    # Logarithm of the chance that a gamma variable of a shape passes ratio times its mean.
    table["ratios"] = [0.1, 0.5, 1.0, 1.5, 3.0, 6.0, 10.0, 15.0]
    for shape in (1.0, 3.0, 3.5, 40.25):
        table[f"gamma.logsf.{shape}"] = stats.gamma.logsf(table["ratios"], shape, scale=1 / shape)
        table[f"gamma.median.{shape}"] = [stats.gamma.median(shape, scale=1 / shape)]
    return table


def cepstra():
    x, _ = pair()
    table = {}
    for n in (256, 255):
        part = x[:n]
        table[f"samples.{n}"] = part
        table[f"cepstrum.{n}"] = numpy.fft.irfft(numpy.log(numpy.abs(numpy.fft.rfft(part))), n)
    return table


def squared_envelope(x, first, last, length):
    """Of the lines first to last, by SciPy's analytic signal, at another number of samples; 0 Hz holds nothing."""
    lines = numpy.fft.rfft(x - x.mean())
    kept = numpy.zeros_like(lines)
    kept[first:last + 1] = lines[first:last + 1]
    return signal.resample(numpy.abs(signal.hilbert(numpy.fft.irfft(kept, x.size))) ** 2, length)


def bands():
    """Criteria of bands of a tree: variation, entropy relative to an even spread, of y and of its squared lines."""
    rng = numpy.random.default_rng(108124)
    x = 0.3 + rng.standard_normal(600) * (1 + 0.9 * numpy.cos(2 * numpy.pi * 0.02 * numpy.arange(600)))
    table = {"samples": x}
    for parts in (1, 2, 3, 4, 6):
        for i in range(parts):
            first, last = int(numpy.ceil(300 * i / parts)), int(numpy.floor(300 * (i + 1) / parts))
            length = min(600, int(2 ** numpy.ceil(numpy.log2(2 * (last - first + 1)))))
            y = squared_envelope(x, first, last, length)
            end = min(length // 8, int(numpy.ceil(4 * length * parts / 300)))
            kept = y[end:length - end]
            filled = numpy.ones(length)
            filled[end:length - end] = kept / kept.mean()
            z = numpy.abs(numpy.fft.rfft(filled)[1:min((length - 1) // 2, round(300 / parts)) + 1]) ** 2
            table[f"{parts}.{i}"] = [stats.variation(kept) ** 2 - 1, stats.entropy(kept, numpy.ones(kept.size)),
                                     stats.entropy(z, numpy.ones(z.size))]
    return table


def cyclic():
    """Averaged cyclic periodogram: coherence of a recording turned up and down by half the cyclic frequency."""
    rng = numpy.random.default_rng(248277)
    t = numpy.arange(4000) / FS
    x = numpy.round((1 + 0.8 * numpy.cos(2 * numpy.pi * 50 * t)) * rng.standard_normal(t.size), 4)
    table = {"samples": x}
    for hertz in (50, 100, 130):
        turn = numpy.exp(1j * numpy.pi * hertz * t)
        f, c = signal.coherence(x * turn, x / turn, FS, window="hann", nperseg=64, noverlap=48, detrend=False)
        table[f"coherence.{hertz}"] = [c[(numpy.abs(f) > 60) & (numpy.abs(f) < 440)].mean()]
    return table


def fast(length):
    """The shortest even length of factors 2, 3 and 5."""
    return next(n for n in range(length, 2 * length + 2) if n % 2 == 0 and 2**40 * 3**20 * 5**12 % n == 0)


def cosine_skirt(place):
    return 0.5 + 0.5 * numpy.cos(numpy.pi * numpy.clip(place, 0, 1))


def motion(lines, length, integrations, low, high, samples):
    """Rms and peak-to-peak between the tapers, at a reduced rate and at the instants of the recording."""
    hertz = numpy.arange(lines.size) * FS / length
    kept = (lines * cosine_skirt((hertz - 1.1 * high) / (0.5 * high)))[:samples // 2 + 1]
    kept[-1] = 0
    x = signal.detrend(numpy.fft.irfft(kept, samples)) * samples / length
    taper = min(samples // 3, int(numpy.ceil(3 * FS * samples / length / low)))
    place = (numpy.arange(taper) + 0.5) / taper
    rise = place - numpy.sin(2 * numpy.pi * place) / (2 * numpy.pi)
    x[:taper] *= rise
    x[-taper:] *= rise[::-1]
    padded = fast(samples + taper)
    y = numpy.fft.rfft(x, padded)
    f = numpy.fft.rfftfreq(padded, length / samples / FS)
    skirt = cosine_skirt(numpy.maximum((low - f) / (0.4 * low), (f - high) / (0.1 * high)))
    out = numpy.zeros_like(y)
    out[skirt > 0] = y[skirt > 0] * skirt[skirt > 0] / (2j * numpy.pi * f[skirt > 0]) ** integrations
    times = length // samples
    fine = times * numpy.fft.irfft(out, times * padded)[times * taper:times * (samples - taper)]
    coarse = fine[::times]
    return [coarse.std(), numpy.ptp(fine)]


def record():
    """What is made of one transform of a whole recording: levels in bands, envelope spectrum, dyadic kurtosis."""
    rng = numpy.random.default_rng(102400)
    n = 1280
    t = numpy.arange(n) / FS
    x = rng.standard_normal(n) * (1 + 0.9 * numpy.cos(2 * numpy.pi * 17 * t)) + 4 * numpy.cos(2 * numpy.pi * 31.3 * t)
    x += 3 + 0.5 * t
    lines = numpy.fft.rfft(x - x.mean())
    lines[0] = 0
    table = {"samples": x}
    for low in (6, 12):
        for integrations in (0, 1, 2):
            table[f"motion.{low}.{integrations}"] = motion(lines, n, integrations, low, 50, 320)
    y = squared_envelope(x, 128, 384, n)
    _, p = signal.periodogram(y, FS, window="hann", detrend="constant", scaling="spectrum")
    table["depths"] = numpy.sqrt(2 * p[1:77]) / y.mean()
    table["kurtosis"] = [stats.variation(y) ** 2 - 1]
    for level in range(1, 5):
        w = n // 2 >> level
        ends = 4 if level % 2 == 0 else 8  # values at each end that aren't counted
        bands_of_level = [numpy.abs(numpy.fft.ifft(lines[i * w:(i + 1) * w]))[ends:-ends] ** 2 for i in range(2**level)]
        table[f"level.{level}"] = [numpy.mean(z**2) / numpy.mean(z) ** 2 - 2 for z in bands_of_level]
    return table


FILES = {"cross": cross, "maps": maps, "peaks": peaks, "time-domain": time_domain, "statistics": statistics,
         "cepstra": cepstra, "bands": bands, "cyclic": cyclic, "record": record}


def write(name, table):
    lines = [f"# source: SciPy {scipy.__version__}, NumPy {numpy.__version__}",
             "# generated by: scipy_spectral_reference.py", "# tolerance: relative 1e-9 of the largest value of a row",
             "# a row: name = values"]
    lines += [f"{key} = {' '.join(repr(float(v)) for v in values)}" for key, values in table.items()]
    (FOLDER / f"scipy-{name}.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    for file_name, function in FILES.items():
        write(file_name, function())
