"""The two nets.

LaneNet sees the whole picture in grey (long side 768) and says at half that size where lanes are and where their
middles are. StripNet sees the two lanes of a pair, straightened, and says row by row where a band of the CSF, a band of
the serum and a band of the CSF alone has its middle; how many CSF-only bands there are (0, 1, 2, 3 or more); and the
chance that the serum is another person's, that the CSF lane and that the serum lane can't be read.
"""
import torch
import torch.nn as nn
import torch.nn.functional as F

ROWS, COLUMNS = 1280, 24
FAULTS = ('other', 'csf', 'serum')


def conv2(i, o, k=3, s=1):
    return nn.Sequential(nn.Conv2d(i, o, k, s, k // 2, bias=False), nn.BatchNorm2d(o), nn.SiLU(True))


def conv1(i, o, k=5, s=1, d=1):
    return nn.Sequential(nn.Conv1d(i, o, k, s, k // 2 * d, dilation=d, bias=False), nn.BatchNorm1d(o), nn.SiLU(True))


def sums(x, k, dim):
    """Sums over k neighbours along a dimension, what lies outside being nothing: the running sum less itself k places before."""
    pad = [0, 0, k // 2 + 1, k // 2] if dim == 2 else [k // 2 + 1, k // 2]
    c = F.pad(x, pad).cumsum(dim)
    return c.narrow(dim, k, x.shape[dim]) - c.narrow(dim, 0, x.shape[dim])


def box(x, k):
    """The mean over k × k neighbours inside the picture; the cost doesn't grow with k."""
    one = torch.ones_like(x[:1, :1])
    return sums(sums(x, k, 2), k, 3) / (sums(one[..., :1], k, 2) * sums(one[:, :, :1], k, 3))


def local(x, k=33):
    """The picture less its local mean, over its local spread: what is faint weighs like what is strong."""
    d = x - box(x, k)
    return (d / (box(d * d, 2 * k - 1).sqrt() + .01)).clamp(-6, 6)


class Axial(nn.Module):
    """Adds the mean of each column and of each row, so that a lane speaks with its whole length."""

    def __init__(s, c):
        super().__init__()
        s.a, s.b, s.n = nn.Conv2d(c, c, (1, 5), padding=(0, 2)), nn.Conv2d(c, c, (5, 1), padding=(2, 0)), nn.BatchNorm2d(c)

    def forward(s, x):
        return F.silu(s.n(x + s.a(x.mean(2, keepdim=True)) + s.b(x.mean(3, keepdim=True))))


class LaneNet(nn.Module):
    def __init__(s, w=(16, 28, 44, 68, 92)):
        super().__init__()
        s.stem = nn.Sequential(nn.Conv2d(2, w[0], 4, 2, 1, bias=False), nn.BatchNorm2d(w[0]), nn.SiLU(True), conv2(w[0], w[0]))
        s.down = nn.ModuleList([nn.Sequential(conv2(a, b, 3, 2), conv2(b, b), Axial(b) if i > 0 else conv2(b, b))
                                for i, (a, b) in enumerate(zip(w, w[1:]))])
        s.up = nn.ModuleList([nn.Sequential(conv2(a + b, b), conv2(b, b)) for a, b in zip(w[:0:-1], w[-2::-1])])
        s.out = nn.Conv2d(w[0], 2, 1)

    def forward(s, x):
        """Logits (lane, middle) at half size, and a description of the picture."""
        f = [s.stem(torch.cat([x, local(x)], 1))]
        for d in s.down:
            f.append(d(f[-1]))
        y = f.pop()
        seen = y.mean((2, 3))
        for u in s.up:
            y = u(torch.cat([F.interpolate(y, scale_factor=2.), f.pop()], 1))
        return s.out(y), seen


class StripNet(nn.Module):
    def __init__(s, e=(16, 32, 48, 40), w=(64, 72, 84, 92, 100)):
        super().__init__()
        s.e = nn.Sequential(conv2(2, e[0], 5), nn.Conv2d(e[0], e[1], (5, 3), (1, 2), (2, 1)), nn.BatchNorm2d(e[1]), nn.SiLU(True),
                            nn.Conv2d(e[1], e[2], (5, 3), (1, 2), (2, 1)), nn.BatchNorm2d(e[2]), nn.SiLU(True), nn.Conv2d(e[2], e[3], (1, COLUMNS // 4)))
        s.i = conv1(2 * e[3], w[0], 7)
        s.down = nn.ModuleList([nn.Sequential(conv1(a, b, 5, 2), conv1(b, b, 5)) for a, b in zip(w, w[1:])])
        s.mid = conv1(w[-1], w[-1], 5, 1, 2)
        s.up = nn.ModuleList([nn.Sequential(conv1(a + b, b, 5), conv1(b, b, 3)) for a, b in zip(w[:0:-1], w[-2::-1])])
        s.out = nn.Conv1d(w[0], 3, 1)
        s.count = nn.Sequential(nn.Linear(w[0] * 2 + 3, 64), nn.SiLU(), nn.Linear(64, 4))
        s.fault = nn.Sequential(nn.Linear(w[0] * 2 + w[-1] * 2 + 5, 64), nn.SiLU(), nn.Linear(64, 3))
        nn.init.constant_(s.out.bias, -4.)

    def forward(s, x):
        """Logits of pairs x (CSF band, serum band, CSF-only band) x rows, of counts, of faults; a description of the pair."""
        b = x.shape[0]
        x = x.reshape(b * 2, 1, ROWS, COLUMNS)
        d = x - F.avg_pool2d(x.mean(3, keepdim=True), (97, 1), 1, (48, 0), count_include_pad=False)
        h = d / (F.avg_pool2d((d * d).mean(3, keepdim=True), (257, 1), 1, (128, 0), count_include_pad=False).sqrt() + .01)
        f = [s.i(s.e(torch.cat([x, h.clamp(-6, 6)], 1)).reshape(b, -1, ROWS))]
        for q in s.down:
            f.append(q(f[-1]))
        deep = y = s.mid(f.pop())
        for u in s.up:
            y = u(torch.cat([F.interpolate(y, scale_factor=2.), f.pop()], 1))
        o = s.out(y)
        p = torch.sigmoid(o[:, 2:])
        w = p / (p.sum(2, keepdim=True) + .5)
        q = torch.sigmoid(o.detach())
        sums, near = q.sum(2) / 3, F.max_pool1d(q[:, :1], 13, 1, 6)
        met = torch.cat([torch.minimum(q[:, 1:2], near).sum(2), F.relu(q[:, 1:2] - near).sum(2)], 1) / 3
        own = (y * w).sum(2)
        return o, s.count(torch.cat([own, y.mean(2), sums], 1)), s.fault(torch.cat([own, y.mean(2), deep.mean(2), deep.amax(2), sums, met], 1)), y.mean(2)
