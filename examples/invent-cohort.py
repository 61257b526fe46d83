#!/usr/bin/env python3
"""Invents a cohort of punctures as a table. Nobody in it exists; the numbers are drawn, not measured.

    examples/invent-cohort.py [ROWS [SEED]] > cohort.csv

The same arguments give the same table. What was put in, so that a report can be held against it:
headache after one in three cutting needles and one in ten atraumatic ones; serum drawn a day late in
one of twenty until the 18th month, in one of fifty after it; bands in nine of ten with MS and one of
sixteen without; a second reader who differs in one of twelve gels.
"""

import datetime
import math
import random
import sys

DIAGNOSES = [("ms", 0.42), ("non-inflammatory", 0.40), ("other-inflammatory", 0.13), ("unknown", 0.05)]
START = datetime.datetime(2031, 1, 6, 8, 0, tzinfo=datetime.timezone.utc)
DAYS = 3 * 365


def around(rng, centre, spread):
    """A value whose logarithm is normal."""
    return centre * math.exp(spread * rng.gauss(0, 1))


def plain(value, digits=4):
    """At most so many significant digits, never an exponent."""
    text = f"{value:.{digits}g}"
    return f"{float(text):.10f}".rstrip("0").rstrip(".") if "e" in text else text


def time(moment):
    return moment.strftime("%Y-%m-%dT%H:%M:%SZ")


def diagnosis(rng):
    drawn = rng.random()
    for name, share in DIAGNOSES:
        drawn -= share
        if drawn < 0:
            return name
    return DIAGNOSES[-1][0]


def proteins(rng, row, age, is_ms, is_inflamed):
    q_alb = around(rng, (3.2 + age / 22) * 1e-3, 0.28) * (1.5 if is_inflamed else 1)
    albumin = around(rng, 41_500, 0.07)
    row["albumin.serum"], row["albumin.csf"] = albumin, albumin * q_alb
    for name, serum, spread, share in (
        ("igg", 10_400, 0.16, 0.42 * q_alb * (1 + 10 * q_alb)),
        ("iga", 2_100, 0.3, 0.24 * q_alb),
        ("igm", 1_050, 0.3, 0.08 * q_alb),
    ):
        value = around(rng, serum, spread)
        quotient = around(rng, share, 0.12)
        if name == "igg" and is_ms:
            quotient += q_alb * max(0, rng.gauss(0.45, 0.3))
        row[f"{name}.serum"], row[f"{name}.csf"] = value, value * quotient
    kappa = around(rng, 13, 0.25)
    index = around(rng, 45, 0.9) if is_ms else around(rng, 9, 0.8) if is_inflamed else around(rng, 2.3, 0.3)
    row["kappa-flc.serum"], row["kappa-flc.csf"] = kappa, kappa * q_alb * index


def others(rng, row, is_ms, is_inflamed):
    glucose = around(rng, 5.4, 0.14)
    row["glucose.serum"] = glucose
    row["glucose.csf"] = glucose * around(rng, 0.62, 0.08)
    row["lactate.csf"] = around(rng, 1.6, 0.14) * (1.2 if is_inflamed else 1)
    row["total-protein.csf"] = row["albumin.csf"] * around(rng, 1.75, 0.08)
    row["leukocytes.csf"] = round(around(rng, 22 if is_inflamed else 6 if is_ms else 1.2, 0.8))
    row["erythrocytes.csf"] = round(around(rng, 4, 1.6) if rng.random() > 0.12 else around(rng, 2_500, 0.9))


def bands(rng, row, is_ms, is_inflamed):
    has_bands = rng.random() < (0.9 if is_ms else 0.3 if is_inflamed else 0.06)
    count = 2 + min(14, int(rng.expovariate(0.2))) if has_bands else int(rng.random() < 0.08)
    row["bands.csfOnly"] = count
    row["bands.shared"] = 0 if rng.random() < 0.85 else rng.randint(1, 6)
    row["bands.serumOnly"] = 0
    other = count if rng.random() > 0.08 else max(0, count + rng.choice((-3, -2, 2, 3)))
    if rng.random() < 0.6:
        row["secondReading.csfOnly"], row["secondReading.shared"] = other, row["bands.shared"]


