"""Draws invented focusing gels with their truth, over ranges far wider than any one laboratory's.

    python3 draw.py FOLDER COUNT SEED

Everything is invented. A gel is drawn in four steps: who lies on it (people), where (row), what the
stain shows of it (paint), and how the picture was taken (take). The truth holds each lane's middle line,
width and bands, and what is wrong with a pair; it is the same format that a corrected reading exports.
"""
import io
import json
import os
import sys

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from scipy import ndimage as ndi

F4 = np.float32


def log(r, a, b):
    """Log-uniform between a and b."""
    return float(np.exp(r.uniform(np.log(a), np.log(b))))


def field(r, h, w, sy, sx=None):
    """Smooth noise of unit spread with a coarse grid's spacing of sy by sx pixels."""
    sx = sx or sy
    g = r.standard_normal((max(2, int(h / sy) + 3), max(2, int(w / sx) + 3))).astype(F4)
    return np.asarray(Image.fromarray(g).resize((w, h), Image.BICUBIC))


def step(t):
    return 1 / (1 + np.exp(np.clip(-t, -30, 30)))


def fonts():
    found = []
    for folder in ('/usr/share/fonts', os.path.join(os.path.dirname(np.__file__), '../matplotlib/mpl-data/fonts/ttf')):
        for where, _, names in os.walk(folder):
            found += [os.path.join(where, n) for n in sorted(names) if n.endswith('.ttf') and 'Math' not in n and 'STIX' not in n]
    return found or [None]


FONTS = fonts()


def font(r, size):
    f = FONTS[int(r.integers(len(FONTS)))]
    return ImageFont.truetype(f, max(7, int(size))) if f else ImageFont.load_default(size=max(7, float(size)))


class Gel:
    """What the lanes of one gel have in common."""

    def __init__(g, r):
        g.w = log(r, 15, 105)
        g.L = float(np.clip(g.w * log(r, 3.2, 22), 260, 1300))
        g.sigma = max(1.0, g.L * log(r, .0012, .013))
        g.spread = r.choice([.06, .12, .3, .5], p=[.3, .35, .2, .15])      # of a band's width within the gel
        g.widening = r.normal(0, .25)                                      # of bands along the lane
        g.gap = r.uniform(1.7, 2.8) if r.random() < .35 else r.uniform(2.6, 5)   # least distance of two bands, in sigmas
        g.top = log(r, .4, 2.5)
        g.least = g.top / log(r, 2, 40)                                    # the faintest band
        g.body = 0. if r.random() < .25 else log(r, .015, .9)
        g.from_, g.to = r.uniform(.015, .2) * g.L, r.uniform(.8, .985) * g.L
        g.lean = r.uniform(.8, 2.4, 2)                                     # to which end bands tend
        g.ripple = log(r, .004, .09)
        g.tails, g.skew = r.uniform(0, .35) * (r.random() < .4), r.normal(0, .2) * (r.random() < .5)
        g.flat = r.uniform(1.3, 2.6) if r.random() < .2 else 1.
        g.doublets = r.choice([.1, .3, .6])
        g.shoulders = r.choice([0., .15, .4], p=[.5, .3, .2])               # how often a faint band stands close beside a strong one
        g.astray = log(r, .02, .45) if r.random() < .6 else 0.              # of a band between the two lanes, in sigmas
        g.likest = log(r, .45, .9)                                         # share of its height that a band keeps in the other lane
        g.maximum = log(r, .6, 5)                                          # where the stain saturates
        g.plain = r.random() < .45                                         # lanes as even as paint: nothing but body and bands
        g.floor = 0.
        if g.plain:
            g.body, g.floor, g.ripple = log(r, .02, .9), log(r, .03, .8), log(r, .0003, .01)
        g.cropped = r.random() < (.4 if g.plain else .12)                  # lanes run out of the picture
        g.hollow = r.random() < .07                                        # what lies between lanes is darker than they

    def width(g, r, v):
        s = g.sigma * np.exp(r.normal(0, g.spread)) * (1 + g.widening * (v / g.L - .5))
        return float(np.clip(s, max(.8, .35 * g.sigma), 3.2 * g.sigma))

    def height(g, r, factor=1.):
        return max(log(r, g.least, g.top), g.least * factor)

    def place(g, r, n, have):
        """n places at least a gap from each other and from those there are: (middle, sigma)."""
        out = []
        for _ in range(60 * n):
            if len(out) == n:
                break
            pool = have + out
            v = g.from_ + (g.to - g.from_) * r.beta(*g.lean)
            s = g.width(r, v)
            if pool and r.random() < g.doublets:
                o = pool[int(r.integers(len(pool)))]
                v = o[0] + r.choice([-1, 1]) * g.gap * .5 * (s + o[1]) * r.uniform(1, 1.35)
            if g.from_ < v < g.to and all(abs(v - o[0]) > g.gap * .5 * (s + o[1]) for o in pool):
                out.append((float(v), s))
        return out


