#!/usr/bin/env python3
"""Invents concentrations as a table of any length, for `cohort --numbers`. Nobody in it exists.

    python3 bench/src/main/python/invent_numbers.py [ROWS [SEED]] > numbers.csv

The same arguments give the same table: albumin, three immunoglobulins and free kappa chains of both
fluids in mg/L, drawn as bench draws its panels (log-normal around common values).
"""
import sys

import numpy as np

AT_ONCE = 100_000
PROTEINS = (("albumin", 41_000, 0.1, 5.5e-3, 0.3), ("igg", 10_500, 0.15, 4e-3, 0.3),
            ("iga", 2_000, 0.3, 2.5e-3, 0.3), ("igm", 1_100, 0.3, 1.1e-3, 0.3),
            ("kappa-flc", 12, 0.3, 20e-3, 0.5))


def columns(rng, rows):
    for _, serum, spread, quotient, width in PROTEINS:
        in_serum = serum * np.exp(spread * rng.standard_normal(rows))
        yield in_serum * quotient * np.exp(width * rng.standard_normal(rows))
        yield in_serum


def main(rows, seed):
    rng = np.random.default_rng(seed)
    print("id," + ",".join(f"{name}.csf,{name}.serum" for name, *_ in PROTEINS))
    form = "invented-%d" + ",%.5g" * 2 * len(PROTEINS) + "\n"
    for first in range(0, rows, AT_ONCE):
        block = list(columns(rng, min(AT_ONCE, rows - first)))
        for i, values in enumerate(zip(*(column.tolist() for column in block))):
            sys.stdout.write(form % (first + i + 1, *values))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000,
         int(sys.argv[2]) if len(sys.argv) > 2 else 1)
