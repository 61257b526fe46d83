"""Drawn gels as arrays, and the randomised batches that the nets are trained on."""
import os
from concurrent.futures import ProcessPoolExecutor

import numpy as np
import torch
import torch.nn.functional as F
from PIL import Image, ImageDraw

import draw
from nets import COLUMNS, ROWS

SIZE, LONG, WIDE, MOST = 832, 1920, 48, 26
dev = 'cuda' if torch.cuda.is_available() else 'cpu'
NOWHERE, UNSURE = -9e3, -1.


# ---------------------------------------------------------------- pictures as arrays
def grey(picture):
    a = np.asarray(picture)
    a = a.astype(np.float32) / (65535. if a.dtype.itemsize > 1 else 255.)
    if a.ndim == 3:
        a = a[..., :3] @ np.array([.3, .59, .11], np.float32)
    low, high = np.percentile(a[::3, ::3], [.3, 99.7])
    return np.clip((a - low) / (high - low + 1e-6), -.05, 1.05).astype(np.float32)


def fitted(a, size):
    h, w = a.shape
    f = size / max(h, w)
    return np.asarray(Image.fromarray(a).resize((max(1, round(w * f)), max(1, round(h * f))), Image.BOX if f < 1 else Image.BILINEAR)), f


def strip(im, lane, y0, y1, rows=LONG, cols=WIDE, reach=1.2):
    """A lane straightened: rows from y0 to y1 along its middle line, columns over reach widths to either side."""
    c, w = np.array(lane['middle'], float), lane['width']
    m = np.polyfit(c[:, 1], c[:, 0], 1)[0]
    y = np.linspace(y0, y1, rows * 2)
    x = np.interp(y, c[:, 1], c[:, 0])
    x = np.where(y < c[0, 1], c[0, 0] + m * (y - c[0, 1]), np.where(y > c[-1, 1], c[-1, 0] + m * (y - c[-1, 1]), x))
    s = np.linspace(-reach, reach, cols * 2) * w
    px, py = x[:, None] + s[None], y[:, None] - m * s[None]
    h, wd = im.shape[2:]
    g = torch.from_numpy(np.stack([(px + .5) / wd * 2 - 1, (py + .5) / h * 2 - 1], -1).astype(np.float32))
    return F.avg_pool2d(F.grid_sample(im, g[None], padding_mode='border', align_corners=False), 2)[0, 0]


def arrays(picture, truth):
    """The canvas (grey, lane, middle, inside) of a gel and, of each pair, its two strips, bands and faults."""
    a = grey(picture)
    small, f = fitted(a, SIZE)
    h, w = small.shape
    canvas = np.zeros((4, SIZE, SIZE), np.uint8)
    canvas[0, :h, :w] = (small.clip(0, 1) * 255).astype(np.uint8)
    canvas[3, :h, :w] = 255
    for channel, half in ((1, .35), (2, .15)):
        m = Image.new('L', (SIZE * 2, SIZE * 2), 0)
        d = ImageDraw.Draw(m)
        for lane in truth['lanes']:
            if not lane['missing']:
                p, v = np.array(lane['middle']) * f * 2, np.array([lane['width'] * f * 2 * half, 0])
                d.polygon([tuple(q) for q in np.r_[p - v, (p + v)[::-1]]], fill=255)
        canvas[channel] = np.asarray(m.resize((SIZE, SIZE), Image.BOX))
    im, pairs = torch.from_numpy(a)[None, None], []
    for p in truth['pairs']:
        two = {q['kind']: q for q in truth['lanes'] if q['pair'] == p['pair'] and not q['missing']}
        if len(two) < 2:
            continue
        y0, y1 = (np.mean([two[k]['middle'][e][1] for k in two]) for e in (0, -1))
        e, strips, bands = .3 * (y1 - y0), [], []
        for k in ('csf', 'serum'):
            strips.append(strip(im, two[k], y0 - e, y1 + e).half().numpy())
            b = np.full((MOST, 2), NOWHERE, np.float32)
            all_ = [(q[0], q[1]) for q in two[k]['bands']] + [(y, UNSURE) for y in two[k].get('unsure', [])]
            for i, (y, own) in enumerate(all_[:MOST]):
                b[i] = (y - y0 + e) / (y1 - y0 + 2 * e) * LONG - .5, own
            bands.append(b)
        pairs.append((np.stack(strips), np.stack(bands), np.array([two['csf']['spoiled'], two['serum']['spoiled']], np.float32)))
    return canvas, pairs