def person(g, r):
    """The bands (middle, sigma, height, own) of a person's CSF and serum, and the ground both share."""
    kind = r.choice(6, p=[.29, .11, .27, .14, .13, .06])
    own, both, alone = [(0, 0), (1, 0), (int(r.integers(2, 15)), 0), (int(r.integers(2, 8)), int(r.integers(1, 9))),
                        (0, int(r.integers(1, 12))), (0, int(r.integers(4, 9)))][kind] + (0,)
    if r.random() < .18:                                                   # bands of the serum alone are few in one person
        alone = 1 if r.random() < .7 else 2
    if kind == 1 and r.random() < .3:
        both = int(r.integers(1, 6))
    if kind == 5:
        apart = g.gap * g.sigma * r.uniform(1.05, 2.2)
        first, peak = r.uniform(g.from_, max(g.from_ + 1, g.to - apart * both)), r.uniform(0, both)
        shared = [(first + apart * i, g.sigma) for i in range(both) if first + apart * i < g.to]
        heights = [g.top * max(.12, np.exp(-((i - peak) / (.5 * both)) ** 2)) for i in range(len(shared))]
        if r.random() < .25:
            own = int(r.integers(1, 5))
    else:
        shared = g.place(r, both, [])
        heights = [g.height(r) for _ in shared]
    sera = g.place(r, alone, shared)
    fluid = g.place(r, own, shared + sera)
    share = log(r, .5, 2.)
    csf = [(v + r.normal(0, g.astray) * s, s * np.exp(r.normal(0, .06)), max(a * log(r, g.likest, 1 / g.likest), .8 * g.least), 0)
           for (v, s), a in zip(shared, heights)]
    csf += [(v, s, g.height(r, 1.3), 1) for v, s in fluid]
    ser = [(v, s, max(a * share, .8 * g.least), 0) for (v, s), a in zip(shared, heights)]
    ser += [(v, s, g.height(r), 1) for v, s in sera]
    csf, ser = beside(g, r, csf), beside(g, r, ser)
    csf, ser = ([(*b, i if i < len(shared) else -1) for i, b in enumerate(q)] for q in (csf, ser))
    hump = [(r.uniform(.1, .9) * g.L, r.uniform(.08, .35) * g.L, r.uniform(.3, 1)) for _ in range(int(r.integers(1, 4)))]
    if g.plain:
        hump = hump[:1]
    else:
        hump += [(r.uniform(0, 1) * g.L, g.sigma * r.uniform(5, 10), r.uniform(-.14, .14)) for _ in range(int(r.integers(0, 9)))]
    return dict(csf=csf, serum=ser, hump=hump, csfOnly=len(fluid), ladder=kind == 5 and len(shared) >= 4, fault=None)


def beside(g, r, bands):
    """Makes some bands faint that stand close beside a strong one."""
    out = []
    for v, s, a, own in bands:
        near = max([k for u, t, k, _ in bands if 0 < abs(u - v) < 2.5 * (s + t)], default=0.)
        out.append((v, s, max(.5 * g.least, near * log(r, .08, .5)) if near > a * .7 and r.random() < g.shoulders else a, own))
    return out


def people(g, r, n):
    """The people on a gel; a few with another's serum or a lane that nobody could read."""
    all_ = [person(g, r) for _ in range(n)]
    for p in all_:
        if r.random() < .1:
            p['fault'] = str(r.choice(['smear', 'bubble', 'black', 'torn', 'nothing']))
            p['spoiled'] = str(r.choice(['csf', 'serum']))
            if p['fault'] == 'nothing' and g.body < .12:
                p['fault'] = 'smear'
    return all_


