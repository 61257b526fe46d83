"""Draws the gels, trains both nets, calibrates and exports them: the whole training by one command.

    python3 train.py OUT --gels 4000 --seconds 300

Seeds are fixed; the same machine and libraries give nearly the same nets (sums on a graphics card are not ordered).
"""
import argparse
import glob
import json
import math
import os
import shutil
import time

import numpy as np
import torch
import torch.multiprocessing as mp
import torch.nn as nn
import torch.nn.functional as F

import batches
import export
from batches import dev
from nets import LaneNet, StripNet

SEED, HELD_OUT, PART = 1, 900_001, 1000


def focal(o, t, judged, w=None):
    o = o.float()
    p, top = torch.sigmoid(o), (t > .999).float()
    l = -(top * (1 - p) ** 2 * F.logsigmoid(o) + (1 - top) * (1 - t) ** 4 * p ** 2 * F.logsigmoid(-o)) * judged
    if w is not None:
        l, top = l * w.view(-1, 1, 1), top * w.view(-1, 1, 1)
    return l.sum() / (top.sum() + 1)


def dice(o, t):
    p = torch.sigmoid(o)
    return (1 - (2 * (p * t).sum((2, 3)) + 1) / ((p * p + t * t).sum((2, 3)) + 1)).mean()


def lane_loss(net, d, n):
    with torch.no_grad():
        x, t = batches.lane_batch(d, n)
    with torch.autocast(dev, torch.bfloat16):
        o = net(x.contiguous(memory_format=torch.channels_last))[0].float()
    return F.binary_cross_entropy_with_logits(o, t) + dice(o, t)


def strip_loss(net, d, n):
    with torch.no_grad():
        x, t, count, fault, whole, counts, known, judged = batches.strip_batch(d, n)
    with torch.autocast(dev, torch.bfloat16):
        o, c, f, _ = net(x)
    counted = F.cross_entropy(c.float(), count.clamp(max=3), reduction='none')
    weight = torch.stack([known, *[torch.full_like(known, .5)] * 2], 1)
    return (focal(o[:, :2], t[:, :2], judged[:, :2]) + 1.5 * focal(o[:, 2:], t[:, 2:], judged[:, 2:], whole) + .3 * (counted * counts).sum() / (counts.sum() + 1)
            + (F.binary_cross_entropy_with_logits(f.float(), fault, reduction='none') * weight).mean() * 1.5)


class Parts:
    """The gels drawn so far: more are drawn while a net learns from these."""

    def __init__(s, scratch, names):
        s.scratch, s.names, s.parts, s.sizes = scratch, names, [], []
        s.more()

    def more(s):
        while os.path.exists(path := f'{s.scratch}/part_{len(s.parts)}.pt'):
            d = torch.load(path, mmap=True)
            s.parts.append({k: d[k].to(dev) for k in s.names})
            s.sizes.append(len(d[s.names[0]]))

    def any(s):
        return s.parts[np.random.choice(len(s.parts), p=np.array(s.sizes) / sum(s.sizes))]


