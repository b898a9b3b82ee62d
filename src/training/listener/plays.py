"""What is played while the blind listener is trained: plain Python, for worker processes."""

import math
import random

import numpy as np

from look.batches import Piano
from sound import KEYS, LOWEST, RATE
from sound.noises import noises

CHORDS = [(0, 4, 7), (0, 3, 7), (0, 4, 7), (0, 3, 7), (0, 3, 6), (0, 4, 8), (0, 4, 7, 10)]
SCALES = CHORDS + [(0, 2, 4, 5, 7, 9, 11), (0, 2, 3, 5, 7, 8, 11), tuple(range(12))]
# kind → how often, and the most steps a second
KINDS = {
    "arpeggio": (0.22, 15),
    "chord": (0.14, 3.5),
    "low": (0.07, 3),
    "octaves": (0.26, 14),
    "two": (0.06, 5),
    "progression": (0.10, 3.5),
    "random": (0.05, 6),
    "repeated": (0.075, 13),
    "nothing": (0.025, 1),
}
# 176 frames: sizes that the GPU's matrix units take whole
SECONDS = 4.08
SAME_KEY_SEC = 0.065


def clipped(r, spread, most):
    return max(-most, min(most, r.gauss(0, spread)))


class Player:
    """One way of playing one kind of thing; `step` gives the keys of the next moment as (midi, hand, extra dB)."""

    def __init__(self, r, kind):
        self.r, self.kind = r, kind
        chordal = kind in ("chord", "low", "two")
        degrees = r.choice(CHORDS if chordal or kind == "octaves" and r.random() < 0.5 else SCALES)
        self.root = r.randrange(25, 50) if kind == "low" else r.randrange(28, 88)
        self.line = [octave * 12 + degree for octave in range(-3, 4) for degree in degrees]
        self.size, self.way = len(degrees), 1
        self.at = len(self.line) // 2 + r.randrange(-3, 4)
        self.apart = r.choice([12] * 12 + [24, 24, 24, 36, 15, 16, 19, 7, 9])
        self.single = r.random() < 0.6
        self.soft_by = r.uniform(3, 14) if r.random() < 0.3 else 0
        self.gone = r.choice([(0, 0), (0.08, 0.04), (0.12, 0.08), (0.35, 0.1), (0.1, 0.3)])
        self.centre, self.bass = r.randrange(50, 74), r.choice([12, 24, 24, 36])
        self.repeated = self.root

    def _next(self, ahead=0):
        return self.line[(self.at + ahead) % len(self.line)]

    def _several(self, sizes):
        return [self._next(i) for i in range(self.r.choice(sizes))]

    def _softened(self, keys, hand):
        inner = range(1, len(keys) - 1)
        return [(key, hand, -self.soft_by * self.r.uniform(0.6, 1) if j in inner else 0) for j, key in enumerate(keys)]

    def step(self):
        keys = getattr(self, "_" + self.kind)()
        self._move()
        return self._slips(keys)

    def _arpeggio(self):
        return [(self.root + self._next(), 0, 0)]

    def _repeated(self):
        r = self.r
        if r.random() > 0.8:
            self.repeated = self.root + r.choice([0, 2, 1, 12, -12, 4, 7])
        more = [(self.repeated + r.choice([-12, 12, 19, -5, 24]), 1, r.gauss(0, 4))] if r.random() < 0.15 else []
        return [(self.repeated, 0, 0)] + more

    def _random(self):
        r = self.r
        count = r.choice([1, 1, 2, 3, 4, 5, 6])
        return [
            (min(101, max(26, self.root + r.randrange(-16, 17))), r.randrange(2), r.gauss(0, 3)) for _ in range(count)
        ]

    def _chord(self):
        return self._softened([self.root + key for key in self._several([3, 3, 3, 2, 4])], 0)

    def _low(self):
        r, keys = self.r, self._chord()
        if r.random() < 0.4:
            keys.append((self.root + 12 * r.choice([2, 3]) + self._next(r.randrange(4)), 1, r.gauss(2, 2)))
        return keys

    def _two(self):
        """A line on the right over a close chord or a broken bass on the left."""
        r = self.r
        keys = [(self.root + 24 + self._next(r.randrange(4)), 1, r.uniform(0, 6))]
        if r.random() < 0.5:
            below = self.at - self.at % self.size
            for i in range(r.choice([1, 2, 3, 3])):
                keys.append((self.root - 5 + self.line[(below + i) % len(self.line)] % 24, 0, -self.soft_by * 0.4))
        return keys

    def _progression(self):
        """A close chord over its own bass, often an octave or two below a chord note."""
        r = self.r
        degree = r.choice([0, 0, 5, 7, 7, 9, 2, 4])
        chord = [(degree + x - 12 * (degree + x > 9)) for x in ((0, 3, 7) if degree in (9, 2, 4) else (0, 4, 7))]
        if r.random() < 0.3:
            chord.append(degree + 10 - 12 * (degree + 10 > 9))
        keys = self._softened([self.centre + key for key in sorted(set(chord))], 1)
        keys.append((self.centre + degree - self.bass + 12 * (r.random() < 0.25), 0, 0))
        return keys + ([(keys[-1][0] - 12, 0, 0)] if r.random() < 0.25 else [])

    def _octaves(self):
        """Both hands, of which one may leave its keys out."""
        r = self.r
        upper = [(self.root + key, 1, 0) for key in self._several([1] if self.single else [2, 3, 3, 4])]
        lower = [(midi - self.apart, 0, 0) for midi, _, _ in upper]
        way = r.random()
        for keys, low, high in ((upper, 0, self.gone[0]), (lower, self.gone[0], sum(self.gone))):
            if low <= way < high:
                if self.single or r.random() < 0.3:
                    keys.clear()
                else:
                    keys.pop(r.randrange(len(keys)))
        return upper + lower

    def _nothing(self):
        return []

    def _move(self):
        r, end = self.r, len(self.line)
        if self.kind in ("chord", "low"):
            self.at += r.choice([1, -1, 2, -2, 0, 3])
        else:
            self.at += self.way * r.choice([1, 1, 1, 1, 2])
        if self.at >= end - 4 or self.at < 4 or r.random() < 0.08:
            self.way = -self.way
            self.at = min(max(self.at, 4), end - 5)

    def _slips(self, keys):
        """A note missing; a neighbour or an octave instead or as well."""
        r = self.r
        if r.random() < 0.08 and len(keys) > 1:
            keys.pop(r.randrange(len(keys)))
        if r.random() < 0.07 and keys:
            j = r.randrange(len(keys))
            keys[j] = (keys[j][0] + r.choice([-2, -1, 1, 2, 12, -12]), *keys[j][1:])
        if r.random() < 0.06 and keys:
            midi, hand, _ = r.choice(keys)
            keys.append((midi + r.choice([-2, -1, 1, 2]), hand, r.uniform(-12, 0)))
        if r.random() < 0.05 and keys:
            midi, hand, _ = r.choice(keys)
            keys.append((midi + r.choice([12, -12, 12, 24, 19, 28]), hand, r.uniform(-12, 3)))
        once = {}
        for key in keys:
            if LOWEST <= key[0] < LOWEST + KEYS:
                once.setdefault(key[0], key)
        return sorted(once.values())


