"""Recomputes with scikit-image the numbers that the reader's filter and baseline are held against.

Run with scikit-image 0.19 or newer; writes skimage.tsv beside the tests' resources. The profile is
that of scipy_gel.py, from a formula that the test repeats.
"""
import pathlib

import numpy as np
import skimage
from skimage import filters, morphology

OUT = pathlib.Path(__file__).parents[1] / "resources/cistern/gel/bands/skimage.tsv"


def profile(n=120):
    y = np.arange(n)
    return 0.2 + 0.1 * np.sin(y / 7.0) + 0.5 * np.exp(-0.5 * ((y - 60) / 3.0) ** 2)


def correlate(v, kernel):
    return filters.correlate_sparse(v[:, None], kernel[:, None], mode="nearest")[:, 0]


def band_filter():
    """Negative second derivative of a Gaussian, answering 1 to a band of its own."""
    scale, sigma = 2.25, 3.0
    reach = int(np.ceil(4 * scale))
    t = np.arange(-reach, reach + 1)
    k = (1 - (t / scale) ** 2) * np.exp(-0.5 * (t / scale) ** 2)
    k = k - k.mean()
    return correlate(profile(), k / np.dot(k, np.exp(-0.5 * (t / sigma) ** 2)))


def opening():
    """The profile over its ground: smoothed by 5, opened flat over 19, smoothed by 9."""
    soft = np.pad(running_mean(profile(), 2), 19, mode="edge")
    opened = morphology.opening(soft[:, None], np.ones((19, 1)))[19:-19, 0]
    return np.maximum(0, profile() - running_mean(opened, 4))


def running_mean(v, reach):
    """Over 2 * reach + 1 values, shorter at the ends."""
    return np.array([v[max(0, i - reach) : i + reach + 1].mean() for i in range(len(v))])


with OUT.open("w") as f:
    f.write("# scikit-image " + skimage.__version__ + "\n")
    for name, values in (("filter", band_filter()), ("opening", opening())):
        f.write(name + "\t" + "\t".join(repr(float(v)) for v in values) + "\n")
