"""Recomputes the numbers that SciPyTest holds the reader's parts against.

Run with SciPy 1.11 or newer; writes scipy.tsv beside the tests' resources. Profiles are from a
formula that the test repeats: no random numbers.
"""
import pathlib

import numpy as np
import scipy
from scipy import ndimage, signal

OUT = pathlib.Path(__file__).parents[1] / "resources/cistern/gel/bands/scipy.tsv"


def profile(n=120):
    y = np.arange(n)
    return 0.2 + 0.1 * np.sin(y / 7.0) + 0.5 * np.exp(-0.5 * ((y - 60) / 3.0) ** 2)


def band_filter():
    """Negative second derivative of a Gaussian, answering 1 to a band of its own."""
    scale, sigma = 2.25, 3.0
    reach = int(np.ceil(4 * scale))
    t = np.arange(-reach, reach + 1)
    k = (1 - (t / scale) ** 2) * np.exp(-0.5 * (t / scale) ** 2)
    k = k - k.mean()
    k = k / np.dot(k, np.exp(-0.5 * (t / sigma) ** 2))
    return ndimage.correlate1d(profile(), k, mode="nearest")


def opening():
    """The profile over its ground: smoothed by 5, opened flat over 19, smoothed by 9."""
    soft = running_mean(profile(), 2)
    opened = ndimage.grey_opening(soft, size=19, mode="nearest")
    return np.maximum(0, profile() - running_mean(opened, 4))


def running_mean(v, reach):
    """Over 2 * reach + 1 values, shorter at the ends."""
    ones = ndimage.correlate1d(np.ones(len(v)), np.ones(2 * reach + 1), mode="constant")
    return ndimage.correlate1d(v, np.ones(2 * reach + 1), mode="constant") / ones


def poisson_binomial():
    p = [0.9, 0.2, 0.55, 0.7, 0.05, 0.99]
    out = np.array([1.0])
    for q in p:
        out = np.convolve(out, [1 - q, q])
    return out


def savgol(derivative):
    """Weights of eleven values for a cubic, in the order in which they stand."""
    return signal.savgol_coeffs(11, 3, deriv=derivative, use="dot")


with OUT.open("w") as f:
    f.write("# SciPy " + scipy.__version__ + "\n")
    for name, values in (
        ("filter", band_filter()),
        ("opening", opening()),
        ("counts", poisson_binomial()),
        ("savgol0", savgol(0)),
        ("savgol1", savgol(1)),
        ("savgol2", savgol(2)),
    ):
        f.write(name + "\t" + "\t".join(repr(float(v)) for v in values) + "\n")
