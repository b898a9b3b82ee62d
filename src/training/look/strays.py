"""Keys that the blind ear takes for struck and that answer nothing written: caught in passing, struck again between two steps, or
nobody's: a vowel of somebody counting, a room's echo, a damper. Plain Python."""

from collections import defaultdict

import numpy as np

from sound import RATE

from . import batches
from .questions import FAR_SEC, STRAY, WRITTEN, away, told_of

LEAST = 0.4
# within this of an onset it is that one; between the two it is asked of nobody, s
SAME_SEC, OTHER_SEC = 0.05, 0.09
AT_STEP_SEC = 0.09
JITTER_SEC = 0.003


def asked(r, peaks, raw, most, questions):
    """peaks (N, 3): clip, s, midi → what batches.py tells of as many questions, at most `most`: asked, marks, scalars.
    `questions`: rows of a whole batch; each of these has a twin's number of its own, from its end."""
    found, onsets = [], defaultdict(list)
    for clip, on, midi, answers in raw["struck"]:
        onsets[clip, midi].append((on, answers))
    for clip, sec, midi in peaks:
        on, answers = min(onsets[clip, midi], key=lambda one: abs(one[0] - sec), default=(np.inf, 0))
        steps, apart = raw["steps"][int(clip)], abs(on - sec)
        is_another = SAME_SEC <= apart < OTHER_SEC or apart < SAME_SEC and answers
        if is_another or not steps or not 0.12 <= sec <= batches.SECONDS - 0.2:
            continue
        at = min(range(len(steps)), key=lambda step: abs(steps[step][0] - sec))
        is_written = midi in steps[at][1] and abs(steps[at][0] - sec) < AT_STEP_SEC
        if apart < SAME_SEC or not is_written:
            found.append((int(clip), sec, int(midi), at, on if apart < SAME_SEC else None))
    r.shuffle(found)
    rows, marks, scalars = [], np.zeros((min(most, len(found)), WRITTEN - 3), np.uint8), []
    for number, (clip, sec, midi, at, on) in enumerate(found[:most]):
        sec += r.gauss(0, JITTER_SEC)
        steps = raw["steps"][clip]
        before, after = (steps[i] if 0 <= i < len(steps) else None for i in (at - 1, at + 1))
        since = sec - before[0] if before else FAR_SEC
        until = after[0] - sec if after else FAR_SEC
        written = steps[at][1]
        marks[number, told_of(written, before and before[1], after and after[1], midi)] = 1
        scalars.append((away(since), away(until), (midi - 60) / 24))
        late = on - sec if on is not None else 0.0
        row = (clip, sec * RATE, midi, on is not None, late, STRAY, 0.0, raw["cents"][clip] + r.gauss(0, 1.0))
        rows.append(row + (next(iter(written.values())), questions - 1 - number, until, -1, -1, 0))
    return dict(
        asked=np.array(rows, np.float64).reshape(-1, 14),
        marks=marks,
        scalars=np.array(scalars, np.float32).reshape(-1, 3),
    )
