"""The work of the benchmarks done with numpy, on one thread. Prints what and panels a second.

Same formulas, same sizes: columns of a million panels without uncertainty, and 20,000 draws of one
panel with the ends of its 95 % intervals. All values are invented.
"""
import os

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import time

import numpy as np

ROWS = 1_000_000
DRAWS = 20_000
CURVES = {  # a/b, b squared, c: Reiber 1994 (IgG, IgA, IgM), Reiber 2019 (kappa)
    "igg": (0.93, 6e-6, 1.7e-3),
    "iga": (0.77, 23e-6, 3.1e-3),
    "igm": (0.67, 120e-6, 7.1e-3),
    "kappa": (3.27, 33e-6, 8.2e-3),
}


def interpret(csf, serum):
    """18 quantities and 4 limits from the columns of ten concentrations, mg/L."""
    albumin = csf["albumin"] / serum["albumin"]
    squared = albumin * albumin
    out = {"albumin-quotient": albumin}
    for protein, (slope, b_squared, c) in CURVES.items():
        quotient = csf[protein] / serum[protein]
        limit = slope * np.sqrt(squared + b_squared) - c
        out[protein + "-quotient"] = quotient
        out[protein + "-limit"] = limit
        out[protein + "-fraction"] = np.maximum(0, 1 - limit / quotient)
        out[protein + "-local"] = np.maximum(0, csf[protein] - limit * serum[protein])
        out[protein + "-index"] = quotient / albumin
    leaked = 1 / 369 - 0.43 / 230 + 0.43 * albumin
    out["igg-synthesis-rate"] = 0.5 * (csf["igg"] - serum["igg"] * leaked)
    return out


def columns(random, centre):
    return {
        name: centre * np.exp(random.standard_normal(ROWS) / 2)
        for name in ("albumin", *CURVES)
    }


def best(work, panels, repeats):
    fastest = float("inf")
    for _ in range(repeats):
        begin = time.perf_counter()
        work()
        fastest = min(fastest, time.perf_counter() - begin)
    return panels / fastest


def draw(random, sigma):
    values = {"albumin": (220, 42_000), "igg": (40, 10_500), "iga": (5, 2_000),
              "igm": (1.2, 1_100), "kappa": (0.3, 12)}
    csf = {k: v[0] * np.exp(sigma * random.standard_normal(DRAWS)) for k, v in values.items()}
    serum = {k: v[1] * np.exp(sigma * random.standard_normal(DRAWS)) for k, v in values.items()}
    low = int(0.025 * DRAWS)
    for column in interpret(csf, serum).values():
        ends = np.partition(column, (low, DRAWS - 1 - low))
        (ends[low], ends[DRAWS - 1 - low], np.count_nonzero(column > 0))


def main():
    random = np.random.default_rng(1)
    csf, serum = columns(random, 40), columns(random, 10_000)
    print(f"numpy {np.__version__} columns: {best(lambda: interpret(csf, serum), ROWS, 15):.0f} panels/s")
    sigma = np.sqrt(np.log1p(0.05**2))
    print(f"numpy {np.__version__} 20,000 draws: {best(lambda: draw(random, sigma), 1, 60):.0f} panels/s")


if __name__ == "__main__":
    main()
