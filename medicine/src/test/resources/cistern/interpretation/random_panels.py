"""An independent computation of every finding, on seeded random panels.

Written from the published formulas alone, without looking at the Java code. Prints the table
random_panels.tsv that RandomPanelsTest reads:

    python3 random_panels.py > random_panels.tsv

Columns: age, hours between the draws, inputs (name=value, < or > before a censored one), and for
each code value|verdict, or lower..upper|verdict when an input is censored, or -|verdict.
"""
import math
import random

INF = float("inf")
REIBER = {  # a/b, b^2, c of Qlim and Qlow, constants of 1994, Reiber, J Neurol Sci
    "igg": ((0.93, 6e-6, 1.7e-3), (0.33, 2e-6, 0.3e-3)),
    "iga": ((0.77, 23e-6, 3.1e-3), (0.17, 74e-6, 1.3e-3)),
    "igm": ((0.67, 120e-6, 7.1e-3), (0.04, 442e-6, 0.82e-3)),
}


def qlim(protein, q, which=0):
    if protein == "kappa":  # Reiber 2019, printed with quotients times 1000
        return (3.27 * math.sqrt((q * 1e3) ** 2 + 33) - 8.2) * 1e-3 if q != INF else INF
    s, b2, c = REIBER[protein][which]
    return s * math.sqrt(q * q + b2) - c if q != INF else INF


def div(a, b):
    if a == 0:
        return 0.0
    if b == 0:
        return INF
    return a / b


class Value:
    """lo and hi ends, open when censored."""

    def __init__(self, lo, hi, open_):
        self.lo, self.hi, self.open = lo, hi, open_

    def over(self, other):
        return Value(div(self.lo, other.hi), div(self.hi, other.lo), self.open or other.open)


def passed(v, cut, inclusive, side):
    if side == "at":
        return v >= cut if inclusive else v > cut
    return v >= cut if side == "from above" else v > cut


def word(v, side, above=None, above_incl=False, grey=None, grey_incl=False, below=None):
    if above is not None and passed(v, above, above_incl, side):
        return "above"
    if grey is not None and passed(v, grey, grey_incl, side):
        return "borderline"
    if below is not None and not passed(v, below, True, side):
        return "below"
    return "within"


def judge(value, at_low, at_high=None):
    """at_low: limits that hold at the low end, at_high at the high end."""
    if not value.open:
        return word(value.lo, "at", **at_low)
    a = word(value.lo, "from above", **at_low)
    b = word(value.hi, "from below", **(at_high or at_low))
    return a if a == b else "undetermined"