def row(g, r):
    """The lanes from left to right (kind, person) and their middles in pixels from the first."""
    inside = 1 + log(r, .03, 1.9)
    if g.plain and r.random() < .5:
        inside = 1 + log(r, .25, 1.2)                                      # as wide between lanes as a lane, or nearly
    between = inside if r.random() < (.7 if g.plain else .45) else inside + r.uniform(0, 1.3)
    n = max(1, min(int(r.integers(1, 11)), int(2100 / ((inside + between) * g.w))))
    order = ['csf', 'serum'] if r.random() < .6 else ['serum', 'csf']
    empty = r.choice([0, .05, .2], p=[.45, .35, .2])
    lanes = []
    for p in range(n):
        two = order if r.random() < .93 else order[::-1]
        lanes += [(two[0], p)] + ([('blank', None)] if r.random() < empty * .2 else []) + [(two[1], p)]
        if r.random() < empty:
            lanes += [('blank', None)] * int(r.integers(1, 3))
        if r.random() < .04:
            lanes += [('control', None)]
    if r.random() < .05:                                                   # all fluids, then all sera
        lanes = [(order[0], p) for p in range(n)] + [(order[1], p) for p in range(n)]
    for _ in range(int(r.random() < .3) + int(r.random() < .08)):
        lanes.insert(int(r.choice([0, len(lanes)])), ('control', None))
    if r.random() < .12:
        for _ in range(int(r.integers(1, 4))):
            lanes.insert(int(r.choice([0, len(lanes)])), ('blank', None))
    uneven = 0. if g.plain and r.random() < .6 else r.choice([0, .02, .07], p=[.5, .35, .15])
    x, xs, before = 0., [], None
    for lane in lanes:
        if before is not None:
            near = 'blank' in (lane[0], before[0]) or (lane[1] is not None and lane[1] == before[1])
            x += g.w * max(1.01, (inside if near else between) + r.normal(0, uneven) * inside)
        xs.append(x)
        before = lane
    return lanes, np.array(xs), n


def band(g, v, middle, sigma):
    d = (v - middle) / (sigma * np.where(v < middle, 1 - g.skew, 1 + g.skew)) if g.skew else (v - middle) / sigma
    core = np.exp(-.5 * np.abs(d) ** (2 * g.flat))
    return (1 - g.tails) * core + g.tails / (1 + (d / 1.2) ** 2) if g.tails else core


