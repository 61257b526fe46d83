"""Both editions of the criteria by brute force, from the row tables alone.

Invents work-ups, lets the launcher interpret them, and compares verdict, rows, basis of
dissemination in time, missing items, status and what the puncture changes with a second, plain
writing of the rules: every consistent filling of the unknown inputs is tried, and every set of
unknown inputs. Standard library only.

    python3 criteria_oracle.py LAUNCHER [NUMBER [SEED]]

Prints every difference and ends with 1 if there is one.
"""

import itertools
import json
import os
import random
import subprocess
import sys
import tempfile

YES, NO, UNKNOWN = "yes", "no", "unknown"
REGIONS = ["periventricular", "corticalJuxtacortical", "infratentorial", "spinalCord", "opticNerve"]
OTHERS = [
    "noBetterExplanation", "historicalAttack", "cordLesionsTwoOrMore",
    "newOrMixedEnhancingLesions", "centralVeinSignSelectSix", "paramagneticRimLesion",
    "progressionTwelveMonths",
]
COUNTS = ["attacks", "objectiveLesions"]
BRAIN = REGIONS[:3]

# What the rows for a presentation read.
READS = {
    "2017": {
        "attack": ["noBetterExplanation", "attacks", "objectiveLesions", "historicalAttack"]
        + REGIONS[:4] + ["newOrMixedEnhancingLesions", "bands"],
        "progression": ["noBetterExplanation", "progressionTwelveMonths"] + BRAIN
        + ["cordLesionsTwoOrMore", "bands"],
        "none": [], "non-specific": [], "atypical": [],
    },
    "2024": {
        "attack": ["noBetterExplanation", "attacks"] + REGIONS
        + ["newOrMixedEnhancingLesions", "csfPositive", "centralVeinSignSelectSix",
           "paramagneticRimLesion"],
        "none": ["noBetterExplanation"] + REGIONS
        + ["newOrMixedEnhancingLesions", "csfPositive", "centralVeinSignSelectSix"],
        "progression": ["noBetterExplanation"],
        "atypical": [],
    },
}
READS["2024"]["non-specific"] = READS["2024"]["none"]

STRENGTH = ["read", "derived", "second-hand", "local", "common-practice", "project-rule", "memory"]


# ---- the tables -------------------------------------------------------------------------------


def rows_2017(p, x):
    """Rows of section 5 that hold for one complete filling; counts are exact."""
    holding = []
    space = sum(x[r] for r in REGIONS[:4]) >= 2
    time = x["newOrMixedEnhancingLesions"] or x["bands"]
    attacks, lesions = x["attacks"], x["objectiveLesions"]
    if p == "attack":
        if attacks >= 2 and lesions >= 2:
            holding.append("17-1")
        if attacks >= 2 and lesions == 1 and x["historicalAttack"]:
            holding.append("17-2")
        if attacks >= 2 and lesions == 1 and space:
            holding.append("17-3")
        if attacks == 1 and lesions >= 2 and time:
            holding.append("17-4")
        if attacks == 1 and lesions == 1 and space and time:
            holding.append("17-5")
    if p == "progression" and x["progressionTwelveMonths"]:
        parts = [any(x[r] for r in BRAIN), x["cordLesionsTwoOrMore"], x["bands"]]
        if sum(parts) >= 2:
            holding.append("17-P")
    return holding


def verdict_2017(p, x):
    if not x["noBetterExplanation"]:
        return "not-met"
    if rows_2017(p, x):
        return "met"
    return "not-met" if p in ("attack", "progression", "none") else "undetermined"


def rows_2024(p, x):
    """Rows of section 6 that hold for one complete filling."""
    holding = []
    n = sum(x[r] for r in REGIONS)
    dit, csf = x["newOrMixedEnhancingLesions"], x["csfPositive"]
    cvs, prl = x["centralVeinSignSelectSix"], x["paramagneticRimLesion"]
    if p == "attack":
        if n >= 4:
            holding.append("24-A")
        if n in (2, 3) and (dit or csf or cvs):
            holding.append("24-B")
        if n == 1 and (dit or csf) and (cvs or prl):
            holding.append("24-C")
        if x["attacks"] >= 2 and n >= 2:
            holding.append("24-E")
    if p in ("none", "non-specific") and n >= 2 and (dit or csf or cvs):
        holding.append("24-D")
    return holding


