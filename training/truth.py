"""Puts the truth of a folder of drawn gels into the one file that `read-gel --against` reads.

    python3 truth.py FOLDER            writes FOLDER/truth.json

Takes the truth beside each picture, in the form of draw.py or with places as x_center and pairs as pair_id.
"""
import glob
import json
import os
import sys


def gel(path):
    t = json.load(open(path))
    lanes = []
    for l in t['lanes']:
        pair = l.get('pair', l.get('pair_id'))
        x = l['x_center'] if 'x_center' in l else l['middle'][len(l['middle']) // 2][0]
        empty = l['missing'] or l['kind'] == 'blank'
        name = 'blank' if empty else 'control' if l['kind'] == 'control' else f'{l["kind"]}:{pair}'
        lanes.append(dict(name=name, xCentre=x, width=l['width']))
    pairs = []
    for p in t['pairs']:
        good = p['interpretable'] if 'interpretable' in p else p['fault'] is None
        pairs.append(dict(pair=p.get('pair', p.get('pair_id')), csfOnly=p.get('csfOnly', p.get('n_csf_unique')) if good else None,
                          pattern=p.get('pattern_type') if good else None))
    return dict(file=t.get('file', os.path.basename(path)[:-5] + '.png'), group=t.get('difficulty', 'all'), lanes=sorted(lanes, key=lambda q: q['xCentre']), pairs=pairs)


if __name__ == '__main__':
    folder = sys.argv[1]
    names = [n for n in sorted(glob.glob(f'{folder}/gel_*.json')) if 'truth' not in n]
    with open(f'{folder}/truth.json', 'w') as f:
        json.dump(dict(truth=1, gels=[gel(n) for n in names]), f, indent=0)
