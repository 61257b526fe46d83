"""Reads folders of gels with the reader itself, holds the readings against the truth, and writes the nets' card.

    python3 evaluate.py CARD                              writes the card again from figures/
    python3 evaluate.py CARD CISTERN TURN HAND=FOLDER…    reads, writes figures/TURN.txt, then the card

CISTERN is the command (./cistern); each FOLDER holds pictures and their truth.json (see truth.py). A hand is whoever
wrote the generator that drew a folder. Every word of the card stands here or in figures/; a turn is in the card when
TURNS names it. Lines of a figures file before its first reading say how it was measured.
"""
import datetime
import hashlib
import itertools
import json
import os
import re
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
NETS = os.path.join(HERE, '../gel/src/main/resources/cistern/gel/net')

# Turns in the card, with what their figures were measured with; the newest first.
TURNS = (
    ('hand-i', 'With the nets and the rules in the tree'),
    ('hand-h', 'With the nets in the tree, before names were laid in turn and at a limit of review of .1'),
    ('ninth-turn', 'With the nets in the tree, before and after'),
    ('eighth-turn', 'With the strip net before it'),
    ('seventh-turn', 'With the strip net before it, and no frame around flat pictures'),
)

READING = re.compile(r'\d+ gels, \d+ good pairs: ')


def scores(command, hands):
    lines = []
    for hand in hands:
        name, folder = hand.split('=', 1)
        said = subprocess.run([command, 'read-gel', folder, '--against', f'{folder}/truth.json'], capture_output=True, text=True, check=True)
        lines += [f'{name}, {line}' for line in said.stdout.splitlines() if READING.search(line)]
    return lines


def before(figures):
    """The lines of a figures file before its first reading; all where there is none."""
    return list(itertools.takewhile(lambda line: not READING.search(line), open(figures).read().splitlines()))


def section(turn, heading):
    """One turn: what its file says before the first reading, then a list; a file of a table as it stands."""
    path = f'{HERE}/figures/{turn}.txt'
    lines = open(path).read().splitlines()
    readings = [line for line in lines if READING.search(line)]
    if readings:
        body = ' '.join(before(path)) + '\n\n' + '\n'.join(f'- {line}' for line in readings)
    else:
        body = '```\n' + '\n'.join(lines) + '\n```'
    return f'### {heading} (`training/figures/{turn}.txt`)\n\n{body.strip()}\n'


def card(path):
    training = json.load(open(f'{NETS}/training.json'))
    held = json.load(open(f'{NETS}/heldout.json'))
    figures = '\n'.join(section(turn, heading) for turn, heading in TURNS)
    digests = '\n'.join(f'- `{n}.onnx`: {os.path.getsize(f"{NETS}/{n}.onnx")} bytes, SHA-256 `{hashlib.sha256(open(f"{NETS}/{n}.onnx", "rb").read()).hexdigest()}`'
                        for n in ('lane', 'strip'))
    with open(path, 'w') as f:
        f.write(f'''# The nets of the gel reader

Written by `training/evaluate.py` on {datetime.date.today()}.

- **What they do.** `lane.onnx` says where in a picture lanes and their middles may be. `strip.onnx` says, of the two
  lanes of a pair, at which rows bands of the CSF, of the serum and of the CSF alone may be, how many CSF-only bands there
  are, and whether the serum may be another person's or a lane spoiled. Everything after that is rules.
- **Trained on** invented gels alone, drawn by `training/draw.py`, in turns (`training/README.md`); the last turn of
  `strip.onnx` had {training['gels']} gels with {training['pairs']} pairs (seed {training['seed']}), {training['date']}, with torch {training['torch']}.
  No picture of a real gel, and none of the hands below.
- **Looked at meanwhile.** Errors on hands C and D were looked at between the turns of training: they led to wider smears,
  bubbles and bands that lie a little aside in the other lane, and to the rules' thresholds. Hands E, F, G, H and I were written
  afterwards by others who had seen no reader and no other hand. What is called "read for the first time" is a first
  reading. Errors on G, D and E, hard, were looked at before the last turn; H and I were read after it.
- **Calibrated on** gels of the same generator (seed {training['heldOut']}): yes or no at two bands right in {held['yesNo']:.3f} of {held['pairs']} pairs that
  were roughened far beyond any scan.
- **Limits.** No real gel was ever read with them in a study. Pictures unlike the drawn ones may be read wrongly and
  surely; the distance from the training that the nets say is a warning, no guard.
- **Licence.** Apache License 2.0, as the rest of Cistern.

{digests}

## Figures, by the hand that wrote the generator

Lanes named, except "unaided". A pair whose lanes were put in the wrong place counts as wrong.

{figures}''')


if __name__ == '__main__':
    path, rest = sys.argv[1], sys.argv[2:]
    if rest:
        command, turn, hands = rest[0], rest[1], rest[2:]
        if turn not in dict(TURNS):
            sys.exit(f'{turn} is not in TURNS: the card would not show it')
        figures = f'{HERE}/figures/{turn}.txt'
        kept = before(figures) if os.path.exists(figures) else []
        with open(figures, 'w') as f:
            f.write('\n'.join(kept + scores(command, hands)) + '\n')
    card(path)