def drawn(job):
    torch.set_num_threads(1)
    return arrays(*draw.gel(*job))


def gather(seed, count, first=0):
    """Draws gels on all cores: canvases, strips, bands, faults, and to which gel each pair belongs."""
    canvases, strips, bands, faults, of = [], [], [], [], []
    with ProcessPoolExecutor(int(os.environ.get('CORES', os.cpu_count()))) as pool:
        for i, (c, pairs) in enumerate(pool.map(drawn, [(seed, first + i) for i in range(count)], chunksize=4)):
            canvases.append(torch.from_numpy(c))
            for s, b, f in pairs:
                strips.append(torch.from_numpy(s))
                bands.append(torch.from_numpy(b))
                faults.append(torch.from_numpy(f))
                of.append(i)
    return dict(canvas=torch.stack(canvases), strips=torch.stack(strips), bands=torch.stack(bands), faults=torch.stack(faults), of=torch.tensor(of))


# ---------------------------------------------------------------- randomised batches
def rn(*s): return torch.randn(*s, device=dev)
def ru(a, b, *s): return torch.rand(*s, device=dev) * (b - a) + a
def some(p, n, dims=4): return (torch.rand(n, *[1] * (dims - 1), device=dev) < p).float()
def cloud(n, h, w, gh, gw): return F.interpolate(rn(n, 1, gh, gw), (h, w), mode='bicubic', align_corners=False)


def blobs(n, h, w, count=4, p=.5):
    o = torch.zeros(n, 1, h, w, device=dev)
    y, x = torch.arange(h, device=dev).view(1, 1, h, 1) / h, torch.arange(w, device=dev).view(1, 1, 1, w) / w
    for _ in range(count):
        c, a, t = ru(0, 1, n, 2, 1, 1), torch.exp(ru(-5, -1.2, n, 2, 1, 1)), ru(0, 3.14, n, 1, 1, 1)
        u, v = x - c[:, :1], y - c[:, 1:]
        u, v = u * t.cos() + v * t.sin(), v * t.cos() - u * t.sin()
        d = ((u / a[:, :1]) ** 2 + (v / a[:, 1:]) ** 2).sqrt()
        o += rn(n, 1, 1, 1) * some(p, n) * torch.sigmoid((1 - d) * ru(2, 20, n, 1, 1, 1))
    return o


def tone(v, n, turned):
    v = v.clamp(0, 1) ** torch.exp(ru(-.9, .9, n, 1, 1, 1) * some(.7, n))
    k = ru(1, 4, n, 1, 1, 1)
    v = torch.where(some(.3, n) > 0, (1 - torch.exp(-k * v)) / (1 - torch.exp(-k)), v)
    return torch.where(some(turned, n) > 0, 1 - v, v)                          # the reader turns most pictures to dark on light