def train(kind, d, out, seconds, first=None):
    torch.manual_seed(SEED)
    np.random.seed(SEED)
    torch.backends.cudnn.benchmark = torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    made, loss, n = (LaneNet, lane_loss, 20) if kind == 'lane' else (StripNet, strip_loss, 96)
    n, rate = int(os.environ.get('BATCH', n)), float(os.environ.get('RATE', 2.5e-3))
    net, mean = made().to(dev), made().to(dev)
    if first:
        known, own = torch.load(first, map_location=dev), net.state_dict()
        net.load_state_dict({k: known[k].to(v.dtype) if k in known and known[k].shape == v.shape else v for k, v in own.items()})
    net.to(memory_format=torch.channels_last)
    mean.load_state_dict(net.state_dict())
    weights = [[p for p in m.state_dict().values() if p.dtype.is_floating_point] for m in (mean, net)]
    opt = torch.optim.AdamW(net.parameters(), 2e-3, weight_decay=.02, betas=(.9, .98), fused=dev == 'cuda')
    start, step, seen = time.time(), 0, []
    while (f := (time.time() - start) / seconds) < 1:
        for g in opt.param_groups:
            g['lr'] = rate * min(1, (step + 1) / 150) * (.5 + .5 * math.cos(math.pi * f)) + 1e-5
        l = loss(net, d.any(), n)
        opt.zero_grad()
        l.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 2.)
        opt.step()
        step += 1
        seen.append(l.detach())
        with torch.no_grad():
            torch._foreach_lerp_(weights[0], weights[1], 1 - min(.998, step / (step + 20)))
        if step % 50 == 0:
            d.more()
        if step % 500 == 0:
            print(kind, step, 'loss %.4f' % torch.stack(seen[-500:]).mean().item(), '%.0fs' % (time.time() - start), len(d.parts), 'parts', flush=True)
    torch.save({k: v.half() if v.dtype.is_floating_point else v for k, v in mean.state_dict().items()}, f'{out}/{kind}.pt')
    print('saved', kind, 'steps', step, 'loss %.4f' % torch.stack(seen[-200:]).mean().item(), flush=True)
    return step


def one(kind, out, seconds, first):
    if torch.cuda.device_count() > 1:
        torch.cuda.set_device(1 if kind == 'strip' else 0)
    train(kind, Parts(out, ('canvas',) if kind == 'lane' else ('strips', 'bands', 'faults', 'of')), out, seconds, first)


def draw_parts(seed, gels, scratch, only):
    """Draws gels part by part, the first part before anything is trained: yields the number of pairs in each."""
    for i in range(0, gels, PART):
        d = batches.gather(seed, min(PART, gels - i), i)
        if only == 'strip':
            del d['canvas']
        torch.save(d, f'{scratch}/new.pt')
        os.replace(f'{scratch}/new.pt', f'{scratch}/part_{i // PART}.pt')
        yield len(d['strips'])


def main():
    p = argparse.ArgumentParser()
    p.add_argument('out')
    p.add_argument('--gels', type=int, default=4000)
    p.add_argument('--seconds', type=float, default=300)
    p.add_argument('--lane', help='weights to start from')
    p.add_argument('--strip', help='weights to start from')
    p.add_argument('--only', choices=['lane', 'strip'], help='the net that is trained; of the other one the weights given are kept')
    p.add_argument('--seed', type=int, default=SEED, help='of the gels; another one for each turn')
    p.add_argument('--scratch', default='/tmp/gels')
    a = p.parse_args()
    os.makedirs(a.out, exist_ok=True)
    os.makedirs(a.scratch, exist_ok=True)
    for old in glob.glob(f'{a.scratch}/part_*.pt'):
        os.remove(old)
    parts = draw_parts(a.seed, a.gels, a.scratch, a.only)
    pairs = next(parts)
    context = mp.get_context('spawn')
    runs = [context.Process(target=one, args=(k, a.scratch, a.seconds, f)) for k, f in (('lane', a.lane), ('strip', a.strip)) if a.only in (None, k)]
    if a.only:
        other = 'strip' if a.only == 'lane' else 'lane'
        shutil.copy(getattr(a, other), f'{a.scratch}/{other}.pt')
    [r.start() for r in runs]
    held = batches.gather(HELD_OUT, max(8, min(700, a.gels // 10)))
    pairs += sum(parts)
    [r.join() for r in runs]
    export.export(a.scratch, a.out, {k: v.to(dev) for k, v in held.items()})
    with open(f'{a.out}/training.json', 'w') as f:
        json.dump(dict(gels=a.gels, pairs=pairs, seconds=a.seconds, seed=a.seed, heldOut=HELD_OUT, torch=torch.__version__,
                       date=time.strftime('%Y-%m-%d')), f)


if __name__ == '__main__':
    main()
