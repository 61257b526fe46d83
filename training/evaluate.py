"""Reads folders of gels with the reader itself, holds the readings against the truth, and writes the nets' card.

    python3 evaluate.py CISTERN CARD HAND=FOLDER…

CISTERN is the command (./cistern); each FOLDER holds pictures and their truth.json (see truth.py). A hand is whoever
wrote the generator that drew a folder. Without folders the card is written again from CARD.scores, the last figures.
"""
import datetime
import hashlib
import json
import os
import subprocess
import sys

NETS = os.path.join(os.path.dirname(os.path.abspath(__file__)), '../gel/src/main/resources/cistern/gel/net')


def scores(command, hands):
    lines = []
    for hand in hands:
        name, folder = hand.split('=', 1)
        said = subprocess.run([command, 'read-gel', folder, '--against', f'{folder}/truth.json'], capture_output=True, text=True, check=True)
        lines += [f'{name} {line}' for line in said.stdout.splitlines() if ': ' in line]
    return lines


def card(path, lines):
    training = json.load(open(f'{NETS}/training.json'))
    held = json.load(open(f'{NETS}/heldout.json'))
    rows = '\n'.join(f'- {line}' for line in lines)
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
  bubbles and bands that lie a little aside in the other lane, and to the rules' thresholds. Hands E and F were written
  afterwards by others from a description of such gels alone; theirs are first readings.
- **Calibrated on** gels of the same generator (seed {training['heldOut']}): yes or no at two bands right in {held['yesNo']:.3f} of {held['pairs']} pairs that
  were roughened far beyond any scan.
- **Limits.** No real gel was ever read with them in a study. Pictures unlike the drawn ones may be read wrongly and
  surely; the distance from the training that the nets say is a warning, no guard.
- **Licence.** Apache License 2.0, as the rest of Cistern.

{digests}

## Figures, by the hand that wrote the generator

Lanes named, except "unaided". A pair whose lanes were put in the wrong place counts as wrong.

{rows}
''')


if __name__ == '__main__':
    command, path, hands = sys.argv[1], sys.argv[2], sys.argv[3:]
    if hands:
        with open(path + '.scores', 'w') as f:
            f.write('\n'.join(scores(command, hands)) + '\n')
    card(path, open(path + '.scores').read().splitlines())