class Strike:
    """One key that was struck; seconds, dB."""

    __slots__ = ("on", "midi", "level", "off")

    def __init__(self, on, midi, level, off):
        self.on, self.midi, self.level, self.off = on, midi, level, off


def perform(r, seconds=SECONDS):
    """→ strikes in order, pedal, whether both hands play"""
    kind = r.choices(list(KINDS), [share for share, _ in KINDS.values()])[0]
    player = Player(r, kind)
    per_sec = math.exp(r.uniform(0, math.log(KINDS[kind][1]))) * (0.6 if kind in ("chord", "low", "progression") else 1)
    spread_db, jitter = r.choice([0.8, 1.5, 3.0, 4.0]), r.choice([0.004, 0.012, 0.03])
    gap, width, roll = (
        r.choice([-0.1, -0.04, 0, 0.02, 0.05, 0.12, 0.3]),
        r.choice([0.003, 0.01, 0.025, 0.06]),
        r.random() < 0.12,
    )
    lead, lead_sd, balance = clipped(r, 0.02, 0.06), r.choice([0.003, 0.01, 0.025]), clipped(r, 5.5, 12)
    shade, speed, phase = r.uniform(0, 5), r.uniform(0.1, 0.6), r.uniform(0, 6.3)
    strikes, t = [], r.uniform(-0.3, 0.6)
    while t < seconds and kind != "nothing":
        keys, span = player.step(), 1 / per_sec * (1 + r.gauss(0, 0.03) + (r.random() < 0.06) * r.random())
        rising = r.random() < 0.7
        for j, (midi, hand, extra) in enumerate(keys):
            on = t + (r.gauss(0, jitter) if len(keys) == 1 else r.uniform(0, width))
            if roll and len(keys) > 2:
                on += min(0.08, 0.5 * span / len(keys)) * (j if rising else len(keys) - 1 - j)
            level = r.gauss(0, spread_db) + extra + shade * math.sin(6.283 * speed * t + phase)
            if kind in ("octaves", "two", "progression"):
                on += (lead + r.gauss(0, lead_sd)) * (hand == 0)
                level += balance * (0.5 if hand else -0.5)
            strikes.append(Strike(on, midi, level, max(on + 0.05, t + span + gap + r.gauss(0, 0.01))))
        t += span
    pedal = r.random() < 0.27
    if pedal:
        _hold(r, strikes, seconds)
    return _once_at_a_time(strikes), pedal, kind in ("octaves", "two", "progression")


