"""Transforms, filters, meters and readers one by one."""
import numpy as np
from scipy import fft, signal
from scipy.io import wavfile

import route

LENGTHS = [1024, 2048, 4096, 8192, 16384, 25600, 32768, 65536, 102400, 131072, 102397]
RATE = 25_600.0
STREAM_RATE = 51_200.0
TAPS = 128


def noise(folder, length):
    return np.fromfile(f"{folder}/noise.f64", "<f8", length)


def chain_design(low, high, rate):
    """Third-order Butterworth band limits with the trapezoidal rule in place of one zero of the high-pass, and 33 taps
    that straighten what the bilinear transform bends: weighted least squares up to 0.4 times the rate."""
    zeros, poles, gain = signal.butter(3, low, "highpass", fs=rate, output="zpk")
    sections = np.vstack([signal.zpk2sos([1, 1, -1], poles, gain * 0.5 / rate),
                          signal.butter(3, high, "lowpass", fs=rate, output="sos")])
    f = 0.4 * np.arange(1024) / 1023
    x, corner = np.pi * f, np.pi * high / rate
    wanted = np.ones(1024)
    wanted[1:] = np.tan(x[1:]) / x[1:]
    wanted *= np.sqrt((1 + (np.tan(x) / np.tan(corner)) ** 6) / (1 + (x / corner) ** 6))
    weight = np.where(f <= 1.3 * high / rate, 10.0, 1.0)
    rows = (weight / wanted)[:, None] * np.cos(2 * np.pi * np.outer(f, np.arange(17)))
    cosines = np.linalg.lstsq(rows, weight, rcond=None)[0]
    return sections, np.concatenate([cosines[:0:-1] / 2, cosines[:1], cosines[1:] / 2])


class Chain:
    def __init__(self, rate):
        self.sections, self.taps = chain_design(10, 1000, rate)
        self.rest = signal.sosfilt_zi(self.sections)
        self.reset()

    def reset(self):
        self.state = None
        self.last = np.zeros(len(self.taps) - 1)

    def run(self, x):
        state = self.rest * x[0] if self.state is None else self.state
        y, self.state = signal.sosfilt(self.sections, x, zi=state)
        y = np.concatenate([self.last, y])
        self.last = y[1 - len(self.taps):].copy()
        return np.convolve(y, self.taps, "valid")

    def once(self, x):
        self.reset()
        return self.run(x)


class LevelMeter:
    """A reading a second of the acceleration and the velocity from 10 Hz to 1000 Hz."""

    def __init__(self, length):
        self.chain = Chain(STREAM_RATE)
        self.buffers = np.empty((2, length))

    def figures(self, x):
        d = np.subtract(x, x.mean(), out=self.buffers[0])
        s = np.multiply(d, d, out=self.buffers[1])
        second = np.dot(d, d) / d.size
        return [np.sqrt(second), max(d.max(), -d.min()), np.dot(s, s) / d.size / second**2]

    def run(self, x):
        return np.array(self.figures(x) + self.figures(self.chain.run(x)))


class SpectrumMeter:
    """3200 lines up to 20 kHz, a reading a second."""

    def __init__(self):
        self.average = route.AveragedSpectrum(8192)

    def run(self, x):
        return np.sqrt(self.average.run(x))


class EnvelopeMeter:
    """Envelope of 5 kHz to 10 kHz in frames of a second, cut off above the width of the band, and its spectrum."""

    def __init__(self, length):
        self.length, self.width = length, 5000
        self.first = round(5000 * length / STREAM_RATE)
        self.out = 1 << (2 * self.width + 1).bit_length()
        self.buffer = np.zeros(length, complex)
        self.average = route.AveragedSpectrum(self.out)

    def run(self, x):
        self.buffer[: self.width + 1] = fft.rfft(x)[self.first:self.first + self.width + 1]
        fine = fft.rfft(np.abs(fft.ifft(self.buffer)))[: self.width + 1]
        fine *= 2 * self.out / self.length
        envelope = fft.irfft(fine, self.out)
        return np.concatenate([[envelope.mean()], np.sqrt(self.average.run(envelope))[2:]])


def read_wav(name, scale):
    rate, samples = wavfile.read(name)
    return samples * scale


def items(folder):
    record = np.fromfile(f"{folder}/record.f64", "<f8")
    stream = np.fromfile(f"{folder}/stream.f64", "<f8")
    sections = signal.butter(4, [500, 5000], "bandpass", fs=RATE, output="sos")
    taps = signal.firwin(TAPS, 3000, fs=RATE, window="hamming")
    chain, levels, spectra = Chain(RATE), LevelMeter(len(stream)), SpectrumMeter()
    envelopes = EnvelopeMeter(len(stream))
    transforms = {f"real-{n}": (lambda x=noise(folder, n): fft.rfft(x).view(float)) for n in LENGTHS}
    return {
        **transforms,
        "cascade": lambda: signal.sosfilt(sections, record),
        "chain": lambda: chain.once(record),
        "fir-128": lambda: signal.oaconvolve(record, taps)[: len(record)],
        "fir-128-whole": lambda: signal.oaconvolve(record, taps)[: len(record)],
        "level-meter": lambda: levels.run(stream),
        "spectrum-meter": lambda: spectra.run(stream),
        "envelope-meter": lambda: envelopes.run(stream),
        "csv": lambda: np.loadtxt(f"{folder}/record.csv", delimiter=",", skiprows=1, usecols=1),
        "csv-column": lambda: np.loadtxt(f"{folder}/column.csv", skiprows=1),
        "wav-16": lambda: read_wav(f"{folder}/record-16.wav", 50 / 32768),
        "wav-64": lambda: read_wav(f"{folder}/record-64.wav", 1.0),
    }
