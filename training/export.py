"""Calibrates the nets on gels that they were not trained on, and writes them as ONNX with the calibration inside.

What leaves a net is a probability: of a band at a row, of each count, of each fault. Beside them stands how unlike the
training a picture is: the Mahalanobis distance of the net's own description, 1 at the 99.5th percentile of the held-out gels.
"""
import json
import os
import shutil

import numpy as np
import onnx
import torch
import torch.nn as nn
import torch.nn.functional as F

import batches
from batches import dev
from nets import LaneNet, StripNet

CALM = 1.15     # the chances are drawn in by this much beyond what held-out gels ask: other hands are less alike than these


class Unlike(nn.Module):
    def __init__(s, f):
        super().__init__()
        mean, c = f.mean(0), torch.cov(f.T) + 1e-4 * torch.eye(f.shape[1], device=f.device)
        s.register_buffer('mean', mean)
        s.register_buffer('white', torch.linalg.inv(torch.linalg.cholesky(c)).T.contiguous())
        s.register_buffer('most', torch.ones(()))
        s.most.copy_(s(f).quantile(.995))

    def forward(s, f):
        return (((f - s.mean) @ s.white) ** 2).sum(1).sqrt() / s.most


class Lanes(nn.Module):
    """LaneNet as the reader runs it: chances, and no description."""

    def __init__(s, net):
        super().__init__()
        s.net = net

    def forward(s, x):
        return torch.sigmoid(s.net(x)[0])


class Strips(nn.Module):
    def __init__(s, net, unlike, scale):
        super().__init__()
        s.net, s.unlike = net, unlike
        for k, v in scale.items():
            s.register_buffer(k, torch.tensor(v))

    def forward(s, x):
        o, c, f, y = s.net(x)
        o = torch.cat([torch.sigmoid(s.band_a * o[:, :2] + s.band_b), torch.sigmoid(s.own_a * o[:, 2:] + s.own_b)], 1)
        return o, torch.softmax(c * s.count_a, 1), torch.sigmoid(s.fault_a * f + s.fault_b), s.unlike(y)


def loaded(net, path):
    net.load_state_dict({k: v.float() if v.dtype.is_floating_point else v for k, v in torch.load(path, map_location=dev).items()})
    return net.to(dev).eval()


def fit(z, y, bias=True):
    """Platt's two numbers by Newton's method."""
    a, b = 1., 0.
    for _ in range(50):
        p = 1 / (1 + np.exp(-np.clip(a * z + b, -30, 30)))
        w, g = p * (1 - p) + 1e-9, np.array([((p - y) * z).sum(), (p - y).sum() * bias])
        h = np.array([[(w * z * z).sum(), (w * z).sum() * bias], [(w * z).sum() * bias, w.sum() if bias else 1.]]) + 1e-6 * np.eye(2)
        a, b = np.array([a, b]) - np.linalg.solve(h, g)
    return float(a), float(b)


def peaks(o, target, judged):
    """Logits of the local maxima of some rows that are judged and whether a true middle lies within 3 rows."""
    top = (F.max_pool1d(o, 5, 1, 2) == o) & (o > -5) & (judged > 0)
    near = F.max_pool1d((target > .999).float(), 7, 1, 3) > 0
    return o[top].cpu().numpy(), near[top].float().cpu().numpy()