def _hold(r, strikes, seconds):
    lifts, at = [], -r.random()
    while at < seconds + 4:
        at += r.uniform(0.6, 3.0)
        lifts.append(at)
    for one in strikes:
        if r.random() < 0.97:
            lift = next((lift for lift in lifts if lift > one.on + 0.1), seconds + 9)
            one.off = max(one.off, lift + r.gauss(0, 0.02))


def _once_at_a_time(strikes):
    """A key that is struck again was let go of before; what would come too soon is left out."""
    last, out = {}, []
    for one in sorted(strikes, key=lambda strike: strike.on):
        before = last.get(one.midi)
        if before is not None:
            if one.on - before.on < SAME_KEY_SEC:
                continue
            before.off = min(before.off, one.on - 0.005)
        last[one.midi] = one
        out.append(one)
    return out


class Maker:
    """Batches without end: dict of events (N,7) for the renderer, struck (N,5): clip, onset s, midi, level re the clip's median,
    release s; pedal; keys (clips, 2) that are evaluated, from, to; both: whether a clip is of both hands."""

    def __init__(self, plan, real, clips, seed, share_real=0.7):
        self.plan, self.real, self.clips, self.share_real = plan, real, clips, share_real
        self.r = random.Random(seed)

    def batch(self):
        r, events, struck, pedals, ranges, both = self.r, [], [], [], [], []
        first = self.plan["first_hit"]
        for clip in range(self.clips):
            strikes, pedal, hands = perform(r)
            piano = Piano(r, self.plan, self.real, self.share_real)
            events += piano.sound(r, clip, strikes)
            plain = [(one.on, one.midi, one.level, one.off) for one in strikes]
            for at, name, which, level, speed in noises(r, SECONDS, plain, pedal):
                events.append((clip, first[name] + which, at * RATE, speed, 10 ** (level / 20), 1e9, 0.0))
            middle = float(np.median([one.level for one in strikes])) if strikes else 0
            struck += [(clip, one.on, one.midi, one.level - middle, one.off) for one in strikes]
            low, high = 0, KEYS
            if strikes and r.random() < 0.5:
                keys = [one.midi - LOWEST for one in strikes]
                low = max(0, min(keys) - r.randrange(3, 24))
                high = min(KEYS, max(keys) + 1 + r.randrange(3, 24))
            pedals.append(float(pedal))
            both.append(hands)
            ranges.append((low, high))
        return dict(
            events=np.array(events, np.float64).reshape(-1, 7),
            struck=np.array(struck, np.float64).reshape(-1, 5),
            pedal=np.array(pedals, np.float32),
            keys=np.array(ranges, np.int64),
            both=np.array(both),
        )