def puncture(rng, row, at, month):
    is_late = rng.random() < (0.05 if month < 18 else 0.02)
    row["csf.at"] = time(at)
    row["serum.at"] = time(at + datetime.timedelta(minutes=1500 if is_late else rng.randint(-20, 90)))
    row["draws.csf.receivedAt"] = time(at + datetime.timedelta(minutes=rng.randint(15, 110)))
    row["draws.csf.volumeMl"] = plain(max(1, rng.gauss(10.5, 3.2)), 3)
    cutting = rng.random() < (0.6 if month < 12 else 0.25)
    row["procedure.done.needle.tip"] = "cutting" if cutting else "atraumatic"
    row["procedure.done.needle.gauge"] = 20 if cutting else rng.choice((22, 22, 24))
    row["procedure.done.attempts"] = 1 + int(rng.expovariate(1.6))
    if rng.random() < 0.9:
        headache = rng.random() < (0.33 if cutting else 0.1)
        row["procedure.after.headache.present"] = "yes" if headache else "no"
        if headache:
            row["procedure.after.headache.patched"] = "yes" if rng.random() < 0.25 else "no"
    sent = at + datetime.timedelta(minutes=20)
    came = sent + datetime.timedelta(minutes=int(around(rng, 110, 0.4)))
    row["procedure.after.sent.0.test"] = "cells"
    row["procedure.after.sent.0.sentAt"], row["procedure.after.sent.0.receivedAt"] = time(sent), time(came)
    if row["leukocytes.csf"] >= 100 or rng.random() < 0.1:
        row["procedure.after.sent.0.told.0.who"] = "ward"
        row["procedure.after.sent.0.told.0.at"] = time(came + datetime.timedelta(minutes=int(around(rng, 18, 0.6))))


def evidence(rng, row, is_ms):
    row["evidence.presentation"] = "attack"
    row["evidence.attacks"], row["evidence.objectiveLesions"] = 1, 1
    row["evidence.noBetterExplanation"] = "yes" if is_ms or rng.random() < 0.5 else "unknown"
    spread = rng.random() < (0.8 if is_ms else 0.2)
    row["evidence.regions.periventricular"] = "yes" if spread else "no"
    row["evidence.regions.infratentorial"] = "yes" if spread else "no"
    low = rng.choice((0.3, 0.4, 0.5))
    row["evidence.prior.ms"] = f"{low};{round(low + 0.2, 1)}"
    row["evidence.prior.usesMri"] = "no"


def person(rng, number, total):
    said = diagnosis(rng)
    is_ms, is_inflamed = said == "ms", said == "other-inflammatory"
    age = min(84, max(18, rng.gauss(36 if is_ms else 45, 11 if is_ms else 15)))
    day = int(DAYS * number / total)
    at = START + datetime.timedelta(days=day, minutes=rng.randint(0, 480))
    row = {"id": f"invented-{number + 1:06d}", "invented": "yes", "ageYears": plain(age, 3)}
    row["sex"] = "female" if rng.random() < (0.7 if is_ms else 0.52) else "male"
    proteins(rng, row, age, is_ms, is_inflamed)
    others(rng, row, is_ms, is_inflamed)
    bands(rng, row, is_ms, is_inflamed)
    puncture(rng, row, at, day // 30)
    evidence(rng, row, is_ms)
    row["finalDiagnosis"] = said
    return row


COLUMNS = (
    "id invented ageYears sex csf.at serum.at albumin.csf albumin.serum igg.csf igg.serum iga.csf iga.serum"
    " igm.csf igm.serum kappa-flc.csf kappa-flc.serum glucose.csf glucose.serum lactate.csf total-protein.csf"
    " leukocytes.csf erythrocytes.csf bands.csfOnly bands.shared bands.serumOnly secondReading.csfOnly"
    " secondReading.shared draws.csf.volumeMl draws.csf.receivedAt procedure.done.needle.tip"
    " procedure.done.needle.gauge procedure.done.attempts procedure.after.headache.present"
    " procedure.after.headache.patched procedure.after.sent.0.test procedure.after.sent.0.sentAt"
    " procedure.after.sent.0.receivedAt procedure.after.sent.0.told.0.who procedure.after.sent.0.told.0.at"
    " evidence.presentation evidence.attacks evidence.objectiveLesions evidence.noBetterExplanation"
    " evidence.regions.periventricular evidence.regions.infratentorial evidence.prior.ms evidence.prior.usesMri"
    " finalDiagnosis"
).split()


def main():
    total = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    rng = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 20)
    out = sys.stdout
    out.write(",".join(COLUMNS) + "\n")
    for number in range(total):
        row = person(rng, number, total)
        cells = (row.get(name, "") for name in COLUMNS)
        out.write(",".join(plain(c) if isinstance(c, float) else str(c) for c in cells) + "\n")


if __name__ == "__main__":
    main()
