#!/usr/bin/env python3
"""Recomputes with numpy, scipy and R (pROC, quantreg where it is installed) what the product says of a
cohort, from the table of interpretations that it wrote, and compares it with summary.json.

    ./cistern cohort examples/cohort.csv --out F --cases ms --controls non-inflammatory
    medicine/src/test/python/cohort_oracle.py F ms non-inflammatory

Prints one line a comparison and ends with 1 when one differs.
"""

import csv
import json
import shutil
import subprocess
import sys

import numpy as np
from scipy import stats

folder, case, control = sys.argv[1:4]
rows = list(csv.DictReader(open(f"{folder}/interpretations.csv", newline="")))
summary = json.load(open(f"{folder}/summary.json"))
bad = 0


def same(what, ours, theirs, relative):
    global bad
    off = abs(ours - theirs) / max(abs(theirs), 1e-300)
    ok = off <= relative or abs(ours - theirs) < 1e-15
    bad += not ok
    print(f"{'ok  ' if ok else 'BAD '} {what}: {ours!r} against {theirs!r}")


def numbers(code, diagnosis=None):
    return np.array(
        [float(r[code]) for r in rows if r[code] and diagnosis in (None, r["finalDiagnosis"])]
    )


for finding in summary["findings"]:
    values = numbers(finding["code"])
    if len(values) > 1:
        same(finding["code"] + " mean", finding["mean"], values.mean(), 1e-12)
        same(finding["code"] + " sd", finding["standardDeviation"], values.std(ddof=1), 1e-10)

for limit in summary["siteLimits"]:
    if limit["method"] == "rank":
        values = np.sort(numbers(limit["code"], control))
        for name, share in (("lower", 0.025), ("upper", 0.975)):
            theirs = np.quantile(values, share, method="weibull")
            same(limit["code"] + " " + name, limit[name], theirs, 1e-12)
        n = len(values)
        low = next(r for r in range(n) if stats.binom.cdf(r, n, 0.025) > 0.05)
        same(limit["code"] + " rank", limit["lowerInterval90"][0], values[low - 1], 1e-12)

for told in summary["performance"]:
    if "area" in told:
        ill, well = numbers(told["code"], case), numbers(told["code"], control)
        u = stats.mannwhitneyu(ill, well).statistic
        same(told["code"] + " area", told["area"], u / (len(ill) * len(well)), 1e-12)
        if shutil.which("Rscript"):
            script = (
                "suppressMessages(library(pROC));x<-c(%s);y<-c(%s);"
                "r<-roc(c(rep(1,length(x)),rep(0,length(y))),c(x,y),direction='<',quiet=TRUE);"
                "cat(as.numeric(ci.auc(r,method='delong')))"
                % (",".join(map(repr, ill.tolist())), ",".join(map(repr, well.tolist())))
            )
            out = subprocess.run(["Rscript", "-"], input=script, capture_output=True, text=True)
            if out.returncode == 0:
                ends = [float(x) for x in out.stdout.split()]
                same(told["code"] + " DeLong lower", told["areaInterval95"][0], ends[0], 1e-9)
                same(told["code"] + " DeLong upper", told["areaInterval95"][1], ends[2], 1e-9)

for code, tally in summary["quality"].items():
    answers = [r["quality." + code] for r in rows]
    for word in ("yes", "no", "unknown"):
        same(f"{code} {word}", tally[word], answers.count(word), 0)
    n = tally["yes"] + tally["no"]
    if n and 0 < tally["yes"] < n:
        wilson = stats.binomtest(tally["yes"], n).proportion_ci(0.95, method="wilson")
        same(code + " lower", tally["interval95"][0], wilson.low, 1e-9)
        same(code + " upper", tally["interval95"][1], wilson.high, 1e-9)

words = ["negative", "borderline", "positive"]
pairs = [(r["bands"], r["bands.other"]) for r in rows if r["bands.other"] in words and r["bands"] in words]
for one in words:
    for other in words:
        ours = summary["readings"].get(one, {}).get(other, 0)
        same(f"readings {one}/{other}", ours, pairs.count((one, other)), 0)

sys.exit(bool(bad))