@torch.no_grad()
def calibrated(net, held):
    torch.manual_seed(2)
    band, own, count, fault, seen, n = [], [], [], [], [], 0
    for _ in range(int(os.environ.get('ROUNDS', 60))):
        x, t, k, bad, whole, counts, known, judged = batches.strip_batch(held, 64 if dev == 'cuda' else 8)
        o, c, f, y = net(x)
        w, said = whole > 0, counts > 0
        band.append(peaks(o[:, :2], t[:, :2], judged[:, :2]))
        own.append(peaks(o[w][:, 2:], t[w][:, 2:], judged[w][:, 2:]))
        count.append((c[said].cpu(), k[said].clamp(max=3).cpu()))
        fault.append((f.cpu(), bad.cpu(), known.cpu()))
        seen.append(y)
        n += int(said.sum())
    join = lambda q: [np.concatenate([a[i] for a in q]) for i in range(2)]
    ba, bb = fit(*join(band))
    oa, ob = fit(*join(own))
    c, k = torch.cat([a for a, _ in count]), torch.cat([b for _, b in count])
    ca = min(np.geomspace(.4, 2, 60), key=lambda a: F.cross_entropy(c * a, k).item())
    f, bad, known = (torch.cat([q[i] for q in fault]).numpy() for i in range(3))
    judged = [known > 0, known >= 0, known >= 0]
    faults = [fit(f[j, i], bad[j, i]) for i, j in enumerate(judged)]
    scale = dict(band_a=ba / CALM, band_b=bb / CALM, own_a=oa / CALM, own_b=ob / CALM, count_a=float(ca) / CALM,
                 fault_a=[a for a, _ in faults], fault_b=[b for _, b in faults])
    p = torch.softmax(c * ca, 1)
    yes = (p[:, 2] + p[:, 3] >= .5) == (k >= 2)
    z, y = join(own)
    own_p = 1 / (1 + np.exp(-(oa * z + ob)))
    figures = dict(pairs=n, yesNo=float(yes.float().mean()), countOfFour=float((p.argmax(1) == k).float().mean()),
                   ownRecall=float((own_p[y > 0] > .5).mean()), ownPrecision=float(y[own_p > .5].mean()),
                   faults={q: [float((f[bad[:, i] > 0, i] * faults[i][0] + faults[i][1] > 0).mean()), float((f[bad[:, i] == 0, i] * faults[i][0] + faults[i][1] > 0).mean())]
                           for i, q in enumerate(('other', 'csf', 'serum'))}, scale=scale)
    return scale, Unlike(torch.cat(seen)), figures


def halved(path):
    """Keeps the weights of a net in half precision, in which they were saved, and computes in single precision as before."""
    net = onnx.load(path)
    kept, casts = [], []
    for w in net.graph.initializer:
        a = onnx.numpy_helper.to_array(w)
        if a.dtype != np.float32 or a.size < 64:
            kept.append(w)
            continue
        kept.append(onnx.numpy_helper.from_array(a.astype(np.float16), w.name + '/half'))
        casts.append(onnx.helper.make_node('Cast', [w.name + '/half'], [w.name], to=onnx.TensorProto.FLOAT))
    nodes = casts + list(net.graph.node)
    del net.graph.initializer[:], net.graph.node[:]
    net.graph.initializer.extend(kept)
    net.graph.node.extend(nodes)
    onnx.checker.check_model(net)
    onnx.save(net, path)


def lanes(weights, out):
    """Writes lane.onnx."""
    torch.onnx.export(Lanes(loaded(LaneNet(), f'{weights}/lane.pt')).cpu().eval(), (torch.randn(1, 1, 512, 768),), f'{out}/lane.onnx', input_names=['x'], output_names=['maps'],
                      dynamic_axes={'x': {2: 'h', 3: 'w'}, 'maps': {2: 'h2', 3: 'w2'}}, opset_version=17, dynamo=False)
    halved(f'{out}/lane.onnx')


def export(weights, out, held):
    strip = loaded(StripNet(), f'{weights}/strip.pt')
    scale, unlike, figures = calibrated(strip, held)
    outputs = ['rows', 'count', 'fault', 'unlike']
    torch.onnx.export(Strips(strip, unlike, scale).cpu().eval(), (torch.randn(5, 2, 1280, 24),), f'{out}/strip.onnx', input_names=['x'],
                      output_names=outputs, dynamic_axes={k: {0: 'pairs'} for k in ['x'] + outputs}, opset_version=17, dynamo=False)
    halved(f'{out}/strip.onnx')
    lanes(weights, out)
    for name in ('lane', 'strip'):
        figures[name] = dict(bytes=os.path.getsize(f'{out}/{name}.onnx'))
    for k in ('lane', 'strip'):
        if weights != out:
            shutil.move(f'{weights}/{k}.pt', f'{out}/{k}.pt')
    with open(f'{out}/heldout.json', 'w') as f:
        json.dump(figures, f, indent=1)
    print(json.dumps(figures), flush=True)