def findings(age, hours, inputs):
    out = {}
    get = inputs.get
    invalid = abs(hours) > 168

    def put(code, value, verdict):
        out[code] = (value, verdict)

    def both(verdict):
        return "undetermined" if invalid else verdict

    def quotient(name):
        c, s = get(name + ".csf"), get(name + ".serum")
        return None if c is None or s is None else c.over(s)

    qalb = quotient("albumin")
    # albumin quotient and its age limit
    if qalb is None:
        put("albumin-quotient", None, "undetermined")
    else:
        if age is None:
            v = "undetermined"
        elif age >= 18:
            v = judge(qalb, dict(above=(4 + age / 15) * 1e-3))
        else:
            for years, up, lo in ((1 / 12, 28, 8), (2 / 12, 15, 5), (3 / 12, 10, 3), (4 / 12, 5, 2),
                                  (7, 3.5, 0.5), (16, 5, None), (18, 6.5, None)):
                if age < years:
                    break
            v = judge(qalb, dict(above=up * 1e-3, below=None if lo is None else lo * 1e-3))
        put("albumin-quotient", qalb, both(v))
    # blood
    rbc, rbcb, hct = get("erythrocytes.csf"), get("erythrocytes.blood"), get("hematocrit.blood")
    bloody = False
    p = None
    if rbc is not None and rbcb is not None and hct is not None:
        p = Value(rbc.lo / rbcb.hi * (1 - hct.hi), rbc.hi / rbcb.lo * (1 - hct.lo), rbc.open)
        bloody = passed(p.hi, 0.001, False, "from below" if p.open else "at")
    elif rbc is not None:
        bloody = passed(rbc.hi, 5000, True, "from below" if rbc.open else "at")
    # quotients, fractions, amounts
    for short, name in (("igg", "igg"), ("iga", "iga"), ("igm", "igm"), ("kappa", "kappa-flc")):
        q = quotient(name)
        if q is None:
            for c in ("-quotient", "-intrathecal-fraction", "-local"):
                put(short + c, None, "undetermined")
            continue
        if qalb is None:
            put(short + "-quotient", q, "undetermined")
            put(short + "-intrathecal-fraction", None, "undetermined")
            put(short + "-local", None, "undetermined")
            continue
        joint = Value(q.lo, q.hi, q.open or qalb.open)

        def lim(qa, low):
            d = dict(above=qlim(short, qa))
            if low and short != "kappa":
                d["below"] = qlim(short, qa, 1)
            return d
        v = judge(joint, lim(qalb.hi, True), lim(qalb.lo, True))
        w = judge(joint, lim(qalb.hi, False), lim(qalb.lo, False))
        if bloody and short != "kappa":
            v = w = "undetermined"
        put(short + "-quotient", q, both(v))
        frac = Value(max(0.0, 1 - div(qlim(short, qalb.hi), q.lo)) if q.lo else 0.0,
                     max(0.0, 1 - qlim(short, qalb.lo) / q.hi) if q.hi else 0.0, joint.open)
        put(short + "-intrathecal-fraction", frac, both(w))
        c, s = get(name + ".csf"), get(name + ".serum")
        put(short + "-local",
            Value(max(0.0, c.lo - qlim(short, qalb.hi) * s.hi),
                  max(0.0, c.hi - qlim(short, qalb.lo) * s.lo), joint.open), both(w))
    ql = quotient("lambda-flc")
    put("lambda-quotient", ql, "undetermined")
    # indices
    for short, name, lims in (
            ("igg", "igg", dict(above=0.70, grey=0.60, grey_incl=True)),
            ("iga", "iga", None), ("igm", "igm", None), ("lambda", "lambda-flc", None),
            ("kappa", "kappa-flc", dict(above=6.1, above_incl=True, grey=3.5, grey_incl=True))):
        q = quotient(name)
        if q is None or qalb is None:
            put(short + "-index", None, "undetermined")
            continue
        i = q.over(qalb)
        put(short + "-index", i, both(judge(i, lims)) if lims else "undetermined")
    # synthesis rate, mg/dL with 5 dL a day as published
    if quotient("igg") is None or qalb is None:
        put("igg-synthesis-rate", None, "undetermined")
    else:
        gc, gs = get("igg.csf"), get("igg.serum")

        def rate(g, s, qa):
            g, s = g / 10, s / 10
            return 5 * (g - s / 369 - 0.43 * s * qa + 0.43 * s / 230) if s != INF else -INF
        r = Value(rate(gc.lo, gs.hi, qalb.hi), rate(gc.hi, gs.lo, qalb.lo),
                  gc.open or gs.open or qalb.open)
        put("igg-synthesis-rate", r, both(judge(r, dict(above=3.3, below=-9.9))))
    # antibody indices
    words = []
    qg = quotient("igg")
    for virus in ("measles", "rubella", "varicella-zoster", "borrelia"):
        q = quotient(virus + "-igg")
        code = virus + "-antibody-index"
        if q is None or qg is None or qalb is None:
            put(code, None, "undetermined")
            words.append("undetermined")
            continue
        low = min(qg.lo, qlim("igg", qalb.lo))
        high = min(qg.hi, qlim("igg", qalb.hi))
        ai = q.over(Value(low, high, qg.open or qalb.open))
        up, grey = (1.3, 1.0) if virus == "borrelia" else (1.5, 1.3)
        v = judge(ai, dict(above=up, above_incl=True, grey=grey))
        serum = get(virus + "-igg.serum")
        if serum.open and serum.lo == 0:
            v = "undetermined"
        words.append(v)
        put(code, ai, both(v))
    mrz = [w for w in words[:3] if w != "undetermined"]
    n = float(mrz.count("above"))
    if not mrz:
        put("mrz-reaction", None, "undetermined")
    else:
        v = "above" if n >= 2 else ("within" if len(mrz) == 3 else "undetermined")
        put("mrz-reaction", Value(n, n, False), both(v))
    # the fluid itself
    g = quotient("glucose")
    if g is None:
        put("glucose-ratio", None, "undetermined")
    else:
        def glim(mmol):
            mg = mmol * 18.0156
            return dict(below=0.5 if mg < 100 else 0.4 if mg < 150 else 0.3)
        s = get("glucose.serum")
        put("glucose-ratio", g, both(judge(g, glim(s.hi), glim(s.lo))))
    for code, lims in (("lactate", dict(above=2.7)), ("total-protein", dict(above=500)),
                       ("leukocytes", dict(above=5, above_incl=True)),
                       ("erythrocytes", dict(above=500)),
                       ("myelin-basic-protein",
                        dict(above=9, above_incl=True, grey=4, grey_incl=True))):
        c = get(code + ".csf")
        put(code, c, "undetermined" if c is None else judge(c, lims))
    # corrected for blood
    w, wb = get("leukocytes.csf"), get("leukocytes.blood")
    if w is None or rbc is None:
        put("leukocytes-corrected", None, "undetermined")
    else:
        per = 1 / 1000 if wb is None or rbcb is None else wb.lo / rbcb.lo
        c = Value(max(0.0, w.lo - rbc.hi * per), max(0.0, w.hi - rbc.lo * per), w.open or rbc.open)
        put("leukocytes-corrected", c, judge(c, dict(above=5, above_incl=True)))

    def corrected(code, name, lims):
        c, s = get(name + ".csf"), get(name + ".serum")
        if c is not None and s is not None and p is not None:
            low, high, isopen = c.lo - p.hi * s.hi, c.hi - p.lo * s.lo, c.open or s.open or p.open
            pair = True
        elif name == "total-protein" and c is not None and rbc is not None:
            low, high, isopen = c.lo - rbc.hi / 100, c.hi - rbc.lo / 100, c.open or rbc.open
            pair = False
        else:
            put(code, None, "undetermined")
            return
        if high < 0:
            put(code, None, "undetermined")
            return
        v = Value(max(0.0, low), max(0.0, high), isopen)
        verdict = judge(v, lims) if lims else "undetermined"
        put(code, v, both(verdict) if pair else verdict)
    corrected("total-protein-corrected", "total-protein", dict(above=500))
    for ig in ("igg", "iga", "igm", "albumin"):
        corrected(ig + "-corrected", ig, None)
    # blood alone: no panel here measures it, its limits ask for an assay by name
    put("neurofilament-light", None, "undetermined")
    return out


