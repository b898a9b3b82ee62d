"""Which keys are asked about at the steps of what was played, and what the look is told of the page."""

import math

from sound import KEYS, LOWEST

REACH = 36  # semitones to which written keys are told
SPAN = 2 * REACH + 1
WRITTEN = 3 * SPAN + 3
FAR_SEC, NEAR_SEC, USUAL_SEC = 1.5, 0.06, 0.25
BESIDE = (-2, -1, 1, 2, -12, 12, -1, 1, -3, 3, -4, 4, 19, 24, 7, -7)
ALONE, CHORD, ABOVE, BELOW, UNWRITTEN, STRAY = range(6)


def places(keys, midi, start):
    return [start + other - midi + REACH for other in keys if abs(other - midi) <= REACH]


def told_of(written, before, after, midi):
    """Where keys written at a step, the one before (None: there is none) and the one after are marked for a key."""
    return places(written, midi, 0) + places(before or (), midi, SPAN) + places(after or (), midi, 2 * SPAN)


def away(sec):
    return math.log2(max(min(sec, FAR_SEC), NEAR_SEC) / USUAL_SEC)


def questions(r, played, seconds):
    """→ list of dicts: sec, midi, struck, late (s), hand, kind, below (dB under the step's loudest), marks, scalars, until,
    twin (what its twins share; None where it is not written), own, other (keys of either hand at the step)"""
    out = []
    for index, step in enumerate(played.steps):
        answering = [i for i in step.mine if played.events[i].answers]
        if not answering:
            continue
        heard = [i for i in answering if r.random() < 0.85] or [r.choice(answering)]
        middle = sum(played.events[i].on for i in heard) / len(heard)
        sec = middle + r.gauss(0, r.choices((0.006, 0.02, 0.04), (0.9, 0.07, 0.03))[0])
        if 0.12 <= sec <= seconds - 0.2:
            out += _at(r, played, index, sec)
    return out


def _at(r, played, index, sec):
    step, events = played.steps[index], played.events
    written = list(step.hands)
    before = played.steps[index - 1] if index else None
    after = played.steps[index + 1] if index + 1 < len(played.steps) else None
    struck = {events[i].midi: events[i] for i in step.mine}
    loudest = max(one.level for one in struck.values())
    near = {event.midi for event in events if -0.13 < event.on - sec < 0.2}
    wrong = [events[i].midi for i in step.mine if not events[i].answers]
    pool = [key + by for key in set(written) | set(struck) for by in BESIDE]
    r.shuffle(pool)
    wrong += [midi for midi in pool if midi not in near][: r.choice((1, 1, 2))]
    asked = [(midi, True) for midi in written]
    asked += [(m, False) for m in dict.fromkeys(wrong) if m not in written and LOWEST <= m < LOWEST + KEYS]
    since = sec - before.time if before else FAR_SEC
    until = after.time - sec if after else FAR_SEC
    out = []
    for midi, is_written in asked:
        event = struck.get(midi)
        if event is None and midi in near or event is not None and abs(event.on - sec) > 0.1:
            continue
        hand = step.hands.get(midi, -1)
        out.append(
            dict(
                sec=sec,
                midi=midi,
                struck=event is not None,
                late=event.on - sec if event else 0.0,
                hand=hand,
                kind=_kind(midi, is_written, written),
                below=event.level - loudest if event else 0.0,
                marks=told_of(written, before and before.hands, after and after.hands, midi),
                scalars=(away(since), away(until), (midi - 60) / 24),
                until=until,
                twin=(step.cycle, midi, tuple(sorted(written))) if is_written else None,
                own=tuple(sorted(k for k, h in step.hands.items() if h == hand)) if is_written else (),
                other=tuple(sorted(k for k, h in step.hands.items() if h != hand)) if is_written else (),
            )
        )
    return out


def _kind(midi, is_written, written):
    if not is_written:
        return UNWRITTEN
    if midi - 12 in written or midi - 24 in written:
        return ABOVE
    if midi + 12 in written or midi + 24 in written:
        return BELOW
    return CHORD if len(written) > 1 else ALONE
