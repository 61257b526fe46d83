"""Rows of docs/validation.md from one run of bench/measure.

Arguments: the folder with jmh.json and what numpy, R and scikit-image printed (numpy.txt, R.txt,
skimage.txt; the last two may lack), and the file to write, one row a line: what, source, aim,
result. A rate is the mean of the measured seconds, with the best of them in brackets.
"""
import json
import re
import sys
from pathlib import Path


def machine():
    names = re.findall(r"model name\s*:\s*(.+)", Path("/proc/cpuinfo").read_text())
    return names[0].strip() if names else "processor not named"


class Run:
    """Everything that was measured, by the last part of its name."""

    def __init__(self, folder):
        self.folder = folder
        report = json.loads((folder / "jmh.json").read_text())
        self.jmh = {entry["benchmark"].rsplit(".", 2)[-2] + "." + entry["benchmark"].rsplit(".", 1)[-1]:
                    entry["primaryMetric"] for entry in report}
        self.java = "JMH 1.37, JDK " + report[0]["jdkVersion"] if report else ""

    def score(self, name):
        return self.jmh[name]["score"] if name in self.jmh else None

    def rate(self, name):
        seconds = [s for fork in self.jmh[name]["rawData"] for s in fork]
        return f"{self.score(name):,.0f} ({max(seconds):,.0f})"

    def printed(self, file, pattern):
        path = self.folder / file
        found = re.search(pattern, path.read_text()) if path.exists() else None
        return float(found.group(1)) if found else None


def times(one, other):
    if one is None or other is None:
        return "not measured against"
    ratio = one / other
    return f"{ratio:,.0f} times" if ratio >= 10 else f"{ratio:.1f} times"


def words(name):
    return re.sub(r"[A-Z]", lambda capital: " " + capital.group().lower(), name)


def uncertainty(run):
    probabilities = "UncertaintyBenchmark.probabilitiesOfAllCodes"
    intervals = "UncertaintyBenchmark.intervalsOfAllCodes"
    proteins = run.score("UncertaintyBenchmark.intervalsOfProteins")
    if proteins is None:
        return
    own = run.score("UncertaintyBenchmark.drawsOfProteins")
    numpy = run.printed("numpy.txt", r"20,000 draws: (\d+)")
    yield "Probabilities of all codes, one core", "at least 100,000 panels/s", run.rate(probabilities) + " panels/s"
    yield "Intervals and probabilities of all codes, one core", "at least 5,000 panels/s", run.rate(intervals) + " panels/s"
    yield ("Intervals of ten proteins against 20,000 draws", "a ratio",
           f"{times(proteins, own)} our own draws, {times(proteins, numpy)} numpy's")


def columns(run):
    fresh = run.score("ColumnsBenchmark.intoNewColumns")
    if fresh is None:
        return
    numpy = run.printed("numpy.txt", r"columns: (\d+)")
    r = run.printed("R.txt", r"columns: (\d+)")
    yield ("Columns without uncertainty, one core", "at least 2 times numpy",
           f"{times(fresh, numpy)} numpy, {times(fresh, r)} R; {fresh / 1e6:,.1f} million panels/s")


def weighing(run):
    for name, metric in run.jmh.items():
        if name.startswith("WeighingBenchmark."):
            unit = metric["scoreUnit"]
            yield (f"Weighing, {words(name.split('.')[1])}, one core", "at most 2 ms",
                   f"{metric['score']:.2f} ± {metric['scoreError']:.2f} {unit.replace('/op', '')}")


def gel(run):
    read = run.score("GelBenchmark.read")
    if read is None:
        return
    skimage = run.printed("skimage.txt", r"white top-hat[^:]*: (\d+) ms")
    best = min(s for fork in run.jmh["GelBenchmark.read"]["rawData"] for s in fork)
    yield ("A gel of 1500 × 1000 pixels after decoding, one core", "under 80 ms, faster than scikit-image",
           f"{read:.0f} ms (best {best:.0f}); scikit-image takes {times(skimage, read)} as long")


def main(folder, target):
    run = Run(Path(folder))
    source = f"{run.java}; {machine()}"
    rows = [row for part in (uncertainty, columns, weighing, gel) for row in part(run)]
    lines = ["\t".join((what, source, aim, result)) for what, aim, result in rows]
    out = Path(target)
    out.mkdir(parents=True, exist_ok=True)
    for number, line in enumerate(lines):
        (out / f"speed-{number}.tsv").write_text(line + "\n")
    print("\n".join(lines))


if __name__ == "__main__":
    main(*sys.argv[1:3])
