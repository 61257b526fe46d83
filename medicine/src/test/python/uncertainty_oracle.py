"""Recomputes src/test/resources/cistern/uncertainty/numpy.tsv by simulation with numpy.

Run from the module's folder: python3 src/test/python/uncertainty_oracle.py
Two invented panels; the formulas and constants are typed from the literature here once more
(Reiber 1994 and 2019, Tourtellotte, Reiber and Lange 1991, Hegen 2014), not taken from the product.
Columns: panel, code, 2.5 % point, 97.5 % point, chance over the limit ("-" where there is none).
"""
import pathlib

import numpy as np

DRAWS = 8_000_000
SIGMA = np.sqrt(np.log1p(0.05**2))

# analyte: CSF, serum; mg/L, glucose mmol/L, antibodies in any unit
PANELS = {
    "near": {"albumin": (220, 42_000), "igg": (41, 11_000), "iga": (5, 2_000), "igm": (1.1, 1_100),
             "kappa": (0.25, 13), "measles": (5.1, 900), "rubella": (0.6, 110),
             "zoster": (3.9, 800), "glucose": (2.4, 5.6)},
    "high": {"albumin": (600, 40_000), "igg": (140, 10_500), "iga": (19, 1_900), "igm": (5.5, 1_000),
             "kappa": (1.3, 22), "measles": (16, 900), "rubella": (2.1, 110),
             "zoster": (15, 800), "glucose": (3.4, 8.3)},
}
CURVES = {"igg": (0.93, 6e-6, 1.7e-3), "iga": (0.77, 23e-6, 3.1e-3),
          "igm": (0.67, 120e-6, 7.1e-3), "kappa": (3.27, 33e-6, 8.2e-3)}


def simulate(panel, random):
    csf, serum = ({a: v[side] * np.exp(SIGMA * random.standard_normal(DRAWS))
                   for a, v in panel.items()} for side in (0, 1))
    albumin = csf["albumin"] / serum["albumin"]
    limits = {}
    for protein, (slope, b_squared, c) in CURVES.items():
        limit = limits[protein] = slope * np.sqrt(albumin**2 + b_squared) - c
        quotient = csf[protein] / serum[protein]
        over = quotient > limit
        yield protein + "-intrathecal-fraction", np.where(over, 1 - limit / quotient, 0), over
        yield protein + "-local", np.where(over, csf[protein] - limit * serum[protein], 0), over
    igg = csf["igg"] / serum["igg"]
    yield "igg-index", igg / albumin, igg / albumin > 0.7
    rate = 0.5 * (csf["igg"] - serum["igg"] / 369
                  - (csf["albumin"] - serum["albumin"] / 230) * serum["igg"] / serum["albumin"] * 0.43)
    yield "igg-synthesis-rate", rate, rate > 3.3
    count = np.zeros(DRAWS)
    for virus, code in (("measles", "measles"), ("rubella", "rubella"), ("zoster", "varicella-zoster")):
        index = csf[virus] / serum[virus] / np.minimum(igg, limits["igg"])
        count += index >= 1.5
        yield code + "-antibody-index", index, index >= 1.5
    yield "mrz-reaction", None, count >= 2
    mg_per_dl = serum["glucose"] * 18.0156
    ratio = csf["glucose"] / serum["glucose"]
    limit = np.select([mg_per_dl < 100, mg_per_dl < 150], [0.5, 0.4], 0.3)
    yield "glucose-ratio", ratio, ratio > limit


def main():
    random = np.random.default_rng(2031)
    lines = ["panel\tcode\tlower\tupper\tabove"]
    for name, panel in PANELS.items():
        for code, values, over in simulate(panel, random):
            ends = ["-", "-"] if values is None else [
                f"{end:.6g}" for end in np.quantile(values, (0.025, 0.975))]
            lines.append("\t".join([name, code, *ends, f"{over.mean():.6f}"]))
    path = pathlib.Path("src/test/resources/cistern/uncertainty/numpy.tsv")
    path.write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