def verdict_2024(p, x):
    if not x["noBetterExplanation"]:
        return "not-met"
    if rows_2024(p, x):
        return "met"
    if p in ("progression", "atypical"):
        return "undetermined"
    if p == "attack" and x["attacks"] >= 2:
        return "undetermined"
    return "not-met"


ROWS = {"2017": rows_2017, "2024": rows_2024}
VERDICT = {"2017": verdict_2017, "2024": verdict_2024}


# ---- three-valued logic ------------------------------------------------------------------------


def domains(p, evidence, bands, csf):
    """Every input with the values that it can still take."""
    found = {}
    for name in OTHERS:
        found[name] = binary(evidence.get(name, UNKNOWN))
    for name in REGIONS:
        found[name] = binary(evidence.get("regions", {}).get(name, UNKNOWN))
    for name in COUNTS:
        given = evidence.get(name, UNKNOWN)
        if isinstance(given, int):
            found[name] = [min(given, 2)]
        else:
            least = given["atLeast"] if isinstance(given, dict) else 0
            found[name] = list(range(min(least, 2), 3))
    if p == "attack":
        found["attacks"] = [a for a in found["attacks"] if a >= 1]
    if p in ("progression", "none"):
        found["attacks"] = [0]
    if found["cordLesionsTwoOrMore"] == [True]:
        found["spinalCord"] = [True]
    if found["spinalCord"] == [False]:
        found["cordLesionsTwoOrMore"] = [False]
    found["bands"] = binary(bands)
    found["csfPositive"] = binary(csf)
    return found


def binary(answer):
    return {YES: [True], NO: [False], UNKNOWN: [False, True]}[answer]


def fillings(found, names):
    fixed = {name: values[0] for name, values in found.items()}
    open_names = [n for n in names if len(found[n]) > 1]
    for values in itertools.product(*(found[n] for n in open_names)):
        yield {**fixed, **dict(zip(open_names, values))}


def survey(edition, p, found):
    names = set(READS[edition][p]) | {"noBetterExplanation"}
    verdicts, rows = set(), set()
    for x in fillings(found, sorted(names)):
        verdicts.add(VERDICT[edition](p, x))
        if x["noBetterExplanation"]:
            rows.update(ROWS[edition](p, x))
    return (verdicts.pop() if len(verdicts) == 1 else "undetermined"), rows


def smallest_sets(edition, p, found, wanted):
    open_names = [n for n in READS[edition][p] if len(found[n]) > 1]
    sufficient = []
    for size in range(0, len(open_names) + 1):
        for some in itertools.combinations(open_names, size):
            if any(s <= set(some) for s in sufficient):
                continue
            settled = dict(found)
            for name in some:
                settled[name] = [found[name][-1] if wanted == "met" else found[name][0]]
            if survey(edition, p, settled)[0] == wanted:
                sufficient.append(set(some))
    return {frozenset(s) for s in sufficient}


def contradicts(p, evidence):
    given = evidence.get("attacks", UNKNOWN)
    least = given if isinstance(given, int) else given["atLeast"] if isinstance(given, dict) else 0
    regions = evidence.get("regions", {})
    return (
        (p == "attack" and given == 0 and isinstance(given, int))
        or (p in ("none", "progression") and least >= 1)
        or (evidence.get("cordLesionsTwoOrMore") == YES and regions.get("spinalCord") == NO)
    )


def evaluate(edition, evidence, bands, csf):
    """Verdict, rows, basis and both kinds of sets."""
    p = evidence.get("presentation", UNKNOWN)
    empty = ("undetermined", set(), None, set(), set())
    if evidence.get("noBetterExplanation") == NO:
        return ("not-met",) + empty[1:]
    if contradicts(p, evidence):
        return empty
    if p == UNKNOWN:
        if contradicts("attack", evidence):
            return empty
        as_attack = evaluate(edition, {**evidence, "presentation": "attack"}, bands, csf)
        met = {frozenset()} if as_attack[0] == "met" else as_attack[3]
        against = {frozenset()} if as_attack[0] == "not-met" else as_attack[4]
        return empty[:3] + tuple({s | {"presentation"} for s in sets} for sets in (met, against))
    found = domains(p, evidence, bands, csf)
    verdict, rows = survey(edition, p, found)
    if verdict != "undetermined":
        basis = None
        if verdict == "met" and edition == "2017" and p == "attack":
            basis = (
                "attack" if found["attacks"] == [2]
                else "mri" if found["newOrMixedEnhancingLesions"] == [True]
                else "ocb_substitute"
            )
        return verdict, rows if verdict == "met" else set(), basis, set(), set()
    return (
        verdict, set(), None,
        smallest_sets(edition, p, found, "met"), smallest_sets(edition, p, found, "not-met"),
    )


