"""Background, lanes and peaks of the gel of GelBenchmark with scikit-image, on one thread.

The picture is made by the formula of InventedGel.java. Prints milliseconds for each way of taking
the background away; lanes and peaks are the same. Needs scikit-image 0.19 or newer.
"""
import os

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import time

import numpy as np
from scipy.signal import find_peaks
from skimage import __version__, feature, filters, morphology, restoration

WIDTH, HEIGHT, LANES, BANDS, PITCH, HALF = 1500, 1000, 12, 8, 120.0, 40.0


def picture():
    x = np.arange(WIDTH)[None, :].astype(float)
    y = np.arange(HEIGHT)[:, None].astype(float)
    lane = np.clip(((x - 30) / PITCH).astype(int), 0, LANES - 1)
    edge = 1 / (1 + np.exp(np.abs(x - (90 + PITCH * lane)) - HALF))
    hump = 0.25 * np.exp(-0.5 * ((y - 500) / 120) ** 2)
    bands = sum(0.3 * np.exp(-0.5 * ((y - (150 + 90 * b + 7 * (lane % 5))) / 3.5) ** 2) for b in range(BANDS))
    density = 0.02 + edge * (0.05 + hump + bands)
    grain = np.sin(x * 12.9898 + y * 78.233) * 43758.5453
    grain = grain - np.floor(grain) - 0.5
    return np.clip(0.9 * 10**-density + 0.02 * grain, 0, 1).astype(np.float32)


def lanes_and_peaks(flat):
    columns = filters.gaussian(flat.mean(axis=0), 4)
    centres, _ = find_peaks(columns, distance=40, prominence=0.2 * np.ptp(columns))
    found = 0
    for centre in centres:
        profile = filters.gaussian(flat[:, max(0, centre - 33) : centre + 33].mean(axis=1), 2)
        found += len(feature.peak_local_max(profile, min_distance=5, threshold_abs=0.05))
    return len(centres), found


def density(image):
    return -np.log10(np.maximum(image, 1e-3))


WAYS = {
    "white top-hat, square of 61": lambda od: morphology.white_tophat(od, morphology.square(61)),
    "rolling ball, radius 50": lambda od: od - restoration.rolling_ball(od, radius=50, num_threads=1),
}

if __name__ == "__main__":
    image = picture()
    print("scikit-image", __version__)
    for name, background in WAYS.items():
        times = []
        for _ in range(3):
            start = time.perf_counter()
            lanes, peaks = lanes_and_peaks(background(density(image)))
            times.append(time.perf_counter() - start)
        print(f"{name}: {1000 * min(times):.0f} ms, {lanes} lanes, {peaks} peaks")
