"""Exercises, and what somebody plays of them: plain Python, for worker processes."""

import math
from dataclasses import dataclass, field

from sound import KEYS, LOWEST

MAJOR, HARMONIC_MINOR = (0, 2, 4, 5, 7, 9, 11), (0, 2, 3, 5, 7, 8, 11)
TWO_HANDS = ("octave", "chords")


@dataclass
class Line:
    """What is written: steps of (midi, hand 0 lower / 1 upper), which time through the line each belongs to."""

    steps: list
    cycles: list
    kind: str
    per_sec: float


@dataclass
class Event:
    """One key that was struck; seconds, dB."""

    on: float
    midi: int
    level: float
    off: float
    answers: bool
    hand: int


@dataclass
class Step:
    """One step as played: written keys by hand, and the indices of the events that belong to it."""

    hands: dict
    mine: list
    time: float
    cycle: int


@dataclass
class Played:
    events: list
    steps: list
    pedal: bool
    line: Line = field(repr=False)


def clipped(r, spread, most):
    return max(-most, min(most, r.gauss(0, spread)))


def write(r, seconds):
    """A line for about so many seconds: one voice, chords of one hand, both hands, chords of both hands."""
    kind = r.choices(("single", "chord", "octave", "chords"), (0.10, 0.17, 0.45, 0.28))[0]
    minor = r.random() < 0.5
    triad = (0, 3, 7) if minor else (0, 4, 7)
    fastest = {"single": 8, "octave": 14, "chord": 3, "chords": 3}[kind]
    per_sec = math.exp(r.uniform(math.log(0.9), math.log(fastest)))
    count = max(3, int(seconds * per_sec))
    tonic = r.randrange(28, 76) if kind in ("single", "chord") else r.randrange(26, 62)
    if kind in ("single", "octave"):
        line, start = _melody(r, triad, minor, count)
    elif r.random() < 0.5:
        up = [[triad[(i + j) % 3] + 12 * ((i + j) // 3) for j in range(3)] for i in range(4)]
        line = up + up[-2::-1]
        start = r.randrange(len(line)) if r.random() < 0.3 else 0
    else:
        line, start = _progression(r, triad, minor), r.randrange(5) if r.random() < 0.3 else 0
    keys = [line[(start + i) % len(line)] for i in range(count + 2)]
    cycles = [(start + i) // len(line) for i in range(count + 2)]
    upper = 1 if kind not in TWO_HANDS and r.random() < 0.3 else 0
    steps = [[(tonic + key, upper) for key in chord] for chord in keys]
    if kind in TWO_HANDS:
        apart = r.choice([12] * 9 + [24, 24, 7])
        steps = [step + [(midi + apart, 1) for midi, _ in step] for step in steps]
    steps = [[(midi, hand) for midi, hand in step if LOWEST <= midi < LOWEST + KEYS] for step in steps]
    return Line(steps, cycles, kind, per_sec)


def _melody(r, triad, minor, count):
    """Arpeggio, scale or broken triads of some octaves; mostly it turns around within the clip."""
    degrees = triad if r.random() < 0.7 else (HARMONIC_MINOR if minor else MAJOR)
    octaves = r.choice([1, 2, 2, 3, 4])
    while octaves < 4 and 2 * len(degrees) * octaves < 0.6 * count:
        octaves += 1
    up = [12 * octave + degree for octave in range(octaves) for degree in degrees] + [12 * octaves]
    line, top = up + up[-2::-1], len(up) - 1
    if r.random() < 0.15:
        line = [key for i in range(len(degrees) * octaves - 2) for key in up[i : i + 3]]
    if r.random() < 0.25:
        start = r.randrange(len(line))
    else:
        start = max(0, top - r.randint(1, max(1, min(top, count // 2 + 1))))
    return [[key] for key in line], start


def _progression(r, triad, minor):
    """I–IV–I–V7–I in close position, in one of three positions."""
    chords = [[0, triad[1], 7], [0, 5, 8 if minor else 9], [0, triad[1], 7], [-1, 5, 7], [0, triad[1], 7]]
    lowest = (-1, 2, 5)[r.randrange(3)]
    return [sorted(key + 12 * (key < lowest) for key in chord) for chord in chords]


def perform(r, line, seconds, only=None):
    """One way of playing a line; `only` 0 or 1: one hand alone, as written, without a fault."""
    t = r.uniform(0.1, 0.5)
    both = line.kind in TWO_HANDS and only is None
    per_sec = line.per_sec if only is None else line.per_sec * math.exp(r.uniform(-0.25, 0.35))
    spread_db = r.choice([0.8, 1.5, 3.0])
    gap = r.choice([-0.1, -0.04, 0, 0.02, 0.05, 0.12, 0.3])
    width, roll = r.choice([0.003, 0.01, 0.02, 0.04, 0.06]), r.random() < 0.1
    lead, lead_sd = clipped(r, 0.018, 0.05), r.choice([0.003, 0.008, 0.015, 0.025])
    balance = _balance(r) if both else 0.0
    soft, soft_by = r.random() < 0.35, r.uniform(2, 10)
    shade, speed, phase = r.uniform(0, 5), r.uniform(0.1, 0.6), r.uniform(0, 6.3)
    jitter = r.choice([0.004, 0.012, 0.025])
    faults = _Faults(r, line.kind, seconds) if only is None else None
    louder = r.gauss(0, 4) if only is not None else 0.0
    events, steps = [], []
    for written, cycle in zip(line.steps, line.cycles):
        written = [(midi, hand) for midi, hand in written if only is None or hand == only]
        if t > seconds - 0.15 or not written:
            break
        # midi, hand, extra level, answers a written note
        struck = [(midi, hand, 0.0, True) for midi, hand in written]
        if faults is not None:
            struck = faults.apply(struck, written, t)
        struck = list(
            {midi: (midi, *rest) for midi, *rest in reversed(struck) if LOWEST <= midi < LOWEST + KEYS}.values()
        )
        span = 1 / per_sec * (1 + r.gauss(0, 0.03) + (r.random() < 0.06) * r.random())
        rising, base, mine = r.random() < 0.7, t + r.gauss(0, jitter), []
        for hand in (0, 1):
            chord = sorted(one for one in struck if one[1] == hand)
            ahead = lead + r.gauss(0, lead_sd) if hand == 0 and both else 0
            for j, (midi, _, extra, answers) in enumerate(chord):
                on = base + ahead + (r.uniform(0, width) if len(chord) > 1 else 0)
                if roll and len(chord) > 2:
                    on += min(0.07, 0.4 * span / len(chord)) * (j if rising else len(chord) - 1 - j)
                level = louder + r.gauss(0, spread_db) + extra + shade * math.sin(6.283 * speed * t + phase)
                if soft and 0 < j < len(chord) - 1:
                    level -= soft_by * r.uniform(0.6, 1)
                level += balance * (0.5 if hand else -0.5)
                mine.append(len(events))
                off = max(on + 0.05, t + span + gap + r.gauss(0, 0.01))
                events.append(Event(on, midi, level, off, answers, hand))
        steps.append(Step(dict(written), mine, t, cycle))
        if faults is not None and struck and r.random() < faults.strays:
            events.append(_stray(r, struck, t, span))
        t += span
    pedal = r.random() < (0.2 if only is None else 0.1)
    if pedal:
        _hold(r, events, seconds)
    _damp_repeats(events)
    return Played(events, steps, pedal, line)


def _balance(r):
    """dB by which the upper hand is louder: about equal in four of ten, seldom louder, else softer by up to 13 dB."""
    way = r.random()
    return clipped(r, 2.5, 12) if way < 0.42 else r.uniform(0, 12) if way < 0.5 else -r.uniform(2, 13)


def _stray(r, struck, t, span):
    """A key struck between two steps: one of them again, or another near by."""
    midi, hand = r.choice(struck)[:2]
    if r.random() < 0.6:
        midi += r.choice([-12, -5, -4, -3, -2, -2, -1, -1, 1, 1, 2, 2, 3, 4, 5, 12])
    midi = max(LOWEST, min(LOWEST + KEYS - 1, midi))
    on = t + span * r.uniform(0.2, 0.8)
    return Event(on, midi, -r.uniform(0, 10), on + r.uniform(0.08, 0.5), False, hand)


class _Faults:
    """Notes left out, replaced, added; what is left out is mostly left out again when it comes round."""

    def __init__(self, r, kind, seconds):
        self.r, self.kind = r, kind
        self.share = r.choice([0, 0.06, 0.15, 0.35])
        self.clings = r.choice([0, 0.1, 0.5])
        self.strays = r.choice([0, 0, 0.05, 0.12])
        self.gone = r.choice([0, 0, 0, 0, 1, 2])  # a hand that pauses for a while
        self.start = r.uniform(0, seconds)
        self.end = self.start + r.uniform(0.5, 4)
        self.habits = {}

    def apply(self, struck, written, t):
        r = self.r
        if self.gone and self.start < t < self.end:
            struck = [one for one in struck if one[1] != self.gone - 1]
        name = tuple(midi for midi, _ in written)
        if name in self.habits and r.random() < self.clings:
            return [one for one in struck if one[0] != self.habits[name]]
        if not struck or r.random() >= self.share:
            return struck
        which, j = r.random(), r.randrange(len(struck))
        upper = [i for i, one in enumerate(struck) if one[1] == 1]
        if self.kind in TWO_HANDS and upper and r.random() < 0.45:
            j = r.choice(upper)
        midi, hand = struck[j][:2]
        beside = midi + r.choice([-4, -3, -2, -2, -1, -1, -1, 1, 1, 1, 2, 2, 3, 4])
        if which < 0.5:
            self.habits[name] = midi
            return struck[:j] + struck[j + 1 :]
        if which < 0.76:
            return struck[:j] + [(beside, hand, 0.0, False)] + struck[j + 1 :]
        if which < 0.82:
            return struck[:j] + [(midi + r.choice([-12, 12]), hand, 0.0, False)] + struck[j + 1 :]
        if which < 0.94:
            return struck + [(beside, hand, r.uniform(-12, 0), False)]
        return struck + [(midi + r.choice([-12, 12, 19, 24]), hand, r.uniform(-10, 2), False)]


def _hold(r, events, seconds):
    """The pedal: dampers fall only when it is lifted."""
    lifts, at = [], -r.random()
    while at < seconds + 4:
        at += r.uniform(0.6, 3.0)
        lifts.append(at)
    for event in events:
        lift = next((one for one in lifts if one > event.on + 0.1), seconds + 9)
        if r.random() < 0.97:
            event.off = max(event.off, lift + r.gauss(0, 0.02))


def _damp_repeats(events):
    last = {}
    for event in sorted(events, key=lambda one: one.on):
        if event.midi in last:
            before = last[event.midi]
            before.off = min(before.off, event.on - 0.005)
        last[event.midi] = event