RANGES = {  # centre and spread (log) of each input, canonical units
    "albumin.csf": (250, 0.6), "albumin.serum": (41000, 0.12),
    "igg.csf": (38, 0.7), "igg.serum": (10500, 0.25),
    "iga.csf": (4, 0.8), "iga.serum": (2000, 0.4), "igm.csf": (1.1, 0.9), "igm.serum": (1200, 0.4),
    "kappa-flc.csf": (1.2, 1.4), "kappa-flc.serum": (14, 0.4),
    "lambda-flc.csf": (0.8, 1.2), "lambda-flc.serum": (14, 0.4),
    "glucose.csf": (3.2, 0.3), "glucose.serum": (6, 0.35), "lactate.csf": (2, 0.4),
    "total-protein.csf": (450, 0.5), "total-protein.serum": (70000, 0.1),
    "leukocytes.csf": (5, 1.2), "leukocytes.blood": (7000, 0.3),
    "erythrocytes.csf": (300, 2.5), "erythrocytes.blood": (4.7e6, 0.1), "hematocrit.blood": (0.41, 0.1),
    "myelin-basic-protein.csf": (4, 0.8),
    "measles-igg.csf": (30, 0.7), "measles-igg.serum": (5000, 0.6),
    "rubella-igg.csf": (0.4, 0.7), "rubella-igg.serum": (60, 0.6),
    "varicella-zoster-igg.csf": (8, 0.7), "varicella-zoster-igg.serum": (1500, 0.6),
    "borrelia-igg.csf": (0.3, 0.9), "borrelia-igg.serum": (50, 0.7),
}
PLAUSIBLE = {  # doubted values have tests of their own, so these panels hold none
    "albumin": (20, 10000, 10000, 70000), "igg": (1, 3000, 1000, 70000),
    "iga": (0.05, 500, 50, 40000), "igm": (0.01, 300, 50, 40000),
}


def plausible(inputs):
    for name, (clo, chi, slo, shi) in PLAUSIBLE.items():
        c, s = inputs.get(name + ".csf"), inputs.get(name + ".serum")
        if c is not None and (c.hi < clo or c.lo > chi):
            return False
        if s is not None and (s.hi < slo or s.lo > shi):
            return False
        if c is not None and s is not None:
            q = c.over(s)
            if q.hi < 1e-4 or q.lo > 1:
                return False
    return True


def main():
    draw = random.Random(20340509)
    print("# made by random_panels.py; every panel is invented")
    made = 0
    while made < 300:
        age = draw.choice([None, *[round(draw.uniform(0, 90), draw.choice([0, 2])) for _ in range(9)]])
        hours = draw.choice([0.5, -3, 20, 30, 160, 168, 170, 400])
        present = draw.choice([1.0, 0.9, 0.7])
        censoring = draw.choice([0, 0, 0.08, 0.25])
        inputs, shown = {}, []
        for name, (centre, spread) in RANGES.items():
            if draw.random() > present:
                continue
            value = float("%.4g" % math.exp(draw.gauss(math.log(centre), spread)))
            kind = draw.random()
            if kind < censoring and not name.endswith("blood"):
                if draw.random() < 0.7:
                    inputs[name] = Value(0.0, value, True)
                    shown.append("%s=<%r" % (name, value))
                else:
                    inputs[name] = Value(value, INF, True)
                    shown.append("%s=>%r" % (name, value))
            else:
                inputs[name] = Value(value, value, False)
                shown.append("%s=%r" % (name, value))
        if not plausible(inputs):
            continue
        made += 1
        cells = []
        for code, (v, verdict) in findings(age, hours, inputs).items():
            if v is None:
                text = "-"
            elif v.open:
                text = "%.13g..%.13g" % (v.lo, v.hi)
            else:
                text = "%.13g" % v.lo
            cells.append("%s=%s|%s" % (code, text, verdict))
        print("\t".join(["-" if age is None else repr(age), repr(hours), " ".join(shown),
                         " ".join(cells)]))


if __name__ == "__main__":
    main()