# ---- CSF positivity, section 4 -----------------------------------------------------------------


def fluid(case):
    """The inputs `bands` and `csfPositive`, each with the status of what decided it."""
    bands, bands_status = bands_input(case)
    kappa = case["kappa"]
    if bands == YES:
        return bands, bands_status, YES, bands_status
    if kappa == "positive":
        return bands, bands_status, YES, "read"
    if bands == NO:
        return bands, bands_status, *((NO, "read") if kappa in ("grey", "low") else (UNKNOWN, "project-rule"))
    rule = "project-rule" if kappa in ("grey", "low") else bands_status
    return bands, bands_status, UNKNOWN, rule


def bands_input(case):
    given = case["bands"]
    if given is None or case["invalid"]:
        return UNKNOWN, "read"
    if "csfOnly" in given:
        if given["csfOnly"] >= 2:
            return (UNKNOWN, "read") if given.get("pattern") == 5 else (YES, "read")
        return (NO, "read") if given["csfOnly"] == 0 else (UNKNOWN, "project-rule")
    if "pattern" in given:
        return (YES if given["pattern"] in (2, 3) else NO), "read"
    return (YES if given["result"] == "positive" else NO), "read"


# ---- invented work-ups -------------------------------------------------------------------------


def invent(number, rng):
    """A work-up, and what the oracle has to know of it."""
    evidence = {}
    likely_unknown = rng.choice([0.15, 0.35, 0.6])

    def answer():
        roll = rng.random()
        return UNKNOWN if roll < likely_unknown else YES if roll < (1 + likely_unknown) / 2 else NO

    for name in OTHERS:
        value = answer()
        if name == "noBetterExplanation" and rng.random() < 0.7:
            value = YES
        if value != UNKNOWN or rng.random() < 0.5:
            evidence[name] = value
    evidence["regions"] = {r: answer() for r in REGIONS if rng.random() < 0.9}
    for name in COUNTS:
        roll = rng.random()
        if roll < 0.6:
            evidence[name] = rng.choice([0, 1, 1, 1, 2, 2, 3])
        elif roll < 0.75:
            evidence[name] = {"atLeast": rng.choice([0, 1, 2, 3])}
        elif roll < 0.9:
            evidence[name] = UNKNOWN
    evidence["presentation"] = rng.choice(
        ["attack"] * 6 + ["progression", "progression", "none", "none", "non-specific", "atypical",
                          UNKNOWN])
    if evidence["presentation"] in ("progression", "none") and rng.random() < 0.8:
        evidence["attacks"] = 0
    bands = rng.choice(
        [None, {"result": "positive"}, {"result": "negative"}]
        + [{"pattern": i} for i in (1, 2, 3, 4, 5)]
        + [{"csfOnly": c, "shared": s, "serumOnly": 0} for c in (0, 1, 2, 7) for s in (0, 3)]
        + [{"csfOnly": 4, "shared": 0, "serumOnly": 0, "pattern": 5}])
    invalid = rng.random() < 0.1
    kappa = rng.choice(["none", "positive", "grey", "low", "under", "wide"])
    results = [
        {"analyte": "albumin", "in": "csf", "value": 200, "unit": "mg/L"},
        {"analyte": "albumin", "in": "serum", "value": 40, "unit": "g/L"},
    ]
    # QAlb is 0.005, serum κ 10 mg/L: a κ index of 1 is 0.05 mg/L in CSF.
    amount = {"positive": {"value": 0.05 * rng.choice([6.1, 6.2, 15, 90])},
              "grey": {"value": 0.05 * rng.choice([3.5, 4.4, 6.05])},
              "low": {"value": 0.05 * rng.choice([0.4, 3.4])},
              "under": {"below": 0.05 * rng.choice([1.0, 6.1])},
              "wide": {"below": 0.05 * rng.choice([6.2, 30])}}.get(kappa)
    if amount:
        results += [{"analyte": "kappa-flc", "in": "csf", "unit": "mg/L", **amount},
                    {"analyte": "kappa-flc", "in": "serum", "value": 10, "unit": "mg/L"}]
    workup = {
        "workup": 1, "id": f"invented-{number}",
        "person": {"id": "p", "ageYears": 40, "sex": "female"},
        "draws": {"csf": {"at": "2031-03-02T10:00:00Z"},
                  "serum": {"at": "2031-03-12T11:00:00Z" if invalid else "2031-03-02T11:00:00Z"}},
        "results": results, "evidence": evidence,
    }
    if bands is not None:
        workup["bands"] = bands
    known = {"under": "low", "wide": "none"}.get(kappa, kappa)
    return workup, {"bands": bands, "invalid": invalid, "kappa": "none" if invalid else known}