def lane_batch(d, n, z=640):
    a = d['canvas'][torch.randint(len(d['canvas']), (n,), device=dev)].float() / 255
    turned = torch.rand(n, device=dev) < .06                               # lanes across: nothing is to be found
    a = torch.where(turned.view(n, 1, 1, 1), a.transpose(2, 3), a)
    wh = a[:, 3].amax(1).sum(1), a[:, 3].amax(2).sum(1)
    cx, cy = wh[0] / SIZE - 1, wh[1] / SIZE - 1
    size, aspect = torch.exp(ru(-.6, .5, n)), torch.exp(rn(n) * .22).clamp(.6, 1.7)
    angle = rn(n) * .05 * (torch.rand(n, device=dev) < .8)
    flip_x, flip_y = torch.sign(rn(n)), torch.sign(rn(n))
    y, x = torch.meshgrid(torch.linspace(-1, 1, z, device=dev), torch.linspace(-1, 1, z, device=dev), indexing='ij')
    e = lambda t: t.view(n, 1, 1)
    x, y = x[None].repeat(n, 1, 1) - e(ru(-.25, .25, n)), y[None].repeat(n, 1, 1) - e(ru(-.25, .25, n))
    w = 1 + e(rn(n) * .05) * x + e(rn(n) * .07) * y                          # keystone
    x, y = x / w, y / w
    x = x + e(rn(n) * .01) * torch.sin(y * e(ru(1, 5, n)) + e(ru(0, 6, n)))
    c, s = e(angle.cos()), e(angle.sin())
    x, y = c * x + s * y, c * y - s * x
    g = torch.stack([e(cx) + x * e(flip_x / size * aspect), e(cy) + y * e(flip_y / size / aspect)], -1)
    o = F.grid_sample(a, g, align_corners=False)
    v, m = o[:, :1].clamp(0, 1), (o[:, 3:] > .5).float()
    ground = ru(0, 1, n, 1, 1, 1) + ru(0, .12, n, 1, 1, 1) * cloud(n, z, z, 24, 24) + ru(0, .1, n, 1, 1, 1) * rn(n, 1, z, z)
    edge = v.mean((2, 3), keepdim=True) * .5 + .5 * ground
    v = tone(v * m + (1 - m) * torch.where(some(.5, n) > 0, ground, edge), n, .02)
    v = v * (1 + some(.5, n) * ru(0, .3, n, 1, 1, 1) * cloud(n, z, z, 4, 4)) + some(.5, n) * ru(0, .12, n, 1, 1, 1) * cloud(n, z, z, 40, 40)
    v = v + some(.4, n) * .4 * blobs(n, z, z)
    lines = torch.stack([cloud(1, z, z, 90, 4)[0], cloud(1, z, z, 4, 90)[0]])[torch.randint(2, (n,), device=dev)]
    v = v + some(.3, n) * ru(0, .07, n, 1, 1, 1) * lines
    specks = (cloud(n, z, z, z // 8, z // 8) > 1.) * (cloud(n, z, z, 6, 6) > 1.1)
    v = torch.where(specks & (some(.3, n) > 0), ru(0, 1, n, 1, 1, 1), v)
    v = torch.where(some(.3, n) > 0, F.avg_pool2d(v, 3, 1, 1), v)
    v = v + some(.7, n) * torch.exp(ru(-5.5, -2.3, n, 1, 1, 1)) * rn(n, 1, z, z)
    u = v.flatten(1)[:, ::37]
    low, high = u.quantile(.02 * np.random.rand(), 1).view(n, 1, 1, 1), u.quantile(1 - .02 * np.random.rand(), 1).view(n, 1, 1, 1)
    v = ((v - low) / (high - low + 1e-3)).clamp(-.05, 1.05)
    return v * 2 - 1, F.avg_pool2d(o[:, 1:3], 2) * (1 - turned.view(n, 1, 1, 1).float())


def strip_batch(d, n, plain=False):
    """x, targets per row, counts, faults, where CSF-only bands mean something, where counts do, where another's serum can be
    known, and rows that are judged."""
    i = torch.randint(len(d['strips']), (n,), device=dev)
    a, b, bad = d['strips'][i].float(), d['bands'][i].clone(), d['faults'][i].clone()
    k = torch.rand(n, device=dev)
    for low, high, lane in ((0, .08, 0), (.08, .14, 1)):                   # one lane twice: nothing is its own
        m = (k >= low) & (k < high) & (not plain)
        a[m], b[m], bad[m] = a[m][:, lane:lane + 1], b[m][:, lane:lane + 1], bad[m][:, lane:lane + 1]
        b[m, :, :, 1] = b[m, :, :, 1].clamp(max=0)
    j = (i + torch.where(torch.rand(n, device=dev) < .5, 1, -1)).clamp(0, len(d['of']) - 1)
    other = (k > .8) & (d['of'][i] == d['of'][j]) & (i != j)              # another person's serum
    a[other, 1], b[other, 1], bad[other, 1] = d['strips'][j[other], 1].float(), d['bands'][j[other], 1], d['faults'][j[other], 1]
    whole = ~other & (bad.sum(1) == 0)
    st = LONG / 1.6 * 1.2 / ROWS * torch.exp(ru(-.45, .35, n, 1))
    middle, flip = LONG / 2 + ru(-.12, .12, n, 1) * LONG, torch.sign(rn(n, 1))
    zero = torch.zeros(n, device=dev)
    shift = torch.stack([zero, rn(n) * 4 * (torch.rand(n, device=dev) < .6)], 1)
    stretch = torch.stack([zero, rn(n) * .003], 1)
    r = (torch.arange(ROWS, device=dev) - (ROWS - 1) / 2)[None, None]
    st = st[..., None] * flip[..., None]
    pos = middle[..., None] + st * (1 + stretch[..., None]) * r + shift[..., None]
    s = torch.linspace(-.8, .8, COLUMNS, device=dev)[None, None, None]
    bow, slant = rn(n, 1) * 4 + rn(n, 2) * 2, rn(n, 1) * 4 + rn(n, 2) * 2
    ss = s * ru(.78, 1.3, n, 2, 1, 1) + (rn(n, 2) * .07).clamp(-.16, .16)[..., None, None] + (rn(n, 2, 1, 1) * .06) * r[..., None] / ROWS
    ss = ss * torch.sign(rn(n, 1, 1, 1))
    p = pos[..., None] + bow[..., None, None] * s * s + slant[..., None, None] * s
    g = torch.stack([(ss / 1.2).expand(n, 2, ROWS, COLUMNS), (p + .5) / LONG * 2 - 1], -1).reshape(n * 2, ROWS, COLUMNS, 2)
    v = F.grid_sample(a.reshape(n * 2, 1, LONG, WIDE), g, padding_mode='border', align_corners=False)
    q = (b[..., 0] - middle[..., None] - shift[..., None]) / (st * (1 + stretch[..., None])) + (ROWS - 1) / 2
    q[b[..., 0] < -999] = NOWHERE
    m, v = n * 2, v.reshape(n, 2 * ROWS, COLUMNS)
    u = v.flatten(1)[:, ::5]
    low, high = u.quantile(.005, 1).view(n, 1, 1), u.quantile(.995, 1).view(n, 1, 1)
    v = tone(((v - low) / (high - low + 1e-3))[:, None], n, .05)
    v = v * (1 + some(.5, n) * ru(0, .35, n, 1, 1, 1) * cloud(n, 2 * ROWS, COLUMNS, 8, 2))
    v = v.reshape(n, 2, ROWS, COLUMNS).reshape(m, 1, ROWS, COLUMNS)
    v = v * (1 + some(.4, m) * ru(0, .15, m, 1, 1, 1) * cloud(m, ROWS, COLUMNS, 6, 3)) + some(.4, m) * ru(0, .08, m, 1, 1, 1) * cloud(m, ROWS, COLUMNS, 40, 4)
    v = v + some(.25, m) * .25 * blobs(m, ROWS, COLUMNS, 3, .4)
    w = torch.arange(-3, 4, device=dev).float()
    kernel = torch.exp(-.5 * (w / ru(.4, 1.3, m, 1)) ** 2)
    kernel = (kernel / kernel.sum(1, keepdim=True))[:, None, :, None]
    soft = F.conv2d(v.reshape(1, m, ROWS, COLUMNS), kernel, padding=(3, 0), groups=m).reshape(m, 1, ROWS, COLUMNS)
    v = torch.where(some(.4, m) > 0, soft, v)
    grain = torch.exp(ru(-5.5, -2.8, n, 1, 1, 1)).repeat_interleave(2, 0) * some(.6, m)
    v = v + grain * rn(m, 1, ROWS, COLUMNS) + .7 * grain * some(.5, m) * cloud(m, ROWS, COLUMNS, ROWS // 2, COLUMNS // 2)
    v = v * torch.exp(rn(m, 1, 1, 1) * .12) + rn(m, 1, 1, 1) * .04
    x = normal(v.reshape(n, 2, ROWS, COLUMNS))
    d_ = torch.arange(ROWS, device=dev).view(1, 1, 1, ROWS) - q[..., None]
    unsure = b[..., 1:] < -.5
    gs = torch.where(d_.abs() < .5 + 1e-4, torch.ones_like(d_), torch.exp(-.5 * (d_ / 1.3) ** 2)) * ~unsure
    judged = ((d_.abs() > 4) | ~unsure).float().amin(2)                      # what hardly shows may be called either
    own = b[:, 0, :, 1:] > .5
    target = torch.stack([gs[:, 0].amax(1), gs[:, 1].amax(1), (gs[:, 0] * own).amax(1)], 1)
    count = (own[..., 0] & (q[:, 0] > 0) & (q[:, 0] < ROWS)).sum(1)
    seen = ~other | (b[:, 1, :, 0] > -999).any(1)                            # a serum without bands could be anybody's
    counted = whole & ~(unsure[:, 0, :, 0] & (q[:, 0] > 0) & (q[:, 0] < ROWS)).any(1)
    return x, target, count, torch.cat([other.float()[:, None], bad], 1), whole.float(), counted.float(), seen.float(), torch.cat([judged, judged[:, :1]], 1)


def normal(v):
    """A pair's strips on the scale that the net knows; the reader does the same."""
    u = v.reshape(v.shape[0], -1)[:, ::3]
    m = u.quantile(.5, 1).view(-1, 1, 1, 1)
    d = (u.quantile(.98, 1) - u.quantile(.02, 1)).view(-1, 1, 1, 1)
    return ((v - m) / (.5 * d + .01)).clamp(-4, 4)