def paint(g, r):
    """The amount of stain over the sheet, and the truth in its pixels."""
    lanes, xs, n = row(g, r)
    folk = people(g, r, n)
    tight = r.random() < .2
    left, right = (r.uniform(.5, .7, 2) if tight else r.uniform(.55, 3, 2)) * g.w
    above, below = r.uniform(-.02, .05, 2) * g.L if tight else r.uniform(.02, .3, 2) * g.L + 8
    if g.cropped:
        above, below = -r.uniform(0, .2, 2) * g.L
    h, w = int(g.L + above + below), int(xs[-1] + left + right)
    xs = xs + left
    a = np.zeros((h, w), F4)
    calm = .2 if g.plain else 1.
    smile = calm * r.normal(0, .012) * g.L * (r.random() < .7)
    curl, tilt, jitter = calm * r.normal(0, 1, 3) * g.sigma * r.uniform(0, 1.3)
    cover = np.zeros((h, w), F4)
    edge = log(r, 2, 14)
    mark = (r.uniform(-.02, 1.02) * g.L, g.sigma * log(r, .8, 2.5), log(r, .05, 1)) if r.random() < .3 else None
    slit = r.uniform(.01, .99) * g.L if r.random() < .25 else None
    slit_size = (log(r, .003, .02) * g.L, log(r, .5, 1.15), r.choice([-1, 1]) * log(r, .1, 1.2) * g.top)
    acid = (r.random() < .25) * log(r, .1, 1.2) * g.top
    acid_end, acid_reach, acid_wide = r.choice([0., 1.]), log(r, .02, .2) * g.L, r.random() < .5
    hollow = r.normal(0, .3)
    drift = r.normal(0, 1.5) * g.sigma * (r.random() < .3)
    truth = []
    for i, (kind, p) in enumerate(lanes):
        x0, x1 = int(max(0, xs[i] - 1.1 * g.w)), int(min(w, xs[i] + 1.1 * g.w))
        if x1 - x0 < 3:
            continue
        s = (np.arange(x0, x1)[None, :] - xs[i]) / (g.w / 2)
        q = (xs[i] - w / 2) / max(1., w / 2)
        down = above + r.normal(0, .5) * jitter + smile * (q * q - .4) + drift * r.normal()
        bow, slant = curl + r.normal(0, .24) * g.sigma, tilt + r.normal(0, .24) * g.sigma
        v = np.arange(h)[:, None] - down - bow * np.minimum(np.abs(s), 1.3) ** 2 - slant * s
        across = np.exp(-.693 * np.abs(s) ** edge) * (1 + r.normal(0, .15) * s * s + r.normal(0, .12) * s)
        if g.plain:
            across = np.exp(-.693 * np.abs(s) ** (edge * 1.5))
        across = across * (1 + 2 * g.ripple * ndi.gaussian_filter1d(r.standard_normal(s.shape), 1.5))
        inside = step((g.L / 2 - np.abs(v - g.L / 2)) / (.01 * g.L))
        who = folk[p] if p is not None else None
        spoiled = who is not None and who['fault'] is not None and who['spoiled'] == kind
        bands, c = [], np.zeros_like(v)
        if kind == 'blank' or spoiled and who['fault'] == 'nothing':
            c = c + .02 * g.body * inside
        else:
            have = who[kind] if who else [(u, t, g.height(r), 1, -1) for u, t in g.place(r, int(r.integers(3, 9)), [])]
            hump = who['hump'] if who else [(.5 * g.L, .3 * g.L, 1.)]
            load = log(r, .6, 1.6)
            ground = sum(k * np.exp(-.5 * ((v - m) / d) ** 2) for m, d, k in hump)
            c = g.body * load * np.clip(ground + g.floor, .02, None) * inside * (1 + g.ripple * field(r, h, 1, 6 * g.sigma)[:, :1])
            if acid:
                c = c + acid * log(r, .5, 1.6) * np.exp(-np.abs(v - acid_end * g.L) / acid_reach) * (1 if acid_wide else inside)
            for u, t, k, own, one in have:
                under = float(np.exp(-np.interp(u, v[:, v.shape[1] // 2], c[:, c.shape[1] // 2]) / g.maximum))
                k = k * min(2.5, max(1., .45 / under))                     # a band that the dark ground would hide is stronger
                c = c + k * load * band(g, v, u, t) * (1 + r.normal(0, .08) * s + hollow * .3 * s * s)
                bands.append([float(u + down), own, one, float(t)])
            if mark:
                c = c + mark[2] * log(r, .5, 1.5) * np.exp(-.5 * ((v - mark[0]) / mark[1]) ** 2)
        if kind == 'blank' and mark and r.random() < .5:
            c = c + mark[2] * np.exp(-.5 * ((v - mark[0]) / mark[1]) ** 2)
        if spoiled:
            c = spoil(g, r, c, v, s, who['fault'])
            bands = []
        if slit is not None:
            on = step((slit_size[0] - np.abs(v - slit)) / 1.) * step((slit_size[1] - np.abs(s)) * g.w / 4)
            c = np.clip(c + slit_size[2] * on, 0, None)
        a[:, x0:x1] += c * across
        if kind != 'blank' or r.random() < .5:
            cover[:, x0:x1] = np.maximum(cover[:, x0:x1], across * inside)
        middle = [[float(xs[i]), float(down + t * g.L)] for t in np.linspace(0, 1, 9)]
        truth.append(dict(kind=kind, pair=p, missing=kind == 'blank', spoiled=bool(spoiled), width=g.w, middle=middle, bands=sorted(bands), run=(bow, slant)))
    if g.hollow:
        a += log(r, .03, .8) * g.top * (1 - cover.clip(0, 1))
    pairs = [dict(pair=p, csfOnly=who['csfOnly'], ladder=who['ladder'], fault=who['fault'], spoiled=who.get('spoiled')) for p, who in enumerate(folk)]
    return a, xs, lanes, above, truth, pairs


def smear(g, r, c, v, s):
    """A lane that ran: blotches of any size, or what lay on it drawn out along it, with frayed ends."""
    h, w = c.shape
    if r.random() < .45:
        n = field(r, h, w, log(r, .1, .5) * g.L, .4 * g.w) * .45 + field(r, h, w, log(r, .03, .15) * g.L, .8 * g.w) * .5
        return g.top * log(r, .3, 1.2) * np.clip(.5 + .5 * n, .05, None) * step((g.L / 2 - np.abs(v - g.L / 2)) / (.03 * g.L))
    drawn = ndi.gaussian_filter(c, (log(r, .02, .15) * g.L, log(r, .02, .2) * g.w))
    drawn = drawn * log(r, .6, 2.5) + g.top * log(r, .02, .6)
    drawn = drawn * np.clip(1 + .6 * field(r, h, w, log(r, .1, .6) * g.L, log(r, .08, .4) * g.w)
                            + .4 * field(r, h, w, log(r, .01, .08) * g.L, log(r, .1, .6) * g.w), .02, None)
    fray = field(r, 1, w, 1, .2 * g.w) * r.uniform(.02, .1) * g.L
    first, last = r.uniform(0, .25) * g.L, r.uniform(.6, 1.05) * g.L
    return drawn * step((v - first + fray) / (.03 * g.L)) * step((last + 2 * fray - v) / (.03 * g.L))


def bubbles(g, r, c, s):
    """A lane under air: discs of any size, one, two or three abreast, with a dark rim, a light one or none."""
    h, w = c.shape
    d = np.full((h, w), 9., F4)
    abreast, small = int(r.integers(1, 4)), log(r, .12, .5)
    for _ in range(abreast):
        y = 0.
        while y < h:
            size = log(r, small, 1.) * .5 * g.w
            cx = r.uniform(-.9, .9)
            d = np.minimum(d, (np.hypot((s - cx) * g.w / 2, np.arange(h)[:, None] - y) - size) / (.12 * g.w))
            y += size * r.uniform(.6, 1.9) * abreast ** .5
    rim = g.top * r.choice([0., r.uniform(.05, .8), -r.uniform(.02, .1)]) * np.exp(-.5 * ((d - r.uniform(0, .6)) / r.uniform(.2, 1)) ** 2)
    return np.clip(c * step(d * log(r, 2, 12)) + rim, 0, None)


def spoil(g, r, c, v, s, how):
    h, w = c.shape
    if how == 'smear':
        return smear(g, r, c, v, s)
    if how == 'black':
        return c + g.top * log(r, 2, 5) * step((g.L * r.uniform(.35, .5) - np.abs(v - g.L / 2)) / (.04 * g.L))
    if how == 'torn':
        return c * step(field(r, h, w, .2 * g.L, g.w) * 6 - 4 * r.uniform(0, 1)) * .3
    return bubbles(g, r, c, s)


def ink(r, shape, draw, strength):
    im = Image.new('L', (shape[1], shape[0]), 0)
    draw(ImageDraw.Draw(im), 255)
    m = np.asarray(im, F4) / 255
    return (ndi.gaussian_filter(m, log(r, .3, 1.2)) if r.random() < .5 else m) * strength


def stroke(r, x, y, size, n=6):
    p = np.cumsum(r.normal(0, size / 3, (n, 2)), 0) + [x, y]
    t = np.linspace(0, n - 1, 6 * n)
    return [(float(u), float(v)) for u, v in zip(ndi.map_coordinates(p[:, 0], [t], order=2), ndi.map_coordinates(p[:, 1], [t], order=2))]


def letters(g, r, a, xs, lanes, above):
    """Labels at the lanes, writing, a ruler, arrows: ink that is no band."""
    h, w = a.shape
    if g.plain and r.random() < .6:
        return
    if r.random() < .5:
        f, style, o = font(r, np.clip(g.w * r.uniform(.2, .55), 8, 42)), int(r.integers(5)), int(r.integers(1, 90))
        y = above - r.uniform(.03, .12) * g.L - 8 if r.random() < .7 else above + g.L * r.uniform(1., 1.06)
        turned = r.random() < .15

        def names(d, v):
            for x, (kind, p) in zip(xs, lanes):
                who = '' if p is None else str(p + o)
                t = [str(int(x) % 97), {'csf': 'CAL'[o % 3], 'serum': 'S', 'control': 'K', 'blank': ''}[kind], who + kind[0] * (p is not None),
                     who if kind != 'serum' else '', {'csf': 'CSF', 'serum': 'SER', 'control': 'ctrl', 'blank': '-'}[kind]][style]
                d.text((x - .25 * g.w + r.normal(0, .06) * g.w, y + turned * r.normal(0, 3)), t, fill=v, font=f)
                if p is not None and style == 3 and kind != 'serum':
                    d.line([(x - .4 * g.w, y + 1.3 * f.size), (x + 1.4 * g.w, y + 1.3 * f.size)], fill=v, width=2)
        a += ink(r, a.shape, names, r.uniform(.3, 2) * g.top)
    if r.random() < .25:
        def writing(d, v):
            for _ in range(int(r.integers(1, 9))):
                y = r.choice([r.uniform(0, max(1, above)), r.uniform(min(h - 1, above + g.L), h), r.uniform(0, h)], p=[.45, .4, .15])
                d.line(stroke(r, r.uniform(0, w), y, log(r, 5, 40)), fill=v, width=int(r.integers(1, 6)))
        a += ink(r, a.shape, writing, r.uniform(.2, 2) * g.top)
    if r.random() < .12:
        x, apart, side = r.choice([r.uniform(0, .06), r.uniform(.94, 1)]) * w, log(r, .01, .08) * g.L, r.choice([-1, 1])

        def ruler(d, v):
            f = font(r, 12)
            for i in range(int(h / apart)):
                d.line([(x, i * apart), (x + side * (5 + 7 * (i % 5 == 0)) * log(r, .9, 1.1), i * apart)], fill=v, width=2)
                if i % 5 == 0:
                    d.text((x + 14 * side, i * apart - 6), str(i // 5), fill=v, font=f)
        a += ink(r, a.shape, ruler, r.uniform(.3, 2) * g.top)
    if r.random() < .08:
        def arrows(d, v):
            for _ in range(int(r.integers(1, 5))):
                x, y = xs[int(r.integers(len(xs)))] + r.choice([-1, 1]) * .65 * g.w, above + r.uniform(0, 1) * g.L
                d.polygon([(x, y), (x + 9, y - 4), (x + 9, y + 4)], fill=v)
        a += ink(r, a.shape, arrows, r.uniform(.3, 2) * g.top)


def dirt(g, r, a, xs, above):
    """Fronts, streaks, fibres, scratches, bubbles, specks: what else is dark or light on a sheet."""
    h, w = a.shape
    if g.plain and r.random() < .6:
        return
    if r.random() < .2:
        for _ in range(int(r.integers(1, 3))):                             # a front or edge across the whole sheet
            y = above + r.choice([r.uniform(-.06, .04), r.uniform(.96, 1.06), r.uniform(0, 1)], p=[.45, .45, .1]) * g.L
            path = y + r.normal(0, .02) * (np.arange(w) - w / 2) + field(r, 1, w, 1, log(r, 20, 300))[0] * r.uniform(0, .012) * g.L
            d = (np.arange(h)[:, None] - path[None, :]) / (g.sigma * log(r, .5, 3))
            a += r.choice([1, 1, -.4]) * log(r, .1, 1) * g.top * (np.exp(-.5 * d * d) if r.random() < .7 else step(d) * .5)
    if r.random() < .35:
        for _ in range(int(r.integers(1, 9))):                             # streaks along the lanes
            x, size = r.uniform(0, w), log(r, .8, .25 * g.w + 1)
            y0, y1 = np.sort(r.uniform(0, h, 2))
            y = np.arange(h)
            long = step((y - y0) / 20) * step((y1 - y) / 20) * log(r, .05, .6) * g.top * r.choice([1, 1, -.5])
            a += (np.exp(-.5 * ((np.arange(w) - x) / size) ** 2)[None, :] * long[:, None]).astype(F4)
    if r.random() < .35:
        def lines(d, v):
            for _ in range(int(r.integers(1, 12))):
                d.line(stroke(r, r.uniform(0, w), r.uniform(0, h), log(r, 8, 150)), fill=int(v * r.uniform(.2, 1)), width=int(r.integers(1, 4)))
        a += ink(r, a.shape, lines, r.choice([1, -.6]) * log(r, .1, 1.2) * g.top)
    if r.random() < .3:                                                    # scratches and hairs that cross lanes as bands do
        for _ in range(int(r.integers(1, 6))):
            y0, x0, wide = above + r.uniform(0, 1) * g.L, r.uniform(0, w), log(r, .8, 9) * g.w
            x = np.arange(max(0, int(x0 - wide / 2)), min(w, int(x0 + wide / 2) + 1))
            if len(x) < 3:
                continue
            path = y0 + r.normal(0, .06) * (x - x0) + r.normal(0, .2) * g.sigma * ((x - x0) / g.w) ** 2 + field(r, 1, len(x), 1, 2 * g.w)[0] * r.uniform(0, .8) * g.sigma
            thick = g.sigma * log(r, .25, 1.2)
            y = np.arange(h)[:, None]
            a[:, x] += r.choice([1, 1, -.4]) * log(r, .1, 1.2) * g.top * np.exp(-.5 * ((y - path) / thick) ** 2) * step((wide / 2 - np.abs(x - x0)) / 1.5)
    for _ in range(r.poisson(3)):
        cx, cy, size = r.uniform(0, w), r.uniform(0, h), log(r, 3, 1.5 * g.w)
        y, x = np.ogrid[:h, :w]
        d = (1 - np.hypot(x - cx, (y - cy) * log(r, .5, 2)) / size) * log(r, 2, 30)
        a += r.normal(0, .3) * g.top * .5 * step(d)
    if r.random() < .3:
        y, x = r.integers(0, h, 60), r.integers(0, w, 60)
        specks = np.zeros_like(a)
        specks[y, x] = r.normal(0, 1, 60) * 12 * g.top
        a += ndi.gaussian_filter(specks, log(r, .5, 1.6))
    np.clip(a, 0, None, out=a)


def cut(g, r, a, xs, truth):
    """Strips that were cut apart and put side by side again: steps of place and shade between them."""
    cuts = sorted(set(int((xs[i] + xs[i + 1]) / 2) for i in range(len(xs) - 1) if r.random() < r.choice([.3, .8])))
    level = r.uniform(0, .6) * g.top
    for x0, x1 in zip([0] + cuts, cuts + [a.shape[1]]):
        d = int(r.normal(0, .8) * g.sigma)
        a[:, x0:x1] = np.roll(a[:, x0:x1], d, 0) * log(r, .8, 1.25)
        a[:, max(0, x0 - int(r.integers(0, 4))):x0 + 1] += level
        for t in truth:
            if x0 <= t['middle'][0][0] < x1:
                t['middle'] = [[x, y + d] for x, y in t['middle']]
                t['bands'] = [[b[0] + d, *b[1:]] for b in t['bands']]


def take(g, r, a, truth):
    """The picture of the sheet: 0 to 1, any polarity, with its surround."""
    h, w = a.shape
    seen(truth, h)
    a = ndi.gaussian_filter(a, log(r, .4, 1.3))
    calm = log(r, .03, .5) if g.plain else 1.
    a *= 1 + calm * log(r, .01, .2) * field(r, h, w, log(r, 5, 300), log(r, 5, 300)).clip(-3, 3)
    ground = r.uniform(0, .5) * field(r, h, w, log(r, 40, 500), log(r, 40, 500)) + log(r, .005, .08) * field(r, h, w, log(r, 2, 30))
    a += log(r, .01, .7) * (1 + calm * ground)
    m = g.maximum
    a = m * (1 - np.exp(-np.clip(a, 0, None) / m))
    v = 10 ** (-a * log(r, .3, 1.2)) if r.random() < .6 else 1 - a / m
    noise = log(r, .004, .05) * (g.least * 3 + .05)
    v = v + noise * r.standard_normal((h, w)) + noise * field(r, h, w, log(r, 1.5, 4))
    shown(v, truth)
    rim = [int(r.uniform(.02, .5) * min(300, g.L)) * int(r.random() < .5) for _ in range(4)]
    if sum(rim):
        o = np.full((h + rim[0] + rim[1], w + rim[2] + rim[3]), r.uniform(0, 1.1), F4)
        o += log(r, .003, .15) * field(r, *o.shape, log(r, 2, 90), log(r, 2, 90))
        if r.random() < .3:                                                # the shadow of the sheet
            shade = np.zeros_like(o)
            shade[rim[0]:rim[0] + h, rim[2]:rim[2] + w] = 1
            o -= r.uniform(0, .4) * ndi.shift(ndi.gaussian_filter(shade, log(r, 1, 8)), r.normal(0, 4, 2), order=0)
        o[rim[0]:rim[0] + h, rim[2]:rim[2] + w] = v
        v = o
    for t in truth:
        t['middle'] = [[x + rim[2], y + rim[0]] for x, y in t['middle']]
        t['bands'] = [[b[0] + rim[0], *b[1:]] for b in t['bands']]
        t['unsure'] = [y + rim[0] for y in t['unsure']]
    h, w = v.shape
    if r.random() < .35:                                                   # a lamp at one side, a lens
        y, x = np.mgrid[-1:1:h * 1j, -1:1:w * 1j]
        v = v * (1 + r.normal(0, .15) * x + r.normal(0, .15) * y - r.uniform(0, .3) * (x * x + y * y))
    if r.random() < .12:
        y, x = np.ogrid[:h, :w]
        v = v + r.uniform(.05, .5) * np.exp(-((x - r.uniform(0, w)) ** 2 + ((y - r.uniform(0, h)) * 1.5) ** 2) / (2 * log(r, .05, .4) ** 2 * w * w))
    low, high = np.percentile(v[::2, ::2], [r.uniform(0, 2), r.uniform(98.5, 100)])
    v = np.clip((v - low) / (high - low + 1e-6), 0, 1) ** log(r, .5, 2)
    if r.random() < .25:
        v = np.clip(v + r.uniform(.2, 1.2) * (v - ndi.gaussian_filter(v, log(r, .8, 2.5))), 0, 1)
    return v.astype(F4)


def prominence(p, at, sigma):
    """How far a peak at a place of a trace stands over the higher of its two feet; 0 where there is none of its own."""
    reach, far = max(1, round(sigma)), round(5 * sigma) + 2
    a, b = max(0, at - reach), min(len(p), at + reach + 1)
    if a >= b:
        return 0.
    top = a + int(np.argmax(p[a:b]))
    feet = []
    for side in (p[top::-1][:far], p[top:][:far]):
        higher = np.nonzero(side > p[top])[0]
        feet.append(side[:higher[0] if len(higher) else len(side)].min())
    return float(p[top] - max(feet))


def shown(v, truth):
    """What a person can see counts: a band without a peak of its own over the noise is none, and what hardly has one is unsure."""
    span = float(np.subtract(*np.percentile(v[::4, ::4], [99, 1]))) + 1e-3
    s = np.linspace(-.62, .62, 14)[None, :]
    sure = {}
    for n, t in enumerate(truth):
        t['unsure'] = []
        if not t['bands']:
            continue
        x, y = np.array(t['middle']).T
        rows = np.arange(max(0, int(y[0]) - 9), min(v.shape[0], int(y[-1]) + 10))
        bow, slant = t['run']
        at = rows[:, None] + bow * s * s + slant * s, np.interp(rows, y, x)[:, None] + s * t['width'] / 2
        light = -ndi.map_coordinates(v, at, order=1, mode='nearest')
        fine = np.median([b[3] for b in t['bands']])
        trace = lambda q: ndi.gaussian_filter1d(np.sort(q, 1)[:, q.shape[1] // 6:-(q.shape[1] // 6)].mean(1), .4 * fine)
        halves = trace(light[:, ::2]) - trace(light[:, 1::2])
        wide = trace(light[:, :7]) - trace(light[:, 7:])
        rough = lambda d: 1.4826 * np.median(np.abs(d - ndi.median_filter(d, int(12 * fine) | 1))) / 2
        need = max(3.2 * rough(halves), 2.2 * rough(wide), .012 * span)
        p = trace(light)
        for b in t['bands']:
            k = prominence(p, int(round(b[0])) - rows[0], b[3]) / need
            sure[n, b[0]] = 1 if k > 1.3 else 0 if k < .6 else .5
    for n, t in enumerate(truth):
        kept = []
        for b in t['bands']:
            k = sure[n, b[0]]
            if b[2] >= 0:
                others = [sure[m, c[0]] for m, q in enumerate(truth) if m != n and q['pair'] == t['pair'] for c in q['bands'] if c[2] == b[2]]
                k = k if all(o == k for o in others) else .5
            if k == 1:
                kept.append(b)
            elif k > 0:
                t['unsure'].append(b[0])
        t['kept'] = kept
    for t in truth:
        t['bands'] = t.pop('kept')


def seen(truth, height):
    """Only what lies on the sheet: lanes end at its edges, and bands beyond them are none."""
    for t in truth:
        x, y = np.array(t['middle']).T
        new = np.linspace(max(0., y[0]), min(height - 1., y[-1]), len(y))
        t['middle'] = [[float(np.interp(v, y, x)), float(v)] for v in new]
        t['bands'] = [b for b in t['bands'] if 2 < b[0] < height - 3]


def gel(seed, i):
    """One gel: the picture as 8-bit grey and its truth."""
    r = np.random.default_rng([seed, i, 20261130])
    g = Gel(r)
    a, xs, lanes, above, truth, pairs = paint(g, r)
    letters(g, r, a, xs, lanes, above)
    dirt(g, r, a, xs, above)
    if r.random() < .1:
        cut(g, r, a, xs, truth)
    v = Image.fromarray((take(g, r, a, truth) * 255 + .5).astype(np.uint8))
    for p in pairs:                                                        # what was cut off is not counted
        p['csfOnly'] = sum(b[1] for t in truth if t['pair'] == p['pair'] and t['kind'] == 'csf' for b in t['bands'])
    if r.random() < .35:
        packed = io.BytesIO()
        v.save(packed, 'JPEG', quality=int(r.integers(30, 96)))
        v = Image.open(packed).convert('L')
    return v, dict(lanes=truth, pairs=pairs)


def main(folder, count, seed):
    os.makedirs(folder, exist_ok=True)
    for i in range(count):
        picture, truth = gel(seed, i)
        truth['file'] = f'gel_{seed}_{i:05d}.png'
        picture.save(f'{folder}/{truth["file"]}', compress_level=1)
        with open(f'{folder}/{truth["file"][:-4]}.json', 'w') as f:
            json.dump(truth, f)


if __name__ == '__main__':
    main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