# ---- the comparison ----------------------------------------------------------------------------


def expected(workup, case):
    evidence = workup["evidence"]
    bands, bands_status, csf, csf_status = fluid(case)
    result = {}
    for edition in ("2017", "2024"):
        verdict, rows, basis, met, against = evaluate(edition, evidence, bands, csf)
        positive = evaluate(edition, evidence, YES, YES)
        negative = evaluate(edition, evidence, NO, NO)
        if positive[0] == "met" and negative[0] == "not-met":
            effect = "decisive"
        else:
            same = positive[0] == negative[0] and positive[3:] == negative[3:]
            effect = "no-effect" if same else "narrows"
        result[edition] = {
            "verdict": verdict, "rows": rows, "ditBasis": basis, "missing": met,
            "missingAgainst": against, "puncture": effect,
        }
    result["statuses"] = {"2017": bands_status, "2024": csf_status}
    return result


def seen(interpretation):
    result = {}
    for line in interpretation["criteria"]:
        result[line["edition"]] = {
            "verdict": line["verdict"], "rows": set(line["rows"]), "ditBasis": line["ditBasis"],
            "missing": {frozenset(s) for s in line["missing"]},
            "missingAgainst": {frozenset(s) for s in line["missingAgainst"]},
            "puncture": interpretation["puncture"][line["edition"]],
        }
    return result


def status_differs(edition, line, statuses):
    """A row of 2024 other than 24-A and every row of 2017 is second-hand; the fluid may weaken."""
    if not line["rows"]:
        return False
    least = "read" if line["rows"] == ["24-A"] else "second-hand"
    reads_fluid = not set(line["rows"]) <= {"17-1", "17-2", "17-3", "24-A", "24-E"}
    if reads_fluid:
        least = max(least, statuses[edition], key=STRENGTH.index)
    return line["status"] != least


def compare(workup, case, interpretation):
    wanted, got = expected(workup, case), seen(interpretation)
    found = []
    for line in interpretation["criteria"]:
        edition = line["edition"]
        for field, value in wanted[edition].items():
            if got[edition][field] != value:
                found.append(f"{edition} {field}: {got[edition][field]} instead of {value}")
        if status_differs(edition, line, wanted["statuses"]):
            found.append(f"{edition} status: {line['status']} of rows {line['rows']}")
    contradicted = contradicts(workup["evidence"].get("presentation", UNKNOWN), workup["evidence"])
    named = any(p["code"] == "evidence-contradicts-itself" for p in interpretation["problems"])
    if contradicted != named:
        found.append(f"evidence-contradicts-itself named: {named}")
    return found


def main(launcher, number, seed):
    rng = random.Random(seed)
    different = 0
    with tempfile.TemporaryDirectory() as folder:
        cases = {}
        for i in range(number):
            workup, case = invent(i, rng)
            path = os.path.join(folder, f"{workup['id']}.json")
            with open(path, "w", encoding="utf-8") as file:
                json.dump(workup, file)
            cases[workup["id"]] = (workup, case, path)
        paths = [path for _, _, path in cases.values()]
        run = subprocess.run(
            [launcher, "interpret", "--format", "json", *paths], capture_output=True, text=True)
        if run.returncode != 0:
            print(run.stderr, "exit", run.returncode)
        for interpretation in json.loads(run.stdout):
            workup, case, _ = cases[interpretation["workup"]]
            found = compare(workup, case, interpretation)
            if found:
                different += 1
                print(json.dumps(workup["evidence"]), case)
                print("\n".join("  " + line for line in found))
    print(f"{number} work-ups, {different} differ")
    return 1 if different else 0


if __name__ == "__main__":
    sys.exit(
        main(sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 2000,
             int(sys.argv[3]) if len(sys.argv) > 3 else 1))
