"""Fits the constants of the probability after bands from the tables of cohorts.

Reads cohorts.tsv and adjusted.tsv and prints, as tab-separated rows, what the facts
`probability.*` round. Only numpy and scipy; no random number is drawn.

    python3 medicine/src/test/python/bands_fit.py > \
        medicine/src/test/resources/cistern/differential/bands_fit.tsv
"""

import pathlib

import numpy as np
from scipy.special import gammaln

HERE = pathlib.Path(__file__).resolve().parents[2]
TABLES = HERE / "main/resources/cistern/differential"
MEAN, SPREAD, TAU = 1.0, 1.5, 1.0  # weak priors: m ~ N(1, 1.5^2), tau ~ half-N(1)
STEPS = np.linspace(-6, 6, 121)
WEIGHTS = np.exp(-STEPS**2 / 2) / np.exp(-STEPS**2 / 2).sum()


def rows(name):
    lines = (TABLES / name).read_text().splitlines()
    names = lines[1].split("\t")
    return [dict(zip(names, line.split("\t"))) for line in lines[2:] if line]


def logit(p):
    return np.log(p / (1 - p))


def choose(n, k):
    return gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1)


def conditional(table, log_odds_ratios):
    """Log likelihood of a two by two table given its margins (non-central hypergeometric)."""
    ms_bands, ms_none, stable_bands, stable_none = table
    ms, stable, bands = ms_bands + ms_none, stable_bands + stable_none, ms_bands + stable_bands
    k = np.arange(max(0, bands - stable), min(ms, bands) + 1)
    weight = choose(ms, k) + choose(stable, bands - k)
    norm = np.logaddexp.reduce(weight + np.outer(log_odds_ratios, k), axis=1)
    own = choose(ms, ms_bands) + choose(stable, bands - ms_bands)
    return own + ms_bands * log_odds_ratios - norm


def random_effects(likelihoods):
    """Mean of m, and the standard deviation of a new cohort's log odds ratio."""
    x = np.linspace(-12, 16, 2801)
    curves = [f(x) for f in likelihoods]
    means, taus = np.linspace(-3, 6, 181), np.linspace(0.01, 5, 250)
    log_posterior = np.empty((len(means), len(taus)))
    for i, m in enumerate(means):
        for j, tau in enumerate(taus):
            at = m + tau * STEPS
            fit = sum(np.log(WEIGHTS @ np.exp(np.interp(at, x, c))) for c in curves)
            log_posterior[i, j] = fit - ((m - MEAN) / SPREAD) ** 2 / 2 - (tau / TAU) ** 2 / 2
    p = np.exp(log_posterior - log_posterior.max())
    p /= p.sum()
    m = (p.sum(1) * means).sum()
    variance = (p.sum(1) * (means - m) ** 2).sum() + (p.sum(0) * taus**2).sum()
    return m, np.sqrt(variance)


def share(tables):
    """logit q = alpha + beta logit pi + N(0, tau^2): posterior means, and the spread of a new one."""
    bands = np.array([t[0] + t[2] for t in tables])
    people = np.array([sum(t) for t in tables])
    ms = np.array([t[0] + t[1] for t in tables])
    prior = logit(ms / people)
    alphas, betas = np.linspace(-1, 2.2, 81), np.linspace(-0.8, 1.8, 66)
    taus = np.linspace(0.05, 2.5, 50)
    log_posterior = np.empty((len(alphas), len(betas), len(taus)))
    a = alphas[:, None, None]
    b = betas[None, :, None]
    t = taus[None, None, :]
    total = np.zeros_like(log_posterior)
    for k, n, x in zip(bands, people, prior):
        at = (a + b * x)[..., None] + t[..., None] * STEPS[::4]
        weight = WEIGHTS[::4] / WEIGHTS[::4].sum()
        total += np.log((np.exp(-k * np.log1p(np.exp(-at)) - (n - k) * np.log1p(np.exp(at))
                                + choose(n, k)) * weight).sum(-1))
    total -= (t / TAU) ** 2 / 2
    p = np.exp(total - total.max())
    p /= p.sum()
    alpha, beta = (p * a).sum(), (p * b).sum()
    lines = np.mean([(p * (a + b * x - alpha - beta * x) ** 2).sum() for x in prior])
    return alpha, beta, np.sqrt((p * t**2).sum() + lines)


def odds_ratio(hazard_ratio, prior, bands):
    """The odds ratio to which a hazard ratio leads, where the margins are pi and q."""
    low, high = 1e-9, 1 - 1e-9
    for _ in range(200):
        none = (low + high) / 2
        with_bands = 1 - (1 - none) ** hazard_ratio
        if bands * with_bands + (1 - bands) * none < prior:
            low = none
        else:
            high = none
    return np.exp(logit(with_bands) - logit(none))


def adjusted(row):
    prior, bands = float(row["prior"]), float(row["share-bands"])
    centre, lower, upper = (
        np.log(odds_ratio(float(row[name]), prior, bands))
        for name in ("hazard-ratio", "lower", "upper"))
    error = (upper - lower) / 2 / 1.959964
    return lambda x: -((x - centre) / error) ** 2 / 2


def main():
    counts = ("ms.bands", "ms.none", "stable.bands", "stable.none")
    tables = [tuple(int(r[c]) for c in counts) for r in rows("cohorts.tsv")]
    m, s = random_effects([lambda x, t=t: conditional(t, x) for t in tables])
    m_dis, s_dis = random_effects([adjusted(r) for r in rows("adjusted.tsv")])
    alpha, beta, spread = share(tables)
    for key, value in (
            ("attack-mri-not-used.log-odds-ratio", m),
            ("attack-mri-not-used.log-odds-ratio.spread", s),
            ("attack-mri-used-dis.log-odds-ratio", m_dis),
            ("attack-mri-used-dis.log-odds-ratio.spread", s_dis),
            ("share.intercept", alpha),
            ("share.slope", beta),
            ("share.spread", spread)):
        print(f"{key}\t{value:.4f}")
    # For the gate: the same fit with one cohort held out, each in turn.
    for i, row in enumerate(rows("cohorts.tsv")):
        kept = tables[:i] + tables[i + 1:]
        m, s = random_effects([lambda x, t=t: conditional(t, x) for t in kept])
        numbers = "\t".join(f"{x:.4f}" for x in (m, s, *share(kept)))
        print(f"without.{row['key']}\t{numbers}")


if __name__ == "__main__":
    main()
