"""The route record as one writes it who knows SciPy: one transform of the record shared by all that can share it, bands
cut out of its lines and transformed back at a low rate in batches, windows, masks and factors made beforehand."""
import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from scipy import fft

RATE = 25_600.0
LENGTH = 102_400
BLOCK = 8192
PEAKS = 20
LEVELS = 6


class Moments:
    def __init__(self):
        self.centred = np.empty(LENGTH)
        self.squares = np.empty(LENGTH)

    def run(self, x):
        mean = x.mean()
        d = np.subtract(x, mean, out=self.centred)
        s = np.multiply(d, d, out=self.squares)
        second, third, fourth = np.dot(d, d) / LENGTH, np.dot(d, s) / LENGTH, np.dot(s, s) / LENGTH
        peak = max(d.max(), -d.min())
        rms = np.sqrt(second)
        return np.array([mean, rms, peak, peak / rms, third / (second * rms), fourth / (second * second)])


class AveragedSpectrum:
    """Mean squares of Hann-weighted blocks that overlap by half, their means taken out."""

    def __init__(self, block):
        self.block = block
        self.window = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(block) / block)
        self.factor = np.full(block // 2 + 1, 2 / self.window.sum() ** 2)
        self.factor[0] /= 2
        self.factor[-1] /= 2 if block % 2 == 0 else 1
        self.bandwidth = block * (self.window**2).sum() / self.window.sum() ** 2

    def run(self, x):
        frames = sliding_window_view(x, self.block)[:: self.block // 2]
        weighted = frames - frames.mean(axis=1, keepdims=True)
        weighted *= self.window
        lines = fft.rfft(weighted, axis=1, overwrite_x=True).view(float)
        power = np.einsum("ij,ij->j", lines, lines)
        return (power[0::2] + power[1::2]) * (self.factor / len(frames))


def hann_response(d):
    return np.sinc(d) / (1 - d * d)


def peaks(mean_squares):
    """The neighbours of a line at distance d from its bin differ by 6d/(4 - d²) of it under a Hann window."""
    here = np.sqrt(mean_squares)
    k = 2 + np.flatnonzero((here[2:-2] > here[1:-3]) & (here[2:-2] >= here[3:-1]))
    if len(k) > PEAKS:
        least = np.partition(here[k], -PEAKS)[-PEAKS]
        k = k[here[k] >= 0.98 * hann_response(0.5) * least]
    s = (here[k + 1] - here[k - 1]) / here[k]
    d = np.clip(4 * s / (3 + np.sqrt(9 + 4 * s * s)), -0.5, 0.5)
    rms = here[k] / hann_response(d)
    largest = np.argsort(-rms)[:PEAKS]
    return np.concatenate([(k + d)[largest] * (RATE / BLOCK), rms[largest]])


def smooth(least):
    """The least even length of factors 2, 3 and 5 only."""
    length = least + least % 2
    while True:
        rest = length
        for prime in (2, 3, 5):
            while rest % prime == 0:
                rest //= prime
        if rest == 1:
            return length
        length += 2


class Reduction:
    """From the lines of the record to samples at an eighth of the rate: all up to 1.1 times the upper end of the band,
    a skirt of half a cosine to 1.6 times, nothing above."""

    def __init__(self, high):
        self.samples = LENGTH // 8
        self.rate = RATE / 8
        f = np.arange(self.samples // 2) * (RATE / LENGTH)
        place = np.clip((f - 1.1 * high) / (0.5 * high), 0, 1)
        self.skirt = (0.5 + 0.5 * np.cos(np.pi * place)) * (self.samples / LENGTH)
        self.ramp = np.arange(self.samples) - 0.5 * (self.samples - 1)
        self.ramp_squares = np.dot(self.ramp, self.ramp)
        self.lines = np.zeros(self.samples // 2 + 1, complex)

    def run(self, lines):
        np.multiply(lines[: self.skirt.size], self.skirt, out=self.lines[: self.skirt.size])
        y = fft.irfft(self.lines, self.samples)
        slope = np.dot(self.ramp, y) / self.ramp_squares
        y -= y.mean()
        y -= slope * self.ramp
        return y


class Motion:
    """Ends tapered over three periods of the lower end, at most a third of the record; each line divided by
    (2*pi*i*f)**n; skirts of half a cosine beside the band."""

    def __init__(self, reduction, low, high, integrations):
        samples, rate = reduction.samples, reduction.rate
        self.taper = min(samples // 3, int(np.ceil(3 * rate / low)))
        place = (np.arange(self.taper) + 0.5) / self.taper
        self.weight = place - np.sin(2 * np.pi * place) / (2 * np.pi)
        self.length = smooth(samples + self.taper)
        f = fft.rfftfreq(self.length, 1 / rate)
        outside = np.maximum((low - f) / (0.4 * low), (f - high) / (0.1 * high))
        first, last = np.flatnonzero(outside < 1)[[0, -1]]
        self.kept = slice(first, last + 1)
        skirt = np.where(outside > 0, 0.5 + 0.5 * np.cos(np.pi * outside), 1)[self.kept]
        self.response = skirt / (2j * np.pi * f[self.kept]) ** integrations
        self.samples = samples
        self.buffer = np.zeros(self.length)

    def lines(self, y, times):
        self.buffer[: self.samples] = y
        self.buffer[: self.taper] *= self.weight
        self.buffer[self.samples - self.taper:self.samples] *= self.weight[::-1]
        lines = np.zeros(times * self.length // 2 + 1, complex)
        np.multiply(fft.rfft(self.buffer)[self.kept], self.response, out=lines[self.kept])
        return lines

    def rms(self, y):
        z = fft.irfft(self.lines(y, 1), self.length)[self.taper:self.samples - self.taper]
        mean = z.mean()
        return np.sqrt(np.dot(z, z) / z.size - mean * mean)


class PeakToPeak(Motion):
    """At the instants of the record's samples, four times as dense as the motion at twice the reduced rate: found by a
    windowed sinc, and only near samples so high that a peak beside them can be the highest (Bernstein's inequality)."""

    DENSE, SIDE = 4, 11

    def __init__(self, reduction, low, high, integrations):
        super().__init__(reduction, low, high, integrations)
        cosine = np.cos(np.pi * 1.1 * high / (2 * reduction.rate))
        self.fall = (1 - cosine) / cosine
        self.around = np.arange(1 - self.SIDE, 1 + self.SIDE)
        distance = np.arange(1, self.DENSE) / self.DENSE - self.around[:, None]
        self.sinc = np.sinc(distance) * np.i0(18 * np.sqrt(1 - (distance / self.SIDE) ** 2)) / np.i0(18)

    def run(self, y):
        z = fft.irfft(self.lines(y, 2), 2 * self.length)
        first, end = 2 * self.taper, 2 * (self.samples - self.taper)
        inside = z[first:end]
        highest, lowest = inside.max(), inside.min()
        margin = 0.5 * (highest - lowest) * self.fall
        high = first + np.flatnonzero(inside >= highest - margin)
        high = high[(z[high] >= z[high - 1]) & (z[high] >= z[high + 1])]
        low = first + np.flatnonzero(inside <= lowest + margin)
        low = low[(z[low] <= z[low - 1]) & (z[low] <= z[low + 1])]
        before = np.concatenate([high, high - 1, low, low - 1, [first, end - 1]])
        before = before[before >= first]
        between = z[before[:, None] + self.around] @ self.sinc
        return 2 * (max(highest, between.max()) - min(lowest, between.min()))


class EnvelopeSpectrum:
    """Depths of the squared envelope's lines: the envelope is sampled just so densely that what is folded falls on
    lines above those that are wanted, and the Hann window is put on lines."""

    def __init__(self, low, high, highest):
        self.first, last = round(low * LENGTH / RATE), round(high * LENGTH / RATE)
        self.width = last - self.first + 1
        self.kept = round(highest * LENGTH / RATE) + 1
        self.buffer = np.zeros(smooth(self.width + self.kept + 1), complex)

    def run(self, lines):
        self.buffer[: self.width] = lines[self.first:self.first + self.width]
        parts = fft.ifft(self.buffer).view(float)
        parts *= parts
        power = fft.rfft(parts[0::2] + parts[1::2])[: self.kept + 1]
        mean = power[0].real
        power[0] = 0
        found = 0.5 * power[:-1]
        found[1:] -= 0.25 * power[:-2]
        found[1:] -= 0.25 * power[2:]
        found[0] = np.sqrt(0.125) * power[1].real
        return np.abs(found) * (4 / mean)


# Values at each end of the bands of a level that aren't counted.
ENDS = {1: 32, 2: 16, 3: 8, 4: 4, 5: 8, 6: 4}


class BandSearch:
    """Spectral kurtosis of 2, 4 .. 64 equal bands, each a brick wall at line resolution, sampled as densely as it is
    wide."""

    def run(self, lines):
        found = []
        for level in range(1, LEVELS + 1):
            bands = lines[:-1].reshape(1 << level, -1)
            parts = fft.ifft(bands, axis=1).view(float)
            parts *= parts
            squares = (parts[:, 0::2] + parts[:, 1::2])[:, ENDS[level] : -ENDS[level]]
            fourth = np.einsum("ij,ij->i", squares, squares)
            found.append(fourth * squares.shape[1] / squares.sum(axis=1) ** 2 - 2)
        return np.concatenate(found)


class Record:
    def __init__(self, x):
        self.x = x
        self.moments = Moments()
        self.spectrum = AveragedSpectrum(BLOCK)
        self.reduction = Reduction(1000)
        self.velocity = Motion(self.reduction, 10, 1000, 1)
        self.displacement = PeakToPeak(self.reduction, 2, 1000, 2)
        self.envelope = EnvelopeSpectrum(2000, 6000, 1000)
        self.search = BandSearch()

    def run_spectrum(self):
        self.mean_squares = self.spectrum.run(self.x)
        density = self.mean_squares / (self.spectrum.bandwidth * RATE / BLOCK)
        return np.concatenate([np.sqrt(self.mean_squares), density])

    def run_transform(self):
        """The lines of the record, and the reduced record that both motions are made of."""
        self.lines = fft.rfft(self.x)
        self.lines[0] = 0
        self.reduced = self.reduction.run(self.lines)
        return np.empty(0)

    def stages(self):
        return {
            "moments": lambda: self.moments.run(self.x),
            "spectrum": self.run_spectrum,
            "peaks": lambda: peaks(self.mean_squares),
            "transform": self.run_transform,
            "velocity": lambda: self.velocity.rms(self.reduced),
            "displacement": lambda: self.displacement.run(self.reduced),
            "envelope": lambda: self.envelope.run(self.lines),
            "band-search": lambda: self.search.run(self.lines),
        }


def items(folder):
    stages = Record(np.fromfile(f"{folder}/record.f64", "<f8")).stages()
    for stage in stages.values():
        stage()
    works = list(stages.values())
    return {**stages, "record": lambda: np.hstack([work() for work in works])}
