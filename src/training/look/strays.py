"""Keys that the blind ear takes for struck and that answer nothing written: caught in passing, struck again between two steps, or
nobody's: a vowel of somebody counting, a room's echo, a damper. Plain Python."""

import numpy as np

from sound import RATE

from . import batches
from .questions import FAR_SEC, STRAY, WRITTEN, away, told_of

LEAST = 0.4
# within this of an onset it is that one; between the two it is asked of nobody, s
SAME_SEC, OTHER_SEC = 0.05, 0.09
AT_STEP_SEC = 0.09
JITTER_SEC = 0.003
# between two groups on one line; longer than any clip
APART_SEC = 100.0


def nearest(groups, times, group, time):
    """For each `time` the nearest of `times` in the same group → its index, and how far away it is (infinite: there is none)"""
    if len(times) == 0:
        return np.zeros(len(time), int), np.full(len(time), np.inf)
    line, wanted = groups * APART_SEC + times, group * APART_SEC + time
    order = np.argsort(line)
    after = np.searchsorted(line[order], wanted)
    beside = order[np.stack([after - 1, after]).clip(0, len(line) - 1)]
    away_sec = np.abs(line[beside] - wanted)
    side = away_sec.argmin(0)[None]
    index, apart = (np.take_along_axis(one, side, 0)[0] for one in (beside, away_sec))
    return index, np.where(groups[index] == group, apart, np.inf)


def asked(r, peaks, raw, most, questions):
    """peaks (N, 3): clip, s, midi → what batches.py tells of as many questions, at most `most`: asked, marks, scalars.
    `questions`: rows of a whole batch; each of these has a twin's number of its own, from its end."""
    struck, (clips, secs, midis) = raw["struck"], peaks.T
    onset, apart = nearest(struck[:, 0] * 128 + struck[:, 2], struck[:, 1], clips * 128 + midis, secs)
    answers = struck[onset, 3] > 0 if len(struck) else np.zeros(len(peaks), bool)
    every = [(clip, at, step) for clip, steps in enumerate(raw["steps"]) for at, step in enumerate(steps)]
    step, from_step = nearest(*np.array([(clip, one[0]) for clip, _, one in every]).reshape(-1, 2).T, clips, secs)
    is_another = (apart >= SAME_SEC) & (apart < OTHER_SEC) | (apart < SAME_SEC) & answers
    inside = (secs >= 0.12) & (secs <= batches.SECONDS - 0.2)
    found = []
    for i in np.flatnonzero(~is_another & inside & np.isfinite(from_step)):
        (clip, at, (_, hands)), midi = every[step[i]], int(midis[i])
        if apart[i] < SAME_SEC or midi not in hands or from_step[i] >= AT_STEP_SEC:
            found.append((clip, secs[i], midi, at, struck[onset[i], 1] if apart[i] < SAME_SEC else None))
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
